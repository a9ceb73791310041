import {
  type KnotReading,
  mirrorKnot,
  type Plan,
  PlanReader,
  type RowReading,
} from '@halfhitch/core';
import type { Level } from '@halfhitch/geometry/fabric';
import { FABRIC_FULLNESS } from '@halfhitch/geometry/fabric';
import type { PropertyDeclarations } from 'lit';
import type { PieceChunks } from '../piece/piece-chunks.js';
import { leadName } from '../row/row-words.js';
import type { ThreadLine } from '../thread/thread-line.js';
import type { LitScene } from '../webgl/lit-scene.js';
import type { PieceScene } from '../webgl/piece-scene.js';
import type { ContextUser } from '../webgl/shared-context.js';
import {
  StageElement,
  type StageMoment,
  type StageWords,
  type TiedDetail,
} from './stage-element.js';

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
  readonly chunks: PieceChunks;
  readonly first: number;
  readonly last: number;
}

/**
 * `<halfhitch-piece>`: a whole plan, knotted knot by knot; the picture follows the row.
 *
 * @attr rows-shown - rows in the picture; 0 for all of them
 * @attr mirror - the mirror image of the piece, as a left-handed maker knots it from this plan
 * @attr ghost - shows the knot to come as a veil
 * @attr trail - marks the way that the lead has come over the last few knots
 * @attr magnifier - shows the knot being tied once more, larger
 * @attr speed - 1 is a knot in about a second
 * @attr position - knots that are tied
 */
export class HalfhitchPiece extends StageElement {
  static override properties: PropertyDeclarations = {
    plan: { attribute: false, noAccessor: true },
    rowsShown: { type: Number, attribute: 'rows-shown', reflect: true },
  };

  declare rowsShown: number;
  private planGiven: Plan | null = null;
  private reader: PlanReader | null = null;
  private rowRead: RowReading | null = null;
  private chunks: PieceChunks | null = null;
  private parts: typeof import('../piece/piece-chunks.js') | null = null;

  constructor() {
    super();
    this.rowsShown = ROWS_SHOWN;
  }

  get plan(): Plan | null {
    return this.planGiven;
  }
  /**
   * Shows a plan from its end: the finished piece.
   *
   * @throws RangeError above 100,000 knots
   */
  set plan(plan: Plan | null) {
    const knots = plan === null ? 0 : plan.rows * plan.columns;
    if (knots > MOST_KNOTS) {
      throw new RangeError(
        `The plan has ${knots} knots; a piece is shown up to ${MOST_KNOTS}. Show some of its rows.`,
      );
    }
    this.pause();
    this.planGiven = plan;
    this.reader = plan === null ? null : new PlanReader(plan);
    this.rowRead = null;
    this.chunks = null;
    const every = Array.from({ length: knots + 1 }, (_, i) => i);
    this.score(
      { length: knots, stops: every, stills: every, secondsAt: () => KNOT_SECONDS },
      knots,
    );
    this.requestUpdate();
  }

  /** Goes to where a knot has been tied: row and order of knotting, from 0. */
  seekKnot(row: number, order: number): void {
    this.seek(row * (this.planGiven?.columns ?? 0) + order + 1);
  }

  protected override async loadPoses(): Promise<void> {
    this.parts ??= await import('../piece/piece-chunks.js');
  }

  protected override async loadScene(): Promise<(user: ContextUser) => LitScene> {
    const { PieceScene: Scene } = await import('../webgl/piece-scene.js');
    return (user) => new Scene(user);
  }

  protected override poseScene(scene: LitScene, moment: StageMoment): void {
    const { chunks, first, last } = moment as PieceMoment;
    const view = { first, last, level: this.level(moment) };
    const time = {
      now: this.position,
      ghost: this.ghost ? this.knotsToCome : 0,
      trail: this.trail ? TRAIL_KNOTS : 0,
    };
    const whole = (scene as PieceScene).show(chunks, view, time, CHUNKS_AT_ONCE);
    // After this picture has been drawn; a redraw asked for now would be taken as done by it.
    if (!whole) queueMicrotask(() => this.redraw());
  }

  protected override momentAt(position: number): StageMoment | null {
    const { planGiven: plan, parts } = this;
    if (plan === null || parts === null || this.length === 0) return null;
    if (this.chunks?.mirror !== this.mirror) {
      this.chunks = new parts.PieceChunks(plan, this.mirror);
    }
    const { chunks } = this;
    const asked =
      Number.isFinite(this.rowsShown) && this.rowsShown > 0 ? this.rowsShown : plan.rows;
    const shown = Math.min(plan.rows, asked) + 2;
    const row = position / plan.columns;
    const to = Math.max(shown - 1, Math.min(plan.rows + 1, row + 0.35 * shown));
    const from = to - shown;
    const range = chunks.chunksOf(from - 1, to + 1);
    const { trail } = this;
    const moment: PieceMoment = {
      box: chunks.boxOf(from, to),
      chunks,
      ...range,
      crossing: this.crossingAt(position, chunks),
      magnified: MAGNIFIED_KNOTS * chunks.pitch,
      // Only the flat picture needs them; worked out when it asks.
      get lines() {
        const began = trail ? Math.max(0, position - TRAIL_KNOTS) : position;
        return [
          ...flatLines(moment, [-1, began], 'other', FABRIC_FULLNESS),
          ...(trail ? flatLines(moment, [began, position], 'tying', FABRIC_FULLNESS) : []),
        ];
      },
    };
    return moment;
  }

  /** The middle of the knot being tied; before the first and after the last, of that one. */
  private crossingAt(position: number, chunks: PieceChunks): readonly [number, number, number] {
    const knot = this.knotAt(Math.max(0, Math.ceil(position - 1e-6) - 1));
    return chunks.placeOf(knot?.row ?? 0, knot?.column ?? 0);
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
    return flatLines(moment, span, 'ghost', FLAT_GHOST);
  }

  private level(moment: StageMoment): Level {
    const { min, max } = moment.box;
    const pitch = this.chunks?.pitch ?? 2;
    const pixels = Math.min(
      (this.clientWidth * pitch) / (max[0] - min[0]),
      (this.clientWidth * pitch) / (max[1] - min[1]),
    );
    return this.parts?.levelOf(pixels) ?? 2;
  }

  protected override wordsAt(position: number): StageWords {
    const { planGiven: plan, words } = this;
    const alone = (text: string): StageWords => ({
      heading: text,
      moves: [],
      current: -1,
      said: text,
      saidPlaying: text,
    });
    if (plan === null || this.length === 0) return alone(words('piece.none'));
    if (position <= 0) return alone(words('piece.begin'));
    const sizes = { rows: plan.rows, columns: plan.columns };
    if (position >= this.length) return alone(words('piece.done', sizes));
    const knot = this.knotAt(Math.ceil(position) - 1);
    if (knot === undefined) return alone(words('piece.picture', sizes));
    return alone(
      words('piece.heading', {
        row: knot.row + 1,
        knot: knot.order + 1,
        knots: plan.columns,
        kind: words(`kind.${this.mirror ? mirrorKnot(knot.kind) : knot.kind}`),
        held: words('name.base', { number: knot.column + 1 }),
        lead: leadName(knot.tying, words),
      }),
    );
  }

  private knotAt(number: number): KnotReading | undefined {
    const columns = this.planGiven?.columns ?? 1;
    const row = Math.floor(number / columns);
    if (this.rowRead?.row !== row) this.rowRead = this.reader?.row(row) ?? null;
    return this.rowRead?.knots[number - row * columns];
  }

  protected override get pictureName(): string {
    const plan = this.planGiven;
    if (plan === null) return this.words('piece.none');
    const { words } = this;
    const picture = words('piece.picture', { rows: plan.rows, columns: plan.columns });
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
    const columns = this.planGiven?.columns ?? 1;
    const row = Math.floor(knot / columns);
    const order = knot - row * columns;
    return { detail: { row, knot: order }, endsRow: order === columns - 1 };
  }
}

function flatLines(
  { chunks, first, last }: PieceMoment,
  span: readonly [number, number],
  part: 'other' | 'tying' | 'ghost',
  thickness: number,
): ThreadLine[] {
  const lines: ThreadLine[] = [];
  for (let chunk = first; chunk <= last; chunk++) {
    lines.push(...chunks.linesBetween(chunk, FLAT_LEVEL, span, part, thickness));
  }
  return lines;
}
