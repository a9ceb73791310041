import { halvesInWords, leadInWords, list } from '../instructions/wording.js';
import { changesPlaces, type KnotKind, startSide } from '../model/knot.js';
import type { ThreadString } from '../model/strings.js';

/** How places, knots and strings of diagonal work are called. Slots come in counted from 0. */

/** "slots 3-4": the slots of a knot's two strings. */
export function slotsInWords(slot: number): string {
  return `slots ${slot + 1}-${slot + 2}`;
}

/** "slots 1-2 to 9-10", from the first knot of a run to its last. */
export function slotRangeInWords(first: number, last: number): string {
  return first === last ? slotsInWords(first) : `${slotsInWords(first)} to ${last + 1}-${last + 2}`;
}

/** What a knot of a kind is: who ties it, its halves, and what becomes of the places. */
export function kindInFull(kind: KnotKind): string {
  const side = startSide(kind);
  const other = side === 'left' ? 'right' : 'left';
  const after = changesPlaces(kind) ? 'the two change places' : 'each hangs in its own place again';
  return `the ${side} string ties ${halvesInWords(kind)} onto the ${other} one, and ${after}`;
}

/** "S3, S4 (chalk), S1 (lake blue)": strings from the left, a colour named once for a stretch. */
export function orderInWords(strings: readonly ThreadString[]): string {
  const stretches: string[] = [];
  for (let at = 0; at < strings.length; ) {
    const first = strings[at] as ThreadString;
    let end = at + 1;
    while (end < strings.length && alike(first, strings[end] as ThreadString)) end++;
    const before = strings.slice(at, end - 1).map((string) => `${string.id}, `);
    stretches.push(before.join('') + leadInWords(strings[end - 1] as ThreadString));
    at = end;
  }
  return stretches.join(', ');
}

function alike(one: ThreadString, other: ThreadString): boolean {
  return one.colour === other.colour && one.name === other.name;
}

/** "S1 (lake blue) and S8 (chalk)" */
export function stringsInWords(strings: readonly ThreadString[]): string {
  return list(strings.map(leadInWords));
}
