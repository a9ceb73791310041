import { startWorker } from './trusted-workers.js';
import { type NumberedAnswer, WaitingAnswers } from './waiting-answers.js';

/** What a worker is asked, under an id that its answer comes under. */
export interface NumberedAsk<Request> {
  readonly id: number;
  readonly request: Request;
}

/** Has requests worked off in a worker of their own, hired when it is first needed. */
export class WorkerDesk<Request extends { readonly ask: keyof Answers }, Answers extends object> {
  private worker: Worker | null = null;
  private readonly waiting = new WaitingAnswers<Answers[keyof Answers]>();

  /** @param stopped told to the user when the worker has died; another request hires a new one */
  constructor(
    private readonly which: Parameters<typeof startWorker>[0],
    private readonly stopped: string,
  ) {}

  /** @throws WorkError with a message for the user */
  ask<R extends Request>(request: R): Promise<Answers[R['ask']]> {
    this.worker ??= this.hire();
    const { worker } = this;
    return this.waiting.ask((id) => worker.postMessage({ id, request } as NumberedAsk<Request>));
  }

  /** Gives up all work; who waits for it is answered so. */
  protected dismiss(answer: Answers[keyof Answers]): void {
    this.worker?.terminate();
    this.worker = null;
    this.waiting.dismiss(answer);
  }

  private hire(): Worker {
    const worker = startWorker(this.which);
    worker.addEventListener(
      'message',
      ({ data }: MessageEvent<NumberedAnswer<Answers[keyof Answers]>>) => this.waiting.take(data),
    );
    const stopped = (): void => {
      worker.terminate();
      if (this.worker === worker) this.worker = null;
      this.waiting.giveUp(this.stopped);
    };
    worker.addEventListener('error', stopped);
    worker.addEventListener('messageerror', stopped);
    return worker;
  }
}
