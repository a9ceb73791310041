import { printable } from '@halfhitch/core';

/** One line on standard error. */
export function say(message: string): void {
  process.stderr.write(`halfhitch: ${printable(message)}\n`);
}
