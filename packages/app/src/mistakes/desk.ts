import type { Piece } from '../work/messages.js';
import { startWorker } from '../work/trusted-workers.js';
import { WaitingAnswers } from '../work/waiting-answers.js';
import type { MistakesAnswer, MistakesAnswers, MistakesAsk, MistakesRequest } from './messages.js';

/** A larger piece is not knotted anew for each mistake tried. */
export const MOST_KNOTS = 400_000;

/**
 * Has mistakes made and found in a worker of their own, so that neither the page nor its picture
 * waits for them. It is started when it is first asked, and can be stopped at any time.
 */
export class MistakesDesk {
  private worker: Worker | null = null;
  private known: Piece | null = null;
  private readonly waiting = new WaitingAnswers<MistakesAnswers[keyof MistakesAnswers]>();

  /** @throws WorkError with a message for the user */
  ask<R extends MistakesRequest>(piece: Piece, request: R): Promise<MistakesAnswers[R['ask']]> {
    this.worker ??= this.hire();
    const sent = this.known === piece ? null : { chart: piece.chart, choice: piece.choice };
    this.known = piece;
    const { worker } = this;
    return this.waiting.ask((id) =>
      worker.postMessage({ id, piece: sent, request } satisfies MistakesAsk),
    );
  }

  /** Gives up all that is being worked out. */
  stop(why = 'Stopped. What was marked is still there.'): void {
    this.worker?.terminate();
    this.worker = null;
    this.known = null;
    this.waiting.giveUp(why);
  }

  private hire(): Worker {
    const worker = startWorker('mistakes');
    worker.addEventListener('message', ({ data }: MessageEvent<MistakesAnswer>) => {
      // It may have failed at the piece itself, which is then sent again.
      if (!data.ok) this.known = null;
      this.waiting.take(data);
    });
    const stopped = (): void =>
      this.stop('The part that looks into mistakes has stopped. Try again to start it anew.');
    worker.addEventListener('error', stopped);
    worker.addEventListener('messageerror', stopped);
    return worker;
  }
}
