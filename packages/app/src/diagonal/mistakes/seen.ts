import {
  ANY_COLOUR,
  DIAGONAL_DIAGNOSE_LIMITS,
  DiagonalLook,
  type DiagonalPattern,
  type DiagonalSeen,
  knotsAcross,
  type Lattice,
} from '@halfhitch/core';
import { placesFilled, shownBy } from '../edit/pattern.js';

/** What a maker has marked of a piece so far, on the lattice of its rows that are tied. */
export interface Seen {
  readonly lattice: Lattice;
  /** Colours; ANY_COLOUR where nobody has looked. */
  readonly cells: Uint8Array;
  /** Looks of the knots; DiagonalLook.notLooked where nobody has looked. */
  readonly looks: Uint8Array;
}

/** Most rows of a pattern that can be looked into. */
export function mostRows(pattern: DiagonalPattern): number {
  const across = Math.max(1, knotsAcross(pattern));
  return Math.min(pattern.rows, Math.floor(DIAGONAL_DIAGNOSE_LIMITS.knots / across));
}

export function nothingSeen({ strings, first }: DiagonalPattern, rows: number): Seen {
  const lattice = { strings, first, rows };
  return {
    lattice,
    cells: placesFilled(lattice, ANY_COLOUR),
    looks: placesFilled(lattice, DiagonalLook.notLooked),
  };
}

/** The same marks on more or fewer rows. */
export function seenUpTo(seen: Seen, pattern: DiagonalPattern, rows: number): Seen {
  const next = nothingSeen(pattern, rows);
  const cells = next.cells.slice();
  const looks = next.looks.slice();
  cells.set(seen.cells.subarray(0, cells.length));
  looks.set(seen.looks.subarray(0, looks.length));
  return { ...next, cells, looks };
}

/** Every colour as the pattern has it, to be changed where it looks otherwise. */
export function asDrawn(seen: Seen, pattern: DiagonalPattern): Seen {
  return { ...seen, cells: shownBy(pattern).cells.slice(0, seen.cells.length) };
}

export function isAnythingSeen({ cells, looks, lattice }: Seen): boolean {
  const empty = placesFilled(lattice, ANY_COLOUR);
  const unlooked = placesFilled(lattice, DiagonalLook.notLooked);
  return (
    cells.some((cell, at) => cell !== empty[at]) || looks.some((look, at) => look !== unlooked[at])
  );
}

export function seenOf({ lattice, cells, looks }: Seen, pattern: DiagonalPattern): DiagonalSeen {
  const { name, colours } = pattern;
  return { name, ...lattice, colours, cells, looks };
}
