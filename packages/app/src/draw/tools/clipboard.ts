import type { Patch } from '../edit/patch.js';

/** What was copied last, in whichever chart: it can be pasted into another. */
let copied: Patch | null = null;

export function copy(patch: Patch): void {
  copied = patch;
}

export function lastCopied(): Patch | null {
  return copied;
}
