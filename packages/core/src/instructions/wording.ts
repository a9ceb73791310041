import type { KnotKind } from '../model/knot.js';
import type { ThreadString } from '../model/strings.js';
import type { Direction } from '../plan/plan.js';
import { printable } from '../printable.js';

/** How strings, places and counts are called in instructions. Columns come in counted from 0. */

/** A string's colour: its name, or its number where it has none. */
export function colourInWords(string: ThreadString): string {
  const name = printable(string.name);
  return name === '' ? printable(string.colour) : name;
}

/** A lead with its colour: "L2 (lake blue)". */
export function leadInWords(string: ThreadString): string {
  return `${printable(string.id)} (${colourInWords(string)})`;
}

/** What is tied onto: "base string 4". In a broken plan it may be a lead. */
export function heldInWords(held: ThreadString, column: number): string {
  return column < 0 ? `string ${printable(held.id)}` : `base string ${column + 1}`;
}

/** "base string 4", or "base strings 7 to 2" in the order of knotting. */
export function baseStrings(first: number, last: number): string {
  if (first === last) return `base string ${first + 1}`;
  return Math.abs(first - last) === 1
    ? `base strings ${first + 1} and ${last + 1}`
    : `base strings ${first + 1} to ${last + 1}`;
}

export function count(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}

/** "a, b and c" */
export function list(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}

export function directionInWords(direction: Direction): string {
  return direction === 'right' ? 'from left to right' : 'from right to left';
}

export function otherSide(side: 'left' | 'right'): 'left' | 'right' {
  return side === 'left' ? 'right' : 'left';
}

/** What a knot of two unlike halves does: its halves, and where that leaves the lead. */
export function halvesInWords(kind: KnotKind): string {
  switch (kind) {
    case 'forward':
      return 'two forward half hitches';
    case 'backward':
      return 'two backward half hitches';
    case 'forward-backward':
      return 'a forward half hitch, then a backward one';
    case 'backward-forward':
      return 'a backward half hitch, then a forward one';
  }
}
