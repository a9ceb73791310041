import type { InstructionPart, KnotReading } from '@halfhitch/core';
import { article, type NextMove, nextMoves, partOf, type Run, runOf } from './next-moves.js';
import type { TieRow } from './row-sheets.js';
import type { KnotPlace } from './shape.js';

/** The knot to be tied now, and all that is said of it. */
export interface InHand {
  readonly knot: KnotReading;
  readonly row: TieRow;
  /** "Forward knot on base string 4" */
  readonly heading: string;
  /** The colour change in a sentence; null when there is none. */
  readonly change: string | null;
  /** What to do in turn, each complete by itself. */
  readonly steps: readonly string[];
  /** At the first knot of a row, the way it goes. */
  readonly way: string | null;
  readonly run: Run;
  readonly next: readonly NextMove[];
}

const MOVES_SHOWN = 3;

/** @param next the row after, if there is one */
export function inHand(row: TieRow, next: TieRow | null, place: KnotPlace): InHand | null {
  const { sheet, steps } = row;
  const knot = sheet.reading.knots[place.order];
  if (knot === undefined) return null;
  const part = partOf(sheet, place.column);
  const change = part?.kind === 'change' ? part : null;
  return {
    knot,
    row,
    heading: headingOf(knot),
    change: change?.text ?? null,
    steps: change?.substeps ?? steps[place.order] ?? [],
    way: place.order === 0 ? (wayOf(sheet.instructions.parts)?.text ?? null) : null,
    run: runOf(sheet, place.column),
    next: nextMoves(sheet, next?.sheet ?? null, place.column, MOVES_SHOWN),
  };
}

function wayOf(parts: readonly InstructionPart[]): InstructionPart | undefined {
  return parts.find(({ kind }) => kind === 'direction');
}

export function headingOf({ kind, column }: KnotReading): string {
  const name = kind.charAt(0).toUpperCase() + kind.slice(1);
  return `${name} knot on base string ${column + 1}`;
}

/** What is said aloud of a knot: short in the middle of a run, complete at a change. */
export function spoken({ knot, change, steps, way, run }: InHand): string {
  const row = way === null ? '' : `Row ${knot.row + 1}. ${way} `;
  if (change !== null) return `${row}${change} ${steps.join(' ')}`;
  if (run.of === 1 || way !== null) return `${row}${headingOf(knot)}.`;
  if (run.at > 1) return `Base string ${knot.column + 1}, ${knot.kind}.`;
  return `${run.of} ${knot.kind} knots. The first on base string ${knot.column + 1}.`;
}

/** What is said aloud of one step of a colour change, the first with what it is about. */
export function spokenStep({ change, steps, way, knot }: InHand, step: number): string {
  const row = step > 0 || way === null ? '' : `Row ${knot.row + 1}. ${way} `;
  return `${row}${step > 0 || change === null ? '' : `${change} `}${steps[step] ?? ''}`;
}

/** What a screen reader is told when the count has changed. */
export function announced({ knot, change }: InHand, knotsInRow: number): string {
  const where = `Row ${knot.row + 1}, knot ${knot.order + 1} of ${knotsInRow}`;
  const what = `${article(knot.kind)} ${knot.kind} knot on base string ${knot.column + 1}`;
  return `${where}: ${change === null ? '' : 'colour change; '}${what}.`;
}
