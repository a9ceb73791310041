import { InputError } from '@halfhitch/core';
import { isOutOfMemory, reasonOf } from './reason.js';

/** What went wrong in a worker, said to the user as it is. `what` is worked on: "chart". */
export function wrongInWords(error: unknown, what: string): string {
  if (error instanceof InputError) return error.message;
  if (isOutOfMemory(error)) {
    return `The browser has not enough memory for this ${what}. Close other pages, or use a smaller ${what}.`;
  }
  return `Something went wrong in working this out (${reasonOf(error)}). What was open stays open.`;
}
