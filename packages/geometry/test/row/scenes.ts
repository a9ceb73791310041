import type { EdgeTechnique } from '@halfhitch/core';
import type { RowKnot, RowScene } from '../../src/index.js';

const knot = (
  column: number,
  kind: RowKnot['kind'],
  tying = 'lake',
  row = 0,
  change?: NonNullable<RowKnot['change']>,
): RowKnot => ({ row, column, kind, tying, held: `b${column}`, ...(change ? { change } : {}) });

const base = ['b0', 'b1', 'b2'];

/** Straight edges: both turns with their two edge knots. */
export const straight: RowScene = {
  base,
  knots: [
    knot(0, 'backward-forward'),
    knot(1, 'forward'),
    knot(2, 'forward-backward'),
    knot(2, 'forward-backward', 'lake', 1),
    knot(1, 'backward', 'lake', 1),
    knot(0, 'backward-forward', 'lake', 1),
    knot(0, 'backward-forward', 'lake', 2),
  ],
};

/** Wrapped edges: the lead goes round the outside. */
export const wrapped: RowScene = {
  base,
  knots: [
    knot(0, 'forward'),
    knot(1, 'forward'),
    knot(2, 'forward'),
    knot(2, 'backward', 'lake', 1),
    knot(1, 'backward', 'lake', 1),
    knot(0, 'backward', 'lake', 1),
    knot(0, 'forward', 'lake', 2),
  ],
};

/** A row, both turns and the first knot after them, by edge technique: every one must be here. */
export const turnsOf: Readonly<Record<EdgeTechnique, RowScene>> = { straight, wrapped };

/** The last knot of a row in a new colour. */
export const atLastKnot: RowScene = {
  base,
  knots: [
    knot(0, 'backward-forward'),
    knot(1, 'forward'),
    knot(2, 'forward-backward', 'buoy', 0, { how: 'passed-behind', oldLead: 'lake' }),
    knot(2, 'forward-backward', 'buoy', 1),
  ],
};

/** A new colour from the next row on. */
export const atTurn: RowScene = {
  base,
  knots: [
    knot(0, 'backward-forward'),
    knot(1, 'forward'),
    knot(2, 'forward-backward'),
    knot(2, 'forward-backward', 'buoy', 1, { how: 'taken-down', oldLead: 'lake' }),
    knot(1, 'backward', 'buoy', 1),
  ],
};

/** A new colour between two inner knots. */
export const withinRow: RowScene = {
  base: [...base, 'b3'],
  knots: [
    knot(0, 'backward-forward'),
    knot(1, 'forward'),
    knot(2, 'forward', 'buoy', 0, { how: 'laid-through', oldLead: 'lake' }),
    knot(3, 'forward-backward', 'buoy'),
  ],
};

/** The first knot, an edge knot, in the old colour, the second in the new. */
export const afterFirstKnot: RowScene = {
  base,
  knots: [
    knot(0, 'backward-forward'),
    knot(1, 'forward', 'buoy', 0, { how: 'laid-through', oldLead: 'lake' }),
    knot(2, 'forward-backward', 'buoy'),
  ],
};
