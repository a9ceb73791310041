import {
  ANY_COLOUR,
  BARE,
  type ChartColour,
  type DiagonalPattern,
  knotsAcross,
  knotsInRow,
  type Lattice,
  NO_KNOT,
} from '@halfhitch/core';
import fc from 'fast-check';
import { USUAL_SETTINGS } from '../../src/cut/settings.js';
import type { DiagonalProject } from '../../src/project/project.js';

export const COLOURS: readonly ChartColour[] = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#d9642a', name: 'buoy orange' },
  { key: 'w', hex: '#f4f1e8', name: 'chalk' },
];

export const anyLattice: fc.Arbitrary<Lattice> = fc.record({
  strings: fc.integer({ min: 2, max: 9 }),
  rows: fc.integer({ min: 1, max: 8 }),
  first: fc.constantFrom<0 | 1>(0, 1),
});

/** Bytes for each place of a lattice, and 255 where there is none. */
function placesOf(lattice: Lattice, entries: readonly number[]): fc.Arbitrary<Uint8Array> {
  const across = knotsAcross(lattice);
  const size = lattice.rows * across;
  return fc
    .array(fc.constantFrom(...entries), { minLength: size, maxLength: size })
    .map((list) =>
      Uint8Array.from(list, (byte, at) =>
        at % across < knotsInRow(lattice, Math.floor(at / across)) ? byte : 255,
      ),
    );
}

export const anyPattern: fc.Arbitrary<DiagonalPattern> = anyLattice.chain((lattice) =>
  fc.record({
    name: fc.constantFrom('', 'Heron', 'Otter'),
    strings: fc.constant(lattice.strings),
    rows: fc.constant(lattice.rows),
    first: fc.constant(lattice.first),
    colours: fc.constant(COLOURS),
    start: fc.uint8Array({ max: 2, minLength: lattice.strings, maxLength: lattice.strings }),
    knots: placesOf(lattice, [0, 1, 2, 3, NO_KNOT]),
  }),
);

export const anyDiagonalProject: fc.Arbitrary<DiagonalProject> = anyPattern.chain((pattern) => {
  const { name, strings, rows, first, colours } = pattern;
  return fc.record({
    kind: fc.constant('diagonal' as const),
    id: fc.uuid(),
    pattern: fc.constant(pattern),
    wanted: fc.option(
      placesOf(pattern, [0, 1, 2, ANY_COLOUR, BARE]).map((cells) => ({
        name,
        strings,
        rows,
        first,
        colours,
        cells,
      })),
    ),
    cut: fc.constant(USUAL_SETTINGS),
    created: fc.nat(),
    changed: fc.nat(),
  });
});
