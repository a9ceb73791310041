import { SOLVE_LIMITS, type SolveOptions, type SolveProgress } from './options.js';

/** How long the solver searches before the page gets a turn, in ms. */
const TURN = 200;

/** How long something may go on. */
export interface TimeLimit {
  readonly ends: number;
  readonly over: boolean;
  /** So many seconds from now, within this time. */
  next(seconds: number): TimeLimit;
  /** Lets a page draw, and an abort arrive. */
  pause(): Promise<void>;
}

/** End of the solver's next turn, as of Date.now(). */
export function turnEnds({ ends }: TimeLimit): number {
  return Math.min(ends, Date.now() + TURN);
}

/** The time there is, whether the maker still waits, and what is told meanwhile. */
export class Clock implements TimeLimit {
  readonly begun = Date.now();
  /** End of the time there is, as of Date.now(). */
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

  /** A part of what is left of the time; `share` from 0 to 1. */
  part(share: number): TimeLimit {
    return this.next((share * (this.ends - Date.now())) / 1_000);
  }

  next(seconds: number): TimeLimit {
    return within(this, seconds);
  }

  get over(): boolean {
    return this.#signal?.aborted === true || Date.now() >= this.ends;
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

function within(outer: TimeLimit, seconds: number): TimeLimit {
  const ends = Math.min(outer.ends, Date.now() + seconds * 1_000);
  return {
    ends,
    get over() {
      return outer.over || Date.now() >= ends;
    },
    next(shorter) {
      return within(this, shorter);
    },
    pause: () => outer.pause(),
  };
}

/** Node and browsers both have setTimeout; the language itself does not know it. */
function later(work: () => void): void {
  const { setTimeout } = globalThis as unknown as {
    setTimeout(work: () => void, milliseconds: number): unknown;
  };
  setTimeout(work, 0);
}
