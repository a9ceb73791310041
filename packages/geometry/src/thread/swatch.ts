import { InputError } from '@halfhitch/core';
import type { KnotMeasures } from './measures.js';

/** A piece knotted to try the thread, and what it measured. */
export interface Swatch {
  readonly rows: number;
  readonly columns: number;
  /** mm */
  readonly width: number;
  /** mm */
  readonly length: number;
}

export interface Calibration {
  /** Diameter that explains the swatch best, mm. */
  readonly diameter: number;
  /** How much wider and longer the swatch is than knots of that diameter would make it. */
  readonly across: number;
  readonly along: number;
  /** What is left unexplained by the diameter alone, as a share of the measured sizes. */
  readonly residual: { readonly width: number; readonly length: number };
  /** Share by which lengths may still be off. */
  readonly uncertainty: number;
}

/** Most of each that a swatch can have; sizes in mm. */
export const SWATCH_LIMITS = { columns: 300, rows: 10_000, size: 100_000 } as const;

/** A rule is read to half a millimetre, and a knotted band yields by about so much, mm. */
const READING_ERROR = 0.5;

/** What is left to the hand: no two rows are pulled alike. */
const HAND = 0.04;

/**
 * Fits the diameter to a swatch. Width and length each give one; their geometric mean explains
 * both as well as one figure can, and what it leaves is the residual, equal and opposite in the
 * two directions when seen on a logarithmic scale.
 *
 * @throws InputError when a figure is missing, not above zero or over its limit
 */
export function calibrate(
  swatch: Swatch,
  measures: Pick<KnotMeasures, 'pitch' | 'edges' | 'rowHeight'> & {
    /** What the first and the last row add to the length of all rows. Default 0. */
    readonly ends?: number;
  },
): Calibration {
  const { rows, columns, width, length } = swatch;
  whole('rows', rows, SWATCH_LIMITS.rows);
  whole('columns', columns, SWATCH_LIMITS.columns);
  size('width', width);
  size('length', length);
  const fromWidth = width / (columns * measures.pitch + (measures.edges ?? 0));
  const fromLength = length / (rows * measures.rowHeight + (measures.ends ?? 0));
  const diameter = Math.sqrt(fromWidth * fromLength);
  const across = fromWidth / diameter;
  const along = fromLength / diameter;
  return {
    diameter,
    across,
    along,
    residual: { width: 1 - 1 / across, length: 1 - 1 / along },
    uncertainty: Math.hypot(HAND, READING_ERROR / width, READING_ERROR / length),
  };
}

function whole(what: string, value: number, most: number): void {
  if (Number.isInteger(value) && value >= 1 && value <= most) return;
  throw new InputError(
    'swatch',
    `A swatch of ${value} ${what} cannot be measured.`,
    {},
    `Count whole ${what}, from 1 to ${most}.`,
  );
}

function size(what: string, value: number): void {
  if (value > 0 && value <= SWATCH_LIMITS.size) return;
  throw new InputError(
    'swatch',
    `A swatch with a ${what} of ${value} mm cannot be used.`,
    {},
    `Give the measured ${what} in mm, above 0 and at most ${SWATCH_LIMITS.size}.`,
  );
}
