import { startWorker } from '../../work/trusted-workers.js';
import { WaitingAnswers } from '../../work/waiting-answers.js';
import type { DiagonalAnswer, DiagonalAnswers, DiagonalAsk, DiagonalRequest } from './messages.js';

/** Hands diagonal patterns to a worker, where they are planned and verified. */
export class DiagonalDesk {
  private worker: Worker | null = null;
  private readonly waiting = new WaitingAnswers<DiagonalAnswers[keyof DiagonalAnswers]>();

  /** @throws WorkError with a message for the user */
  ask<R extends DiagonalRequest>(request: R): Promise<DiagonalAnswers[R['ask']]> {
    this.worker ??= this.hire();
    const { worker } = this;
    return this.waiting.ask((id) => worker.postMessage({ id, request } satisfies DiagonalAsk));
  }

  private hire(): Worker {
    const worker = startWorker('diagonal');
    worker.addEventListener('message', ({ data }: MessageEvent<DiagonalAnswer>) =>
      this.waiting.take(data),
    );
    const stopped = (): void => {
      worker.terminate();
      this.worker = null;
      this.waiting.giveUp(
        'The part that works diagonal patterns out has stopped. Open the pattern again, a smaller one if it stops again.',
      );
    };
    worker.addEventListener('error', stopped);
    worker.addEventListener('messageerror', stopped);
    return worker;
  }
}
