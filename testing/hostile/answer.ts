import { expect } from 'vitest';

/** An error of our own, as a maker or a developer gets to see it. */
interface OwnError extends Error {
  readonly what?: string;
  readonly remedy?: string;
  readonly place?: { readonly line?: number; readonly row?: number; readonly column?: number };
}

export type OwnErrorClass = new (...args: never[]) => OwnError;

/** Nothing in a message may move the cursor, turn the text round or be half a character. */
const UNSPEAKABLE = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069\ufeff]/u;
const LONGEST_MESSAGE = 1_500;

/** What a hostile document could change for the whole page. */
const SHARED = [Object, Array, Function, String, Number, Map, Set, RegExp, Uint8Array].map(
  ({ prototype }) => prototype as object,
);

function sharedState(): string {
  return SHARED.map((prototype) => Reflect.ownKeys(prototype).map(String).join()).join(';');
}

const CLEAN = sharedState();

/**
 * Reads hostile input. It must end in an answer, or in an error of our own that says what is wrong
 * and what to do, in words that are safe to show; and nothing that all code shares may be changed.
 *
 * @returns the answer, or null when it was refused
 */
export function answerOrRefusal<T>(
  own: OwnErrorClass | readonly OwnErrorClass[],
  read: () => T,
): T | null {
  let answer: T | null = null;
  try {
    answer = read();
  } catch (error) {
    expectPlainWords(ownError(own, error));
  }
  expect(sharedState()).toBe(CLEAN);
  return answer;
}

function ownError(own: OwnErrorClass | readonly OwnErrorClass[], error: unknown): OwnError {
  const found = [own].flat().some((one) => error instanceof (one as OwnErrorClass));
  if (!found) throw error;
  return error as OwnError;
}

function expectPlainWords(error: OwnError): void {
  const { message, what, remedy, place } = error;
  expect(message).not.toMatch(UNSPEAKABLE);
  expect(message.length).toBeLessThan(LONGEST_MESSAGE);
  expect(message).toMatch(/\p{L}{2}.*[.)]$/su);
  // What is quoted from the input may say anything.
  expect(message.replace(/".*"/gsu, '')).not.toMatch(/undefined|\[object/u);
  if (what !== undefined) expect(what).toMatch(/\S/u);
  if (remedy !== undefined) expect(remedy).toMatch(/\p{L}{2}.*[.)"]$/su);
  for (const part of ['line', 'row', 'column'] as const) {
    const at = place?.[part];
    if (at === undefined) continue;
    expect(Number.isSafeInteger(at) && at >= 1, `${part} ${at}`).toBe(true);
  }
}
