import { InputError } from '@halfhitch/core';
import { isOutOfMemory, reasonOf } from '../work/reason.js';

/** What the user is told. */
export function errorInWords(error: unknown): string {
  if (error instanceof InputError) return error.message;
  if (isOutOfMemory(error)) {
    return 'The browser has not enough memory for this picture. Close other pages, or save it smaller.';
  }
  return `Something went wrong in working this out (${reasonOf(error)}). Nothing of your chart is lost.`;
}
