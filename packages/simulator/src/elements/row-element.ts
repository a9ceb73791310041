import {
  type DiagonalPattern,
  InputError,
  type Plan,
  PlanReader,
  type RowReading,
} from '@halfhitch/core';
import type { PropertyDeclarations } from 'lit';
import { LatticeOrder } from '../piece/lattice-order.js';
import { PatternRow } from '../row/pattern-row.js';
import { PlanRow } from '../row/plan-row.js';
import type { RowShown } from '../row/row-shown.js';
import { said } from '../row/row-words.js';
import type { StageMoment, StageWords } from '../stage/moment.js';
import type { TiedDetail } from '../stage/news.js';
import { StageElement } from './stage-element.js';

/** Seconds for a half hitch in a row, and for another move, at speed 1. */
const HALF_SECONDS = 2.6;
const MOVE_SECONDS = 1.8;

/**
 * `<halfhitch-row>`: one row being tied: of a plan, with its changes of lead, or of a diagonal
 * pattern.
 *
 * Give it `plan` and `row`, or a diagonal `pattern` and `row`, or `reading` and `previous`, which are the row and the one before it
 * as a plan reader gives them: those do without the plan, which may be with a worker.
 *
 * @attr row - row of the plan or pattern, counted from 0
 * @attr position - where the playing is, counted in moves
 */
export class HalfhitchRow extends StageElement {
  static override properties: PropertyDeclarations = {
    plan: { attribute: false, noAccessor: true },
    pattern: { attribute: false, noAccessor: true },
    row: { type: Number, reflect: true, noAccessor: true },
    reading: { attribute: false, noAccessor: true },
    previous: { attribute: false, noAccessor: true },
  };

  private planGiven: Plan | null = null;
  private reader: PlanReader | null = null;
  private order: LatticeOrder | null = null;
  private rowGiven = 0;
  private shown: RowShown | null = null;
  /** Whether pictures have been asked for. */
  private seen = false;
  /** Position at which each knot begins, and the end. */
  private begins: number[] = [0];

  get plan(): Plan | null {
    return this.planGiven;
  }
  /** @throws InputError when the plan is for a piece outside the limits, or the row cannot be tied */
  set plan(plan: Plan | null) {
    const reader = plan === null ? null : new PlanReader(plan);
    this.planGiven = plan;
    this.order = null;
    this.reader = reader;
    this.readRow();
  }

  get pattern(): DiagonalPattern | null {
    return this.order?.pattern ?? null;
  }
  /**
   * A pattern that has not so many rows is shown once `row` is one of its own.
   *
   * @throws InputError when it is outside the limits, or not whole
   */
  set pattern(pattern: DiagonalPattern | null) {
    const order = pattern === null ? null : new LatticeOrder(pattern);
    this.planGiven = null;
    this.reader = null;
    this.order = order;
    if (pattern === null || this.rowGiven >= pattern.rows) this.present(null);
    else this.readRow();
  }

  get row(): number {
    return this.rowGiven;
  }
  /** @throws InputError when a plan or a pattern is given and has no such row */
  set row(row: number) {
    this.rowGiven = row;
    this.readRow();
  }

  get reading(): RowReading | null {
    return this.ofPlan?.play.reading ?? null;
  }
  set reading(reading: RowReading | null) {
    this.show(reading, this.previous);
  }

  get previous(): RowReading | null {
    return this.ofPlan?.play.previous ?? null;
  }
  set previous(previous: RowReading | null) {
    if (this.ofPlan !== null) this.show(this.ofPlan.play.reading, previous);
  }

  /** Shows a row from its first move, on the row tied before it. */
  show(reading: RowReading | null, previous: RowReading | null): void {
    this.present(reading === null ? null : new PlanRow({ reading, previous }));
  }

  private get ofPlan(): PlanRow | null {
    return this.shown instanceof PlanRow ? this.shown : null;
  }

  private present(shown: RowShown | null): void {
    this.pause();
    this.shown = shown;
    this.begins = [0];
    for (const count of shown?.moves ?? []) {
      this.begins.push((this.begins.at(-1) as number) + count);
    }
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
    // A row of the other kind needs what the last one did not.
    if (this.seen && shown !== null && shown.poses === null) {
      void shown.loadPoses().then(
        () => this.redraw(),
        () => undefined,
      );
    }
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

  private readRow(): void {
    const { order, reader, rowGiven: row } = this;
    if (order !== null) {
      if (!Number.isInteger(row) || row < 0 || row >= order.pattern.rows) {
        throw new InputError(
          'no-such-row',
          `The pattern has no row ${row + 1}.`,
          {},
          `Choose a row from 1 to ${order.pattern.rows}.`,
        );
      }
      this.present(new PatternRow(order, row));
    } else if (reader !== null) {
      const { columns } = reader.plan;
      this.show(
        wholeRow(reader.row(row), columns),
        row > 0 ? wholeRow(reader.row(row - 1), columns) : null,
      );
    }
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
    return this.shown.isHalf(order, Math.floor(t));
  }

  protected override async loadPoses(): Promise<void> {
    this.seen = true;
    await this.shown?.loadPoses();
  }

  protected override momentAt(position: number): StageMoment | null {
    const { shown } = this;
    const poses = shown?.poses ?? null;
    if (poses === null || shown === null || this.length === 0) return null;
    const { order, t } = this.at(position);
    const posed = poses(order, t, this.mirror);
    const { box, focus, pitch } = posed;
    const lines = this.still
      ? posed.lines.map((line) => shown.named(line, this.words))
      : posed.lines;
    return { lines, box, spotlight: { at: focus, radius: 0.9 * pitch }, crossing: focus };
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
    const row = this.shown?.row ?? 0;
    return { detail: { row, knot }, endsRow: knot + 2 === this.begins.length };
  }

  protected override wordsAt(position: number): StageWords {
    if (this.shown === null || this.length === 0) {
      const none = this.words('row.none');
      return { heading: none, moves: [], current: -1, said: '', saidPlaying: '' };
    }
    const { order, t } = this.at(position);
    const words = this.shown.words(order, this.mirror, this.words);
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
    return this.shown.pictureName(this.mirror, this.words);
  }

  protected override get stepName(): string {
    return this.words('step.step');
  }
}

/** @throws InputError when a plan's row is not what can be shown: its steps may be anybody's */
function wholeRow(reading: RowReading, columns: number): RowReading {
  const { row, knots } = reading;
  if (knots.length === columns && knots.every(({ column }) => column >= 0)) return reading;
  throw new InputError(
    'row-not-whole',
    `The row has ${knots.length} knots, or knots on no base string; the piece is ${columns} wide.`,
    { row: row + 1 },
    'Verify the plan to see where it first goes wrong.',
  );
}
