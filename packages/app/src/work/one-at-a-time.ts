import { startWorker } from './trusted-workers.js';

interface Waiting<Request, Outcome> {
  readonly request: Request;
  readonly answer: (outcome: Outcome | null) => void;
}

/**
 * Has something worked out in a worker of its own, one at a time, so that neither the page nor the
 * chart's picture waits for it. Of what is asked for meanwhile only the last is worked out.
 */
export class OneAtATime<Request, Outcome> {
  private worker: Worker | null = null;
  private running: Waiting<Request, Outcome> | null = null;
  private next: Waiting<Request, Outcome> | null = null;

  /** @param stopped what is answered when the worker has died; another question starts a new one */
  constructor(
    private readonly which: Parameters<typeof startWorker>[0],
    private readonly stopped: Outcome,
  ) {}

  /** The outcome, or null when another request has taken this one's place. */
  ask(request: Request): Promise<Outcome | null> {
    return new Promise((answer) => {
      this.next?.answer(null);
      this.next = { request, answer };
      this.start();
    });
  }

  /** Gives up what is being worked out; it is answered null. */
  abandon(): void {
    this.worker?.terminate();
    this.worker = null;
    this.next?.answer(null);
    this.next = null;
    const { running } = this;
    this.running = null;
    running?.answer(null);
  }

  private start(): void {
    if (this.running !== null || this.next === null) return;
    this.worker ??= this.hire();
    this.running = this.next;
    this.next = null;
    this.worker.postMessage(this.running.request);
  }

  private hire(): Worker {
    const worker = startWorker(this.which);
    worker.addEventListener('message', ({ data }: MessageEvent<Outcome>) => this.done(data));
    const stopped = (): void => {
      worker.terminate();
      this.worker = null;
      this.done(this.stopped);
    };
    worker.addEventListener('error', stopped);
    worker.addEventListener('messageerror', stopped);
    return worker;
  }

  private done(outcome: Outcome): void {
    const { running } = this;
    this.running = null;
    running?.answer(outcome);
    this.start();
  }
}
