import type { DiagonalPattern } from '@halfhitch/core';
import { resolveOptions } from '../../knot/options.js';
import { latticeWork } from '../knots.js';
import { KnotSequence } from '../sequence.js';
import { spacing } from '../spacing.js';

export interface DiagonalSceneOptions {
  /** Diameter of the strings, mm. Default 1. */
  readonly diameter?: number;
  /** Slots shown on each side of the knot being tied, at least. Default 5. */
  readonly beside?: number;
  /** Rows shown above the one in work. Default 4. */
  readonly above?: number;
}

/** A diagonal pattern of which one knot after the other can be posed. */
export interface DiagonalScene {
  readonly pattern: DiagonalPattern;
  /** How many knots it has. */
  readonly knots: number;
  /** Distance of neighbouring slots and of rows, mm. */
  readonly slotPitch: number;
  readonly rowHeight: number;
  /** @internal */
  readonly sequence: KnotSequence;
  /** @internal */
  readonly diameter: number;
  /** @internal */
  readonly beside: number;
  /** @internal */
  readonly above: number;
}

/** @throws GeometryError when the diameter is outside its limits */
export function diagonalScene(
  pattern: DiagonalPattern,
  options: DiagonalSceneOptions = {},
): DiagonalScene {
  const { diameter } = resolveOptions(
    options.diameter === undefined ? {} : { tyingDiameter: options.diameter },
  );
  const sequence = new KnotSequence(latticeWork(pattern));
  const { slot, row } = spacing();
  return {
    pattern,
    knots: sequence.cells.length,
    slotPitch: slot * diameter,
    rowHeight: row * diameter,
    sequence,
    diameter,
    beside: Math.max(2, Math.trunc(options.beside ?? 5)),
    above: Math.max(1, Math.trunc(options.above ?? 4)),
  };
}
