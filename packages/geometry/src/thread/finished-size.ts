import { CHART_LIMITS, type Chart, InputError } from '@halfhitch/core';
import type { Lengths } from './usage.js';

/** How long the knotted part is to be: its length, or the wrist it goes round, mm. */
export interface WantedLength {
  readonly length?: number;
  readonly wrist?: number;
}

/** Longest length that can be asked for, mm; the rows of a chart have a limit of their own. */
export const MAX_LENGTH = 20_000;

/** Wrists from an infant's to the largest adult's, with room to spare, mm. */
export const WRIST_LIMITS = { min: 80, max: 300 } as const;

/** Room for a finger under the band, mm (common practice, no source). */
const EASE = 10;

export interface FinishedSize {
  /** mm */
  readonly width: number;
  readonly length: number;
  readonly thickness: number;
  /** Width of one knot by its height. */
  readonly aspect: number;
}

export function finishedSize(rows: number, columns: number, lengths: Lengths): FinishedSize {
  return {
    width: columns * lengths.pitch + lengths.edges,
    length: rows * lengths.rowHeight,
    thickness: lengths.thickness,
    aspect: lengths.pitch / lengths.rowHeight,
  };
}

/**
 * Length of band for a wrist: once round at half the band's thickness above the skin, with ease.
 */
export function bandLength(wrist: number, thickness: number): number {
  if (!(wrist >= WRIST_LIMITS.min && wrist <= WRIST_LIMITS.max)) {
    throw new InputError(
      'wrist',
      `A wrist of ${wrist} mm cannot be right.`,
      {},
      `Measure once round in mm, from ${WRIST_LIMITS.min} to ${WRIST_LIMITS.max}.`,
    );
  }
  return wrist + Math.PI * thickness + EASE;
}

/**
 * Rows for a wanted length, to the nearest whole row.
 *
 * @throws InputError when both figures are given, or one is outside its limits
 */
export function rowsFor(
  wanted: WantedLength,
  lengths: Pick<Lengths, 'rowHeight' | 'thickness'> & {
    /** What the first and the last row add to the length of all rows, mm. Default 0. */
    readonly ends?: number;
  },
): number | null {
  if (wanted.length !== undefined && wanted.wrist !== undefined) {
    throw new InputError(
      'length-twice',
      'Both a length and a wrist are given.',
      {},
      'Give one of the two.',
    );
  }
  const length =
    wanted.wrist === undefined ? wanted.length : bandLength(wanted.wrist, lengths.thickness);
  if (length === undefined) return null;
  if (!(length > 0 && length <= MAX_LENGTH)) {
    throw new InputError(
      'length',
      `A length of ${length} mm cannot be planned.`,
      {},
      `Give a length above 0 and at most ${MAX_LENGTH} mm.`,
    );
  }
  const rows = Math.max(1, Math.round((length - (lengths.ends ?? 0)) / lengths.rowHeight));
  if (rows > CHART_LIMITS.maxRows) {
    throw new InputError(
      'too-many-rows',
      `A length of ${Math.round(length)} mm takes ${rows} rows of this thread.`,
      {},
      `A piece has at most ${CHART_LIMITS.maxRows} rows; make it shorter or the thread thicker.`,
    );
  }
  return rows;
}

/** The chart knotted again and again below itself until it has so many rows. */
export function repeated(chart: Chart, rows: number): Chart {
  if (rows === chart.rows) return chart;
  const cells = new Uint8Array(rows * chart.columns);
  for (let at = 0; at < cells.length; at += chart.cells.length) {
    cells.set(chart.cells.subarray(0, Math.min(chart.cells.length, cells.length - at)), at);
  }
  const { knots: _, ...drawing } = chart;
  return { ...drawing, rows, cells };
}
