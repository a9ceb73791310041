import {
  DIAGONAL_LIMITS,
  type DiagonalPattern,
  InputError,
  knotsAcross,
  type StringId,
  simulateDiagonal,
} from '@halfhitch/core';
import {
  type ColourTotal,
  type CutOptions,
  type Estimate,
  figure,
  OFF_MODEL,
  ROUND_TO,
  totalsOf,
} from '../thread/cut-list.js';
import { type FinishedSize, rowsFor } from '../thread/finished-size.js';
import { type Calibration, calibrate, type Swatch } from '../thread/swatch.js';
import { type Thread, threadOf } from '../thread/thread.js';
import { latticeSize } from './fabric.js';
import { latticeWork } from './knots.js';
import { spacing } from './spacing.js';
import { type WorthSwapping, worthSwapping } from './swaps.js';
import { diagonalUsage } from './usage.js';

/** A piece of diagonal work knotted to try the thread. Sizes in mm. */
export interface DiagonalSwatch extends Omit<Swatch, 'columns'> {
  readonly strings: number;
}

export interface DiagonalCutOptions
  extends Pick<CutOptions, 'length' | 'wrist' | 'thread' | 'tails' | 'margin' | 'putUp'> {
  readonly swatch?: DiagonalSwatch;
}

export interface DiagonalCutPiece {
  readonly string: StringId;
  /** Slot in which it hangs at the start, from 0. */
  readonly slot: number;
  readonly role: 'base';
  readonly colour: string;
  readonly name: string;
  readonly knotsTied: number;
  readonly knotsHeld: number;
  /** What the length is made of, mm. */
  readonly parts: {
    /** In the knots it ties, and in those tied onto it. */
    readonly tied: number;
    readonly held: number;
    /** Between its knots. */
    readonly ways: number;
    readonly tails: number;
    readonly margin: number;
  };
  readonly length: Estimate;
  /** What to cut: the length, rounded up to whole centimetres, mm. */
  readonly cut: number;
}

export interface DiagonalCutList {
  readonly rows: number;
  readonly strings: number;
  /** How often the pattern is knotted, its last time perhaps in part. */
  readonly repeats: number;
  /** Whether the colours hang as at the start when the pattern is knotted once. */
  readonly coloursClose: boolean;
  readonly thread: Thread;
  readonly calibration: Calibration | null;
  readonly size: FinishedSize;
  /** Share by which every length may be off, 0.1 for a tenth. */
  readonly uncertainty: number;
  /** By the slots in which they hang. */
  readonly pieces: readonly DiagonalCutPiece[];
  readonly totals: readonly ColourTotal[];
  /** Strings of one colour that share their knots unevenly, and where to swap them. */
  readonly swaps: readonly WorthSwapping[];
  readonly putUp: number;
}

/** A swap that saves less of the longest string is not worth changing a pattern for. */
const WORTH = 0.1;

/**
 * What to cut for a diagonal pattern.
 *
 * @throws InputError when a figure is outside its limits, or the pattern cannot be repeated to the
 * length that is asked for
 */
export function diagonalCutList(
  pattern: DiagonalPattern,
  options: DiagonalCutOptions = {},
): DiagonalCutList {
  const tails = figure('tails', options.tails);
  const margin = figure('margin', options.margin) / 100;
  const putUp = figure('putUp', options.putUp);
  const thread = threadOf(options.thread);
  const calibration = options.swatch === undefined ? null : calibrated(options.swatch);
  const diameter = calibration?.diameter ?? thread.diameter;
  const uncertainty = calibration?.uncertainty ?? Math.hypot(OFF_MODEL, thread.uncertainty);
  const scale = {
    x: diameter * (calibration?.across ?? 1),
    y: diameter * (calibration?.along ?? 1),
    z: diameter,
  };
  const wanted = rowsWanted(options, scale);
  const knotted = repeatedRows(pattern, wanted ?? pattern.rows);
  const work = latticeWork(knotted);

  const pieces = diagonalUsage(knotted, diameter).map((usage): DiagonalCutPiece => {
    const { tied, held, ways } = usage;
    const both = 2 * tails;
    const parts = { tied, held, ways, tails: both, margin: margin * (tied + held + ways + both) };
    const mm = Object.values(parts).reduce((sum, part) => sum + part, 0);
    const { colour, name } = work.strings[usage.slot]!;
    return {
      string: usage.string,
      slot: usage.slot,
      role: 'base',
      colour,
      name,
      knotsTied: Object.values(usage.ties).reduce((sum, count) => sum + count, 0),
      knotsHeld: usage.holds,
      parts,
      length: { mm, plusMinus: uncertainty * (tied + held + ways) },
      cut: Math.ceil(mm / ROUND_TO) * ROUND_TO,
    };
  });
  const longest = pieces.reduce((most, { length }) => Math.max(most, length.mm), 0);
  return {
    rows: knotted.rows,
    strings: pattern.strings,
    repeats: knotted.rows / pattern.rows,
    coloursClose: coloursClose(pattern),
    thread,
    calibration,
    size: latticeSize(knotted, scale),
    uncertainty,
    pieces,
    totals: totalsOf(pieces, putUp),
    swaps: worthSwapping(work, diameter, WORTH * longest),
    putUp,
  };
}

/** What the outermost strings and rows add to a whole number of slots and rows, in diameters. */
function beyond(): { readonly edges: number; readonly ends: number } {
  const { slot, row, halfWidth, halfHeight } = spacing();
  return { edges: 2 * halfWidth - 2 * slot, ends: 2 * halfHeight - row };
}

function calibrated({ rows, strings, width, length }: DiagonalSwatch): Calibration {
  if (!(Number.isInteger(strings) && strings >= 2 && strings <= DIAGONAL_LIMITS.maxStrings)) {
    throw new InputError(
      'swatch',
      `A swatch of ${strings} strings cannot be measured.`,
      {},
      `Count its strings, from 2 to ${DIAGONAL_LIMITS.maxStrings}.`,
    );
  }
  const { slot, row } = spacing();
  return calibrate(
    { rows, columns: strings, width, length },
    { pitch: slot, rowHeight: row, ...beyond() },
  );
}

function rowsWanted(
  options: DiagonalCutOptions,
  scale: { readonly y: number; readonly z: number },
): number | null {
  const { row, front, back } = spacing();
  return rowsFor(options, {
    rowHeight: row * scale.y,
    thickness: (front - back + 1) * scale.z,
    ends: beyond().ends * scale.y,
  });
}

/**
 * The pattern knotted again and again below itself until it has so many rows.
 *
 * @throws InputError when it has an odd number of rows: the row after the last would then begin in
 * the wrong slot
 */
export function repeatedRows(pattern: DiagonalPattern, rows: number): DiagonalPattern {
  if (rows === pattern.rows) return pattern;
  if (rows > pattern.rows && pattern.rows % 2 === 1) {
    throw new InputError(
      'repeat-odd',
      `A pattern of ${pattern.rows} rows cannot follow itself: its first row does not fit below its last.`,
      {},
      'Give it one row more or less, so that it has an even number of rows.',
    );
  }
  const whole = pattern.rows * knotsAcross(pattern);
  const knots = new Uint8Array(rows * knotsAcross(pattern));
  for (let at = 0; at < knots.length; at += whole) {
    knots.set(pattern.knots.subarray(0, Math.min(whole, knots.length - at)), at);
  }
  return { ...pattern, rows, knots };
}

function coloursClose(pattern: DiagonalPattern): boolean {
  const { order } = simulateDiagonal(pattern);
  const { strings, rows, start } = pattern;
  return start.every((colour, slot) => start[order[rows * strings + slot]!] === colour);
}
