import { InputError } from '@halfhitch/core';

/** What the user is told. */
export function errorInWords(error: unknown): string {
  if (error instanceof InputError) return error.message;
  if (error instanceof RangeError && /alloc|memory|array/i.test(error.message)) {
    return 'The browser has not enough memory for this picture. Close other pages, or save it smaller.';
  }
  return `Something went wrong in working this out (${error instanceof Error ? error.message : String(error)}). Nothing of your chart is lost.`;
}
