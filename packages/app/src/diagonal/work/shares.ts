import { type DiagonalReading, NO_STRING_HERE } from '@halfhitch/core';

/** What a string does in a pattern; named by its slot at the start, from 0. */
export interface StringShare {
  readonly slot: number;
  /** Its colour, by its place in the legend. */
  readonly colour: number;
  readonly ties: number;
  readonly holds: number;
  /** Slot in which it hangs after the last row. */
  readonly ends: number;
}

/** Who ties how much: a string that ties needs far more thread than one that is tied onto. */
export function sharesOf({ pattern, tying, held, order }: DiagonalReading): StringShare[] {
  const { strings, rows, start } = pattern;
  const ties = new Uint32Array(strings);
  const holds = new Uint32Array(strings);
  for (let at = 0; at < tying.length; at++) {
    const string = tying[at] as number;
    if (string === NO_STRING_HERE) continue;
    ties[string] = (ties[string] as number) + 1;
    const other = held[at] as number;
    holds[other] = (holds[other] as number) + 1;
  }
  const ends = new Uint16Array(strings);
  for (let slot = 0; slot < strings; slot++) ends[order[rows * strings + slot] as number] = slot;
  return Array.from(start, (colour, slot) => ({
    slot,
    colour,
    ties: ties[slot] as number,
    holds: holds[slot] as number,
    ends: ends[slot] as number,
  }));
}
