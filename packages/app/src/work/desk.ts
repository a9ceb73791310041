import type { Answer, Answers, Ask, Request } from './messages.js';
import { startWorker } from './trusted-workers.js';

/** Said to the user as it is. */
export class WorkError extends Error {
  override readonly name = 'WorkError';
}

interface Waiting {
  readonly resolve: (value: Answers[keyof Answers]) => void;
  readonly reject: (error: Error) => void;
}

/**
 * Hands charts to a worker, where they are read, planned, verified and drawn, so that the page
 * goes on answering however large they are.
 */
export class Desk {
  private readonly worker: Worker;
  private readonly waiting = new Map<number, Waiting>();
  private asked = 0;

  constructor() {
    this.worker = startWorker('chart');
    this.worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
      const waiting = this.waiting.get(data.id);
      this.waiting.delete(data.id);
      if (data.ok) waiting?.resolve(data.value);
      else waiting?.reject(new WorkError(data.message));
    });
    const fail = (): void => {
      const error = new WorkError(
        'The part that works charts out has stopped. Load the page anew, and open the chart again.',
      );
      for (const { reject } of this.waiting.values()) reject(error);
      this.waiting.clear();
    };
    this.worker.addEventListener('error', fail);
    this.worker.addEventListener('messageerror', fail);
  }

  /** @throws WorkError with a message for the user */
  ask<R extends Request>(request: R): Promise<Answers[R['ask']]> {
    const id = ++this.asked;
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve: resolve as Waiting['resolve'], reject });
      this.worker.postMessage({ id, request } satisfies Ask);
    });
  }
}
