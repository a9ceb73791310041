import { WorkError } from '../work/desk.js';
import { startWorker } from '../work/trusted-workers.js';
import type { KeepAnswer, KeepAnswers, KeepAsk, KeepRequest } from './messages.js';

interface Waiting {
  readonly resolve: (value: KeepAnswers[keyof KeepAnswers]) => void;
  readonly reject: (error: Error) => void;
}

/** Has files written and read in a worker of their own, hired when it is first needed. */
export class KeepDesk {
  private worker: Worker | null = null;
  private readonly waiting = new Map<number, Waiting>();
  private asked = 0;

  /** @throws WorkError with a message for the user */
  ask<R extends KeepRequest>(request: R): Promise<KeepAnswers[R['ask']]> {
    this.worker ??= this.hire();
    const id = ++this.asked;
    const { worker } = this;
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve: resolve as Waiting['resolve'], reject });
      worker.postMessage({ id, request } satisfies KeepAsk);
    });
  }

  private hire(): Worker {
    const worker = startWorker('keep');
    worker.addEventListener('message', ({ data }: MessageEvent<KeepAnswer>) => {
      const waiting = this.waiting.get(data.id);
      this.waiting.delete(data.id);
      if (data.ok) waiting?.resolve(data.value);
      else waiting?.reject(new WorkError(data.message));
    });
    const stopped = (): void => {
      worker.terminate();
      this.worker = null;
      const error = new WorkError(
        'The part that reads and writes files has stopped. Try again, with a smaller piece if it stops again.',
      );
      for (const { reject } of this.waiting.values()) reject(error);
      this.waiting.clear();
    };
    worker.addEventListener('error', stopped);
    worker.addEventListener('messageerror', stopped);
    return worker;
  }
}

/** One for the whole page. */
export const keepDesk = new KeepDesk();
