import { WorkError } from './work-error.js';

/** What a worker answers to what it was asked under an id. */
export type NumberedAnswer<Value> =
  | { readonly id: number; readonly ok: true; readonly value: Value }
  | { readonly id: number; readonly ok: false; readonly message: string };

interface Waiting<Value> {
  readonly resolve: (value: Value) => void;
  readonly reject: (error: Error) => void;
}

/** Those who wait for the answers of a worker, each under an id of its own. */
export class WaitingAnswers<Value> {
  private readonly waiting = new Map<number, Waiting<Value>>();
  private asked = 0;

  /** @param send posts what is asked, with the id that the answer must come under */
  ask<Wanted extends Value>(send: (id: number) => void): Promise<Wanted> {
    const id = ++this.asked;
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve: resolve as Waiting<Value>['resolve'], reject });
      send(id);
    });
  }

  take(answer: NumberedAnswer<Value>): void {
    const waiting = this.waiting.get(answer.id);
    this.waiting.delete(answer.id);
    if (answer.ok) waiting?.resolve(answer.value);
    else waiting?.reject(new WorkError(answer.message));
  }

  /** Answers all who wait alike. */
  dismiss(answer: Value): void {
    for (const { resolve } of this.waiting.values()) resolve(answer);
    this.waiting.clear();
  }

  /** No answer will come any more. `why`: said to the user as it is. */
  giveUp(why: string): void {
    const error = new WorkError(why);
    for (const { reject } of this.waiting.values()) reject(error);
    this.waiting.clear();
  }
}
