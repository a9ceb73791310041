import type { DiagonalPattern, Plan } from '@halfhitch/core';
import type { Level } from '@halfhitch/geometry/fabric';
import type { PropertyDeclarations } from 'lit';
import { type Chunks, linesBetween } from '../piece/chunks.js';
import { type Knotting, PatternKnotting, PlanKnotting } from '../piece/knotting.js';
import type { StageMoment, StageWords } from '../stage/moment.js';
import type { TiedDetail } from '../stage/news.js';
import type { ThreadLine } from '../thread/thread-line.js';
import type { PieceScene } from '../webgl/piece-scene.js';
import type { ContextUser, StageScene } from '../webgl/stage-scene.js';
import { StageElement } from './stage-element.js';

/** Seconds for a knot at speed 1. */
const KNOT_SECONDS = 0.9;
/** Rows in the picture unless the page says otherwise. */
const ROWS_SHOWN = 14;
/** Chunks built between two pictures: more would make the page wait. */
const CHUNKS_AT_ONCE = 2;
const MOST_KNOTS = 100_000;
/** Knots over which the way that the lead has come is marked. */
const TRAIL_KNOTS = 6;
/** Knots across in the magnifier. */
const MAGNIFIED_KNOTS = 3.5;
/** Of the flat picture: thickness of threads still to come, in diameters, and level of detail. */
const FLAT_GHOST = 0.26;
const FLAT_LEVEL: Level = 2;

/** What of the piece is in the picture. */
interface PieceMoment extends StageMoment {
  readonly chunks: Chunks;
  readonly first: number;
  readonly last: number;
}

/** Longer than any piece: of a string in diagonal work the whole way is marked. */
const WHOLE_WAY = 1e6;

/** Makes the threads of a piece, loaded when they are first seen. */
type MakeChunks = (mirror: boolean) => Chunks & {
  placeOf(row: number, place: number): readonly [number, number, number];
};

/**
 * `<halfhitch-piece>`: a whole piece, knotted knot by knot; the picture follows the row. Give it
 * the `plan` of an alpha pattern, or a diagonal `pattern`.
 *
 * @attr rows-shown - rows in the picture; 0 for all of them
 * @attr mirror - the mirror image of the piece, as a left-handed maker knots it from this plan
 * @attr ghost - shows the knot to come as a veil
 * @attr trail - marks the way that the lead has come over the last few knots; in diagonal work the
 *   whole way of the string that ties
 * @attr trail-of - id of a string (S1, L2) whose whole way is marked
 * @attr magnifier - shows the knot being tied once more, larger
 * @attr speed - 1 is a knot in about a second
 * @attr position - knots that are tied
 */
export class HalfhitchPiece extends StageElement {
  static override properties: PropertyDeclarations = {
    plan: { attribute: false, noAccessor: true },
    pattern: { attribute: false, noAccessor: true },
    rowsShown: { type: Number, attribute: 'rows-shown', reflect: true },
    trailOf: { attribute: 'trail-of', reflect: true },
  };

  declare rowsShown: number;
  declare trailOf: string | null;
  private planGiven: Plan | null = null;
  private patternGiven: DiagonalPattern | null = null;
  private knotting: Knotting | null = null;
  private chunks: ReturnType<MakeChunks> | null = null;
  private makeChunks: MakeChunks | null = null;
  private levelOf: ((pixelsPerKnot: number) => Level) | null = null;

  constructor() {
    super();
    this.rowsShown = ROWS_SHOWN;
    this.trailOf = null;
  }

  get plan(): Plan | null {
    return this.planGiven;
  }
  /**
   * Shows a plan from its end: the finished piece.
   *
   * @throws RangeError above 100,000 knots
   * @throws InputError when its steps do not tie a whole piece
   */
  set plan(plan: Plan | null) {
    if (plan !== null) limit(plan.rows * plan.columns, 'plan');
    const knotting = plan === null ? null : new PlanKnotting(plan);
    this.planGiven = plan;
    this.patternGiven = null;
    this.take(knotting);
  }

  get pattern(): DiagonalPattern | null {
    return this.patternGiven;
  }
  /**
   * Shows a diagonal pattern from its end: the finished piece.
   *
   * @throws RangeError above 100,000 knots
   * @throws InputError when it is outside the limits, or not whole
   */
  set pattern(pattern: DiagonalPattern | null) {
    const knotting = pattern === null ? null : new PatternKnotting(pattern);
    if (knotting !== null) limit(knotting.length, 'pattern');
    this.patternGiven = pattern;
    this.planGiven = null;
    this.take(knotting);
  }

  private take(knotting: Knotting | null): void {
    this.pause();
    this.knotting = knotting;
    this.chunks = null;
    this.makeChunks = null;
    const knots = knotting?.length ?? 0;
    const every = Array.from({ length: knots + 1 }, (_, i) => i);
    this.score(
      { length: knots, stops: every, stills: every, secondsAt: () => KNOT_SECONDS },
      knots,
    );
    this.requestUpdate();
    // A picture that is in sight already gets what the new piece is drawn with.
    if (this.levelOf !== null && knotting !== null) {
      void this.loadPoses().then(
        () => this.redraw(),
        () => undefined,
      );
    }
  }

  /** Goes to where a knot has been tied: row and order of knotting, from 0. */
  seekKnot(row: number, order: number): void {
    this.seek((this.knotting?.before(row, order) ?? 0) + 1);
  }

  protected override async loadPoses(): Promise<void> {
    const { planGiven: plan, patternGiven: pattern, knotting } = this;
    const parts = await import('../piece/piece-chunks.js');
    this.levelOf = parts.levelOf;
    let make: MakeChunks | null = null;
    if (plan !== null) make = (mirror) => new parts.PieceChunks(plan, mirror);
    if (pattern !== null && knotting instanceof PatternKnotting) {
      const { LatticeChunks: Parts } = await import('../piece/lattice-chunks.js');
      make = (mirror) => new Parts(pattern, knotting.order, mirror);
    }
    if (knotting === this.knotting) this.makeChunks = make;
    // Another piece was given meanwhile, which could not yet ask for what draws it.
    else await this.loadPoses();
  }

  protected override async loadScene(): Promise<(user: ContextUser) => StageScene> {
    const { PieceScene: Scene } = await import('../webgl/piece-scene.js');
    return (user) => new Scene(user);
  }

  protected override poseScene(scene: StageScene, moment: StageMoment): void {
    const { chunks, first, last } = moment as PieceMoment;
    const view = { first, last, level: this.level(moment) };
    const only = this.stringMarked;
    const trail = only >= 0 ? WHOLE_WAY : this.trail ? TRAIL_KNOTS : 0;
    const time = { now: this.position, ghost: this.ghost ? this.knotsToCome : 0, trail, only };
    const whole = (scene as PieceScene).show(chunks, view, time, CHUNKS_AT_ONCE);
    // After this picture has been drawn; a redraw asked for now would be taken as done by it.
    if (!whole) queueMicrotask(() => this.redraw());
  }

  /** The string whose whole way is marked: a place among the strings, or -1. */
  private get stringMarked(): number {
    const { knotting, trailOf } = this;
    if (knotting === null) return -1;
    if (trailOf !== null) return knotting.stringOf(trailOf);
    return this.trail ? knotting.tying(this.knotInWork(this.position)) : -1;
  }

  /** The knot being tied at a time; before the first and after the last, that one. */
  private knotInWork(position: number): number {
    return Math.max(0, Math.ceil(position - 1e-6) - 1);
  }

  protected override momentAt(position: number): StageMoment | null {
    const { knotting, makeChunks } = this;
    if (knotting === null || makeChunks === null || this.length === 0) return null;
    if (this.chunks?.mirror !== this.mirror) this.chunks = makeChunks(this.mirror);
    const { chunks } = this;
    const asked =
      Number.isFinite(this.rowsShown) && this.rowsShown > 0 ? this.rowsShown : knotting.rows;
    const shown = Math.min(knotting.rows, asked) + 2;
    const row = knotting.rowAt(position);
    const to = Math.max(shown - 1, Math.min(knotting.rows + 1, row + 0.35 * shown));
    const from = to - shown;
    const range = chunks.chunksOf(from - 1, to + 1);
    const trailing = this.trail || this.trailOf !== null;
    const only = this.stringMarked;
    const moment: PieceMoment = {
      box: chunks.boxOf(from, to),
      chunks,
      ...range,
      crossing: chunks.placeOf(...knotting.cellOf(this.knotInWork(position))),
      magnified: MAGNIFIED_KNOTS * chunks.pitch,
      // Only the flat picture needs them; worked out when it asks.
      get lines() {
        const began = !trailing ? position : only >= 0 ? -1 : Math.max(0, position - TRAIL_KNOTS);
        const others = (string: number) => only < 0 || string !== only;
        const marked = (string: number) => only < 0 || string === only;
        const until = only < 0 ? began : position;
        return [
          ...flatLines(moment, [-1, until], 'other', chunks.flatFullness, others),
          ...(trailing
            ? flatLines(moment, [began, position], 'tying', chunks.flatFullness, marked)
            : []),
          ...linesBetween(
            chunks.hanging(position, { ...range, level: FLAT_LEVEL }),
            [-1, 0],
            'hanging',
            'other',
            chunks.hungFullness,
          ),
        ];
      },
    };
    return moment;
  }

  /** What is left of the knot being tied, or the next one, in knots. */
  private get knotsToCome(): number {
    return Math.floor(this.position + 1e-6) + 1 - this.position;
  }

  /** In 3D the threads themselves show what comes and what was. */
  protected override besideLines(): ThreadLine[] {
    const moment = this.momentAt(this.position) as PieceMoment | null;
    if (!this.ghost || moment === null || this.drawing === 'webgl') return [];
    const span = [this.position + 1e-6, this.position + this.knotsToCome] as const;
    return flatLines(moment, span, 'ghost', FLAT_GHOST, () => true);
  }

  private level(moment: StageMoment): Level {
    const { min, max } = moment.box;
    const pitch = this.chunks?.pitch ?? 2;
    const pixels = Math.min(
      (this.clientWidth * pitch) / (max[0] - min[0]),
      (this.clientWidth * pitch) / (max[1] - min[1]),
    );
    return this.levelOf?.(pixels) ?? 2;
  }

  protected override wordsAt(position: number): StageWords {
    const { knotting, words } = this;
    const alone = (text: string): StageWords => ({
      heading: text,
      moves: [],
      current: -1,
      said: text,
      saidPlaying: text,
    });
    if (knotting === null || this.length === 0) return alone(words('piece.none'));
    if (position <= 0) return alone(knotting.sayBegin(words));
    if (position >= this.length) return alone(knotting.sayDone(words));
    return alone(knotting.sayKnot(Math.ceil(position) - 1, this.mirror, words));
  }

  protected override get pictureName(): string {
    const { knotting, words } = this;
    if (knotting === null) return words('piece.none');
    const picture = knotting.sayPicture(words);
    return this.mirror ? words('picture.mirrored', { picture }) : picture;
  }

  protected override get stepName(): string {
    return this.words('step.knot');
  }

  protected override get labelled(): boolean {
    return false;
  }

  protected override knotsDoneAt(position: number): number {
    return Math.floor(position + 1e-9);
  }

  protected override tiedAs(knot: number): {
    readonly detail: TiedDetail;
    readonly endsRow: boolean;
  } {
    const { row, order, endsRow } = this.knotting?.placeOf(knot) ?? {
      row: 0,
      order: 0,
      endsRow: false,
    };
    return { detail: { row, knot: order }, endsRow };
  }
}

/** @throws RangeError when there are more knots than a page can bear */
function limit(knots: number, what: 'plan' | 'pattern'): void {
  if (!(knots > MOST_KNOTS)) return;
  throw new RangeError(
    `The ${what} has ${knots} knots; a piece is shown up to ${MOST_KNOTS}. Show some of its rows.`,
  );
}

function flatLines(
  { chunks, first, last }: PieceMoment,
  span: readonly [number, number],
  part: 'other' | 'tying' | 'ghost',
  thickness: number,
  wanted: (string: number) => boolean,
): ThreadLine[] {
  const lines: ThreadLine[] = [];
  for (let chunk = first; chunk <= last; chunk++) {
    const strands = chunks.strands(chunk, FLAT_LEVEL).filter(({ string }) => wanted(string));
    lines.push(...linesBetween(strands, span, `${chunk}`, part, thickness));
  }
  return lines;
}
