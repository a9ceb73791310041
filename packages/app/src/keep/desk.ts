import { startWorker } from '../work/trusted-workers.js';
import { WaitingAnswers } from '../work/waiting-answers.js';
import type { KeepAnswer, KeepAnswers, KeepAsk, KeepRequest } from './messages.js';

/** Has files written and read in a worker of their own, hired when it is first needed. */
export class KeepDesk {
  private worker: Worker | null = null;
  private readonly waiting = new WaitingAnswers<KeepAnswers[keyof KeepAnswers]>();

  /** @throws WorkError with a message for the user */
  ask<R extends KeepRequest>(request: R): Promise<KeepAnswers[R['ask']]> {
    this.worker ??= this.hire();
    const { worker } = this;
    return this.waiting.ask((id) => worker.postMessage({ id, request } satisfies KeepAsk));
  }

  private hire(): Worker {
    const worker = startWorker('keep');
    worker.addEventListener('message', ({ data }: MessageEvent<KeepAnswer>) =>
      this.waiting.take(data),
    );
    const stopped = (): void => {
      worker.terminate();
      this.worker = null;
      this.waiting.giveUp(
        'The part that reads and writes files has stopped. Try again, with a smaller piece if it stops again.',
      );
    };
    worker.addEventListener('error', stopped);
    worker.addEventListener('messageerror', stopped);
    return worker;
  }
}

/** One for the whole page. */
export const keepDesk = new KeepDesk();
