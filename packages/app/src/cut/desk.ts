import { startWorker } from '../work/trusted-workers.js';
import type { CutOutcome, CutRequest } from './messages.js';

interface Waiting {
  readonly request: CutRequest;
  readonly answer: (outcome: CutOutcome | null) => void;
}

const STOPPED: CutOutcome = {
  errors: {
    whole: 'The part that works lengths out has stopped. Change a figure to start it again.',
  },
};

/**
 * Has cut lists worked out in a worker of their own, one at a time, so that neither the page nor
 * the chart's picture waits for them. Of those asked for meanwhile only the last is worked out.
 */
export class CutDesk {
  private worker: Worker | null = null;
  private running: Waiting | null = null;
  private next: Waiting | null = null;

  /** The outcome, or null when another request has taken this one's place. */
  ask(request: CutRequest): Promise<CutOutcome | null> {
    return new Promise((answer) => {
      this.next?.answer(null);
      this.next = { request, answer };
      this.start();
    });
  }

  private start(): void {
    if (this.running !== null || this.next === null) return;
    this.worker ??= this.hire();
    this.running = this.next;
    this.next = null;
    this.worker.postMessage(this.running.request);
  }

  private hire(): Worker {
    const worker = startWorker('cut');
    worker.addEventListener('message', ({ data }: MessageEvent<CutOutcome>) => this.done(data));
    const stopped = (): void => {
      worker.terminate();
      this.worker = null;
      this.done(STOPPED);
    };
    worker.addEventListener('error', stopped);
    worker.addEventListener('messageerror', stopped);
    return worker;
  }

  private done(outcome: CutOutcome): void {
    const { running } = this;
    this.running = null;
    running?.answer(outcome);
    this.start();
  }
}
