import { InputError } from '@halfhitch/core';

/** What went wrong in a worker, said to the user as it is. `what` is worked on: "chart". */
export function wrongInWords(error: unknown, what: string): string {
  if (error instanceof InputError) return error.message;
  if (error instanceof RangeError && /alloc|memory|array/i.test(error.message)) {
    return `The browser has not enough memory for this ${what}. Close other pages, or use a smaller ${what}.`;
  }
  return `Something went wrong in working this out (${error instanceof Error ? error.message : String(error)}). What was open stays open.`;
}
