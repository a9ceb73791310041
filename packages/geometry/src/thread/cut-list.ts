import {
  type Chart,
  type EdgeTechnique,
  InputError,
  type Join,
  planAlpha,
  type StartSide,
  type StringId,
  type StringRole,
} from '@halfhitch/core';
import {
  type FinishedSize,
  finishedSize,
  repeated,
  rowsFor,
  type WantedLength,
} from './finished-size.js';
import { chooseJoins } from './joins.js';
import type { KnotMeasures } from './measures.js';
import { putUpsNeeded } from './packing.js';
import { type Calibration, calibrate, type Swatch } from './swatch.js';
import { type Thread, type ThreadChoice, threadOf } from './thread.js';
import { Lengths, type StringUsage, usageOf } from './usage.js';

export interface CutOptions extends WantedLength {
  readonly edge?: EdgeTechnique;
  readonly start?: StartSide;
  readonly thread?: ThreadChoice;
  /** Tail left at each end of every piece, mm. Default: 150 (common practice, no source). */
  readonly tails?: number;
  /** Added for safety, per cent. Default: 10. */
  readonly margin?: number;
  readonly swatch?: Swatch;
  /** Longest lead that is pleasant to work with, mm. Default: 5,000, wound on a bobbin (common practice, no source). */
  readonly workable?: number;
  /** Length of one put-up (a skein, say), mm. Default: 8,000, a skein of stranded cotton. */
  readonly putUp?: number;
}

/** A length with what it may be off by, both mm. */
export interface Estimate {
  readonly mm: number;
  readonly plusMinus: number;
}

export interface CutPiece {
  readonly string: StringId;
  readonly role: StringRole;
  readonly colour: string;
  readonly name: string;
  readonly knotsTied: number;
  readonly knotsHeld: number;
  /** What the length is made of, mm. */
  readonly parts: {
    readonly knots: number;
    readonly travel: number;
    readonly floats: number;
    readonly hanging: number;
    readonly tails: number;
    readonly margin: number;
  };
  readonly length: Estimate;
  /** What to cut: the length, rounded up to whole centimetres, mm. */
  readonly cut: number;
  /** The row in which this lead takes over from one of its colour that is used up, from 1. */
  readonly joinedInRow: number | null;
}

/** What of a piece its colour's total is made of. */
export type CutString = Pick<CutPiece, 'string' | 'role' | 'colour' | 'name' | 'length' | 'cut'>;

export interface ColourTotal {
  readonly colour: string;
  readonly name: string;
  readonly role: StringRole;
  readonly pieces: number;
  readonly length: Estimate;
  readonly putUps: number;
}

export interface CutList {
  readonly rows: number;
  readonly columns: number;
  readonly thread: Thread;
  readonly calibration: Calibration | null;
  readonly size: FinishedSize;
  /** Share by which every length may be off, 0.1 for a tenth. */
  readonly uncertainty: number;
  readonly pieces: readonly CutPiece[];
  readonly totals: readonly ColourTotal[];
  readonly joins: readonly Join[];
  readonly putUp: number;
}

/** What the figures of a cut list may be. */
export const CUT_LIMITS = {
  tails: { least: 0, most: 2_000, unit: 'mm' },
  margin: { least: 0, most: 200, unit: 'per cent' },
  workable: { least: 200, most: 100_000, unit: 'mm' },
  putUp: { least: 500, most: 10_000_000, unit: 'mm' },
} as const;

/** What they are when they are not given. */
export const CUT_DEFAULTS = { tails: 150, margin: 10, workable: 5_000, putUp: 8_000 } as const;

/**
 * How far the tightened knot may be from one that is pulled by hand: thread flattens, and no
 * hand pulls as evenly as a computation. The band in which tightening and the plain estimate of
 * wraps agree, and what knotters find from hand to hand (common practice, no source).
 */
export const OFF_MODEL = 0.12;

/** A base string should never come out short by less than it is handled with. */
export const ROUND_TO = 10;

/**
 * What to cut for a chart.
 *
 * @throws InputError when a figure is outside its limits
 */
export function cutList(chart: Chart, measures: KnotMeasures, options: CutOptions = {}): CutList {
  const tails = figure('tails', options.tails);
  const margin = figure('margin', options.margin) / 100;
  const workable = figure('workable', options.workable);
  const putUp = figure('putUp', options.putUp);
  const thread = threadOf(options.thread);
  const calibration = options.swatch === undefined ? null : calibrate(options.swatch, measures);
  const lengths =
    calibration === null
      ? new Lengths(measures, thread.diameter)
      : new Lengths(measures, calibration.diameter, calibration.across, calibration.along);
  const uncertainty = calibration?.uncertainty ?? Math.hypot(OFF_MODEL, thread.uncertainty);

  const drawing = repeated(chart, rowsFor(options, lengths) ?? chart.rows);
  const technique = {
    ...(options.edge === undefined ? {} : { edge: options.edge }),
    ...(options.start === undefined ? {} : { start: options.start }),
  };
  const whole = planAlpha(drawing, technique);
  const joins = chooseJoins(whole, lengths, { workable, tail: tails, margin });
  const plan = joins.length === 0 ? whole : planAlpha(drawing, { ...technique, joins });
  const strings = new Map(plan.strings.map((string) => [string.id, string]));
  const seenColours = new Set<string>();

  const pieces = usageOf(plan, lengths).map((usage): CutPiece => {
    const string = strings.get(usage.string);
    if (string === undefined) throw new Error(`String ${usage.string} is in no table.`);
    const goesOn = string.role === 'lead' && seenColours.has(string.colour);
    if (string.role === 'lead') seenColours.add(string.colour);
    const parts = partsOf(usage, 2 * tails, margin);
    const mm = Object.values(parts).reduce((sum, part) => sum + part, 0);
    const plusMinus = uncertainty * (mm - parts.tails - parts.margin);
    return {
      string: string.id,
      role: string.role,
      colour: string.colour,
      name: string.name,
      knotsTied: Object.values(usage.ties).reduce((sum, count) => sum + count, 0),
      knotsHeld: usage.holds,
      parts,
      length: { mm, plusMinus },
      cut: Math.ceil(mm / ROUND_TO) * ROUND_TO,
      joinedInRow: goesOn ? usage.rows.first + 1 : null,
    };
  });

  return {
    rows: drawing.rows,
    columns: drawing.columns,
    thread,
    calibration,
    size: finishedSize(drawing.rows, drawing.columns, lengths),
    uncertainty,
    pieces,
    totals: totalsOf(pieces, putUp),
    joins,
    putUp,
  };
}

function partsOf(usage: StringUsage, tails: number, margin: number): CutPiece['parts'] {
  const { knots, travel, floats, hanging } = usage;
  return {
    knots,
    travel,
    floats,
    hanging,
    tails,
    margin: margin * (knots + travel + floats + hanging + tails),
  };
}

/** What the pieces of each colour come to. */
export function totalsOf(pieces: readonly CutString[], putUp: number): ColourTotal[] {
  const groups = new Map<string, CutString[]>();
  for (const piece of pieces) {
    const key = `${piece.role} ${piece.colour}`;
    groups.set(key, [...(groups.get(key) ?? []), piece]);
  }
  return [...groups.values()].map((group): ColourTotal => {
    const [first] = group as [CutString];
    const longest = group.reduce((most, piece) => Math.max(most, piece.cut), 0);
    if (longest > putUp) {
      throw new InputError(
        'put-up-too-short',
        `String ${group.find((piece) => piece.cut === longest)?.string ?? ''} takes ${longest} mm in one piece, and a put-up holds ${putUp} mm.`,
        {},
        'Allow shorter pieces (a smaller workable length) or name a longer put-up.',
      );
    }
    return {
      colour: first.colour,
      name: first.name,
      role: first.role,
      pieces: group.length,
      length: {
        mm: group.reduce((sum, piece) => sum + piece.length.mm, 0),
        // One thread and one hand: pieces are off all in the same direction, so these add up.
        plusMinus: group.reduce((sum, piece) => sum + piece.length.plusMinus, 0),
      },
      putUps: putUpsNeeded(
        group.map((piece) => piece.cut),
        putUp,
      ),
    };
  });
}

/** A figure within its limits, or what it is when it is not given. */
export function figure(name: keyof typeof CUT_LIMITS, given: number | undefined): number {
  const { least, most, unit } = CUT_LIMITS[name];
  const value = given ?? CUT_DEFAULTS[name];
  if (value >= least && value <= most) return value;
  throw new InputError(
    `cut-${name}`,
    `The figure for ${name} is ${value} ${unit}.`,
    {},
    `Give one from ${least} to ${most} ${unit}.`,
  );
}
