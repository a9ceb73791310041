import type { DiagonalPicture } from '@halfhitch/core';
import type { DiagonalSolution, SolveProgress } from '@halfhitch/core/solve';
import { startWorker } from '../../work/trusted-workers.js';
import type { SolveAsk, SolveTold, SolveWish } from './messages.js';

/** How long a search may take to end by itself once it was asked to, ms. */
const PATIENCE = 4_000;

/** What a search has come to. */
export type Outcome =
  | { readonly what: 'solution'; readonly solution: DiagonalSolution }
  | { readonly what: 'problem'; readonly message: string }
  /** It was given up before there was anything. */
  | { readonly what: 'given up' };

/**
 * One search for a way to knot a picture, in a worker of its own.
 *
 * Fires `progress` while it goes on, and `end` once when there is an outcome.
 */
export class Search extends EventTarget {
  readonly began = performance.now();
  private readonly worker = startWorker('solve');
  private latest: SolveProgress | null = null;
  private ended: Outcome | null = null;
  private stopping = false;

  constructor(
    readonly wanted: DiagonalPicture,
    wish: SolveWish,
  ) {
    super();
    this.worker.addEventListener('message', ({ data }: MessageEvent<SolveTold>) => this.hear(data));
    const stopped = (): void =>
      this.end({
        what: 'problem',
        message: 'The search has stopped. Try again, with a smaller picture if it stops again.',
      });
    this.worker.addEventListener('error', stopped);
    this.worker.addEventListener('messageerror', stopped);
    this.say({ say: 'solve', wanted, wish });
  }

  get progress(): SolveProgress | null {
    return this.latest;
  }

  get outcome(): Outcome | null {
    return this.ended;
  }

  get isStopping(): boolean {
    return this.stopping && this.ended === null;
  }

  /** Ends it soon, with the best that it has found. */
  stop(): void {
    if (this.ended !== null || this.stopping) return;
    this.stopping = true;
    this.say({ say: 'stop' });
    setTimeout(() => this.end({ what: 'given up' }), PATIENCE);
    this.dispatchEvent(new Event('progress'));
  }

  /** Nobody waits for it any more. */
  abandon(): void {
    this.end({ what: 'given up' });
  }

  private say(ask: SolveAsk): void {
    this.worker.postMessage(ask);
  }

  private hear(told: SolveTold): void {
    if (this.ended !== null) return;
    if (told.told === 'progress') {
      this.latest = told.progress;
      this.dispatchEvent(new Event('progress'));
    } else if (told.told === 'solution') this.end({ what: 'solution', solution: told.solution });
    else if (told.told === 'problem') this.end({ what: 'problem', message: told.message });
  }

  private end(outcome: Outcome): void {
    if (this.ended !== null) return;
    this.ended = outcome;
    this.worker.terminate();
    this.dispatchEvent(new Event('end'));
  }
}
