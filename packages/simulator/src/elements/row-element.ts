import { type Plan, PlanReader, type RowReading } from '@halfhitch/core';
import type { PropertyDeclarations } from 'lit';
import { movesOf, phasesAt, type RowToPlay } from '../row/row-scene.js';
import { leadName, rowKnotWords, said } from '../row/row-words.js';
import type { ThreadLine } from '../thread/thread-line.js';
import {
  StageElement,
  type StageMoment,
  type StageWords,
  type TiedDetail,
} from './stage-element.js';

/** Seconds for a half hitch in a row, and for another move, at speed 1. */
const HALF_SECONDS = 2.6;
const MOVE_SECONDS = 1.8;

/**
 * `<halfhitch-row>`: one row of a plan being tied, with its changes of lead.
 *
 * Give it `plan` and `row`, or `reading` and `previous`, which are the row and the one before it
 * as a plan reader gives them: those do without the plan, which may be with a worker.
 *
 * @attr row - row of the plan, counted from 0
 * @attr position - where the playing is, counted in moves
 */
export class HalfhitchRow extends StageElement {
  static override properties: PropertyDeclarations = {
    plan: { attribute: false, noAccessor: true },
    row: { type: Number, reflect: true, noAccessor: true },
    reading: { attribute: false, noAccessor: true },
    previous: { attribute: false, noAccessor: true },
  };

  private planGiven: Plan | null = null;
  private reader: PlanReader | null = null;
  private rowGiven = 0;
  private shown: RowToPlay | null = null;
  /** Position at which each knot begins, and the end. */
  private begins: number[] = [0];

  get plan(): Plan | null {
    return this.planGiven;
  }
  set plan(plan: Plan | null) {
    this.planGiven = plan;
    this.reader = plan === null ? null : new PlanReader(plan);
    this.readPlan();
  }

  get row(): number {
    return this.rowGiven;
  }
  /** @throws InputError when a plan is given and has no such row */
  set row(row: number) {
    this.rowGiven = row;
    this.readPlan();
  }

  get reading(): RowReading | null {
    return this.shown?.reading ?? null;
  }
  set reading(reading: RowReading | null) {
    this.show(reading, this.shown?.previous ?? null);
  }

  get previous(): RowReading | null {
    return this.shown?.previous ?? null;
  }
  set previous(previous: RowReading | null) {
    if (this.shown !== null) this.show(this.shown.reading, previous);
  }

  /** Shows a row from its first move, on the row tied before it. */
  show(reading: RowReading | null, previous: RowReading | null): void {
    this.pause();
    this.shown = reading === null ? null : { reading, previous };
    const moves = this.shown === null ? [] : movesOf(this.shown);
    this.begins = [0];
    for (const count of moves) this.begins.push((this.begins.at(-1) as number) + count);
    const length = this.begins.at(-1) as number;
    const every = Array.from({ length: length + 1 }, (_, i) => i);
    this.score(
      {
        length,
        stops: every,
        stills: every,
        secondsAt: (position) => (this.isHalf(position) ? HALF_SECONDS : MOVE_SECONDS),
      },
      0,
    );
    this.requestUpdate();
  }

  /** Goes to the first move of a knot, counted from 0 in the order of knotting. */
  seekKnot(order: number): void {
    this.seek(this.begins[Math.max(0, Math.min(this.begins.length - 2, order))] ?? 0);
  }

  /** Goes to where a knot is all but finished, with its last move still named. */
  seekKnotDone(order: number): void {
    const end = this.begins[Math.max(1, Math.min(this.begins.length - 1, order + 1))] ?? 0;
    this.seek(end === this.length ? end : end - 1e-3);
  }

  /** The knot being tied, counted from 0 in the order of knotting. */
  get knot(): number {
    return this.at(this.position).order;
  }

  private readPlan(): void {
    if (this.reader === null) return;
    const previous = this.rowGiven > 0 ? this.reader.row(this.rowGiven - 1) : null;
    this.show(this.reader.row(this.rowGiven), previous);
  }

  /** The knot at a position and how far it is; a whole number ends a move, but the first. */
  private at(position: number): { order: number; t: number } {
    const last = Math.max(0, this.begins.length - 2);
    let order = 0;
    while (order < last && position > (this.begins[order + 1] as number) - 1e-9) order++;
    return { order, t: position - (this.begins[order] as number) };
  }

  private isHalf(position: number): boolean {
    if (this.shown === null) return true;
    const { order, t } = this.at(position);
    const phase = phasesAt(this.shown, order)[Math.floor(t)];
    return phase === 'first-half' || phase === 'second-half';
  }

  protected override async loadPoses(): Promise<void> {
    this.poses ??= await import('../row/row-lines.js');
  }
  private poses: typeof import('../row/row-lines.js') | null = null;

  protected override momentAt(position: number): StageMoment | null {
    if (this.poses === null || this.shown === null || this.length === 0) return null;
    const { order, t } = this.at(position);
    const posed = this.poses.rowLines(this.shown, order, t, this.mirror);
    const { box, focus, pitch } = posed;
    const lines = this.still ? posed.lines.map((line) => this.named(line)) : posed.lines;
    return { lines, box, spotlight: { at: focus, radius: 0.9 * pitch }, crossing: focus };
  }

  /** By its name, and without a sign of what it is about to do. */
  private named(line: ThreadLine): ThreadLine {
    const { hung, strings } = (this.shown as RowToPlay).reading.before;
    const string = strings.find(({ id }) => id === line.string);
    const plain: ThreadLine = { ...line, part: 'other', label: null };
    if (line.part === 'held') {
      return { ...plain, name: this.words('name.base', { number: hung.indexOf(line.string) + 1 }) };
    }
    if (string === undefined || string.role !== 'lead' || line.part === 'resting') return plain;
    return { ...plain, name: leadName(string, this.words) };
  }

  protected override knotsDoneAt(position: number): number {
    let done = 0;
    while (done + 1 < this.begins.length && (this.begins[done + 1] as number) <= position + 1e-9) {
      done++;
    }
    return done;
  }

  protected override tiedAs(knot: number): {
    readonly detail: TiedDetail;
    readonly endsRow: boolean;
  } {
    const row = this.shown?.reading.row ?? 0;
    return { detail: { row, knot }, endsRow: knot + 2 === this.begins.length };
  }

  protected override wordsAt(position: number): StageWords {
    if (this.shown === null || this.length === 0) {
      const none = this.words('row.none');
      return { heading: none, moves: [], current: -1, said: '', saidPlaying: '' };
    }
    const { order, t } = this.at(position);
    const { knots } = this.shown.reading;
    const words = rowKnotWords(
      knots[order] as RowReading['knots'][number],
      phasesAt(this.shown, order),
      knots.length,
      this.mirror,
      this.words,
    );
    const move = Math.min(words.moves.length - 1, Math.floor(t + 1e-9));
    const text = said(words, move, this.words);
    const done = position >= this.length ? ` ${this.words('row.done')}` : '';
    return {
      heading: words.heading,
      moves: words.moves,
      current: move,
      said: text + done,
      saidPlaying: text + done,
    };
  }

  protected override get pictureName(): string {
    if (this.shown === null) return this.words('row.noneName');
    const { row, direction } = this.shown.reading;
    const leftwards = (direction === 'right') === this.mirror;
    return this.words(leftwards ? 'row.leftwards' : 'row.rightwards', { row: row + 1 });
  }

  protected override get stepName(): string {
    return this.words('step.step');
  }
}
