import type { Answer, Answers, Ask, Request } from './messages.js';
import { startWorker } from './trusted-workers.js';
import { WaitingAnswers } from './waiting-answers.js';

/**
 * Hands charts to a worker, where they are read, planned, verified and drawn, so that the page
 * goes on answering however large they are.
 */
export class Desk {
  private readonly worker: Worker;
  private readonly waiting = new WaitingAnswers<Answers[keyof Answers]>();

  constructor() {
    this.worker = startWorker('chart');
    this.worker.addEventListener('message', ({ data }: MessageEvent<Answer>) =>
      this.waiting.take(data),
    );
    const fail = (): void =>
      this.waiting.giveUp(
        'The part that works charts out has stopped. Load the page anew, and open the chart again.',
      );
    this.worker.addEventListener('error', fail);
    this.worker.addEventListener('messageerror', fail);
  }

  /** @throws WorkError with a message for the user */
  ask<R extends Request>(request: R): Promise<Answers[R['ask']]> {
    return this.waiting.ask((id) => this.worker.postMessage({ id, request } satisfies Ask));
  }
}
