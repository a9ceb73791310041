import type { Player } from '../playback/player.js';

export interface StepDetail {
  /** Position reached. */
  readonly position: number;
  /** Steps done by then. */
  readonly done: number;
  readonly text: string;
}

/** Of `halfhitch-knot` and `halfhitch-row`: what has just been tied, counted from 0. */
export interface TiedDetail {
  readonly row: number;
  /** Place in its row in the order of knotting; null for a row. */
  readonly knot: number | null;
}

/** What there is to tell of at a position. */
export interface Progress {
  knotsDoneAt(position: number): number;
  /** The moves in words. */
  textAt(position: number): string;
  /** The knot that is the one of this number, and whether a row ends with it. */
  tiedAs(knot: number): { readonly detail: TiedDetail; readonly endsRow: boolean };
}

/** Tells a page what is done while a picture is played: steps, knots and rows. */
export class News {
  private done = 0;
  private knots = 0;

  constructor(
    private readonly target: EventTarget,
    private readonly player: Player,
    private readonly progress: Progress,
  ) {}

  /** What is done by now is not told of. */
  startHere(): void {
    this.done = this.player.done;
    this.knots = this.progress.knotsDoneAt(this.player.position);
  }

  tell(): void {
    this.tellOfKnots();
    // A listener to that may have gone to another position.
    const { position, done } = this.player;
    if (done === this.done) return;
    this.done = done;
    const text = this.progress.textAt(position);
    this.fire('halfhitch-step', { position, done, text } satisfies StepDetail);
  }

  fire(name: string, detail: StepDetail | TiedDetail | null = null): void {
    this.target.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  private tellOfKnots(): void {
    const before = this.knots;
    this.knots = this.progress.knotsDoneAt(this.player.position);
    // Leaping over many knots tells of the last one only.
    if (this.knots <= before) return;
    const { detail, endsRow } = this.progress.tiedAs(this.knots - 1);
    this.fire('halfhitch-knot', detail);
    if (endsRow) this.fire('halfhitch-row', { row: detail.row, knot: null } satisfies TiedDetail);
  }
}
