import { startWorker } from '../work/trusted-workers.js';
import type { Answer, Answers, Ask, Request } from './messages.js';

/** Said to the user as it is. */
export class PictureError extends Error {
  override readonly name = 'PictureError';
}

interface Waiting {
  readonly resolve: (value: Answers[keyof Answers] | null) => void;
  readonly reject: (error: Error) => void;
}

/**
 * Has pictures unpacked, reduced and drawn in a worker of their own. A request takes the place of
 * an earlier one of its kind, which is given up and answered with null.
 */
export class PictureDesk {
  private worker: Worker | null = null;
  private readonly waiting = new Map<number, Waiting>();
  private asked = 0;

  /**
   * The answer, or null when a later request of the kind was made meanwhile.
   *
   * @throws PictureError with a message for the user
   */
  ask<R extends Request>(request: R): Promise<Answers[R['ask']] | null> {
    const id = ++this.asked;
    this.worker ??= this.hire();
    const { worker } = this;
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve: resolve as Waiting['resolve'], reject });
      worker.postMessage({ id, request } satisfies Ask);
    });
  }

  /** Gives up all work, and the picture that is open. */
  close(): void {
    this.worker?.terminate();
    this.worker = null;
    for (const { resolve } of this.waiting.values()) resolve(null);
    this.waiting.clear();
  }

  private hire(): Worker {
    const worker = startWorker('picture');
    worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => this.take(data));
    const stopped = (): void => {
      const error = new PictureError(
        'The part that works pictures out has stopped. Choose the picture again; if that does not help, save it smaller.',
      );
      worker.terminate();
      if (this.worker === worker) this.worker = null;
      for (const { reject } of this.waiting.values()) reject(error);
      this.waiting.clear();
    };
    worker.addEventListener('error', stopped);
    worker.addEventListener('messageerror', stopped);
    return worker;
  }

  private take(answer: Answer): void {
    const waiting = this.waiting.get(answer.id);
    this.waiting.delete(answer.id);
    if (answer.state === 'done') waiting?.resolve(answer.value);
    else if (answer.state === 'given-up') waiting?.resolve(null);
    else waiting?.reject(new PictureError(answer.message));
  }
}
