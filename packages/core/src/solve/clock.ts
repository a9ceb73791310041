import { SOLVE_LIMITS, type SolveOptions, type SolveProgress } from './options.js';

/** How long the solver searches before the page gets a turn, in ms. */
const TURN = 200;

/** The time there is, whether the maker still waits, and what is told meanwhile. */
export class Clock {
  readonly begun = Date.now();
  readonly ends: number;
  readonly #signal: SolveOptions['signal'];
  readonly #tell: SolveOptions['onProgress'];
  #wrong: number | null = null;
  #atLeastWrong = 0;
  #lastPause = Date.now();

  constructor({ seconds = SOLVE_LIMITS.defaultSeconds, signal, onProgress }: SolveOptions) {
    this.ends = this.begun + seconds * 1_000;
    this.#signal = signal;
    this.#tell = onProgress;
  }

  get over(): boolean {
    return this.#signal?.aborted === true || Date.now() >= this.ends;
  }

  /** End of the solver's next turn, as of Date.now(). */
  get turnEnds(): number {
    return Math.min(this.ends, Date.now() + TURN);
  }

  get seconds(): number {
    return (Date.now() - this.begun) / 1_000;
  }

  tell(stage: SolveProgress['stage'], share: number | null = null): void {
    this.#tell?.({ stage, share, wrong: this.#wrong, atLeastWrong: this.#atLeastWrong });
  }

  /** What the best pattern found so far comes to, and what is proven of all others. */
  found(wrong: number | null, atLeastWrong: number): void {
    this.#wrong = wrong;
    this.#atLeastWrong = Math.max(this.#atLeastWrong, atLeastWrong);
  }

  /** Lets a page draw, and an abort arrive. */
  async pause(): Promise<void> {
    if (Date.now() - this.#lastPause < TURN / 2) return;
    await new Promise<void>((resolve) => later(resolve));
    this.#lastPause = Date.now();
  }
}

/** Node and browsers both have setTimeout; the language itself does not know it. */
function later(work: () => void): void {
  const { setTimeout } = globalThis as unknown as {
    setTimeout(work: () => void, milliseconds: number): unknown;
  };
  setTimeout(work, 0);
}
