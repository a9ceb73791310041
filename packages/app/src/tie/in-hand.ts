import {
  colourInWords,
  type InstructionPart,
  type KnotKind,
  type KnotReading,
  leadInWords,
  type ThreadString,
} from '@halfhitch/core';
import type { KnotPlace } from './course.js';
import { article, type NextMove, nextMoves, partOf, type Run, runOf } from './next-moves.js';
import type { TieRow } from './row-sheets.js';

/** What is shown of the knot in hand. */
export interface KnotInHand {
  readonly row: number;
  /** Place in its row in the order of knotting. */
  readonly order: number;
  readonly column: number;
  readonly kind: KnotKind;
  readonly tying: ThreadString;
  readonly held: ThreadString;
}

/** The knot to be tied now, and all that is said of it. */
export interface InHand {
  readonly knot: KnotInHand;
  /** "base string 4", "slots 3-4" */
  readonly where: string;
  /** What its strings do: "L1 (lake blue) ties", "onto the base string". */
  readonly does: { readonly tying: string; readonly held: string };
  /** What its strings are called in pictures. */
  readonly names: { readonly tying: string; readonly held: string };
  /** "Forward knot on base string 4" */
  readonly heading: string;
  /** The colour change in a sentence; null when there is none. */
  readonly change: string | null;
  /** What to do in turn, each complete by itself. */
  readonly steps: readonly string[];
  /** At the first knot of a row, what is to be known of the row. */
  readonly way: string | null;
  readonly run: Run;
  readonly next: readonly NextMove[];
}

/** Of alpha work, with the row that it is in. */
export interface AlphaInHand extends InHand {
  readonly row: TieRow;
}

const MOVES_SHOWN = 3;

/** @param next the row after, if there is one */
export function inHand(row: TieRow, next: TieRow | null, place: KnotPlace): AlphaInHand | null {
  const { sheet, steps } = row;
  const knot = sheet.reading.knots[place.order];
  if (knot === undefined) return null;
  const part = partOf(sheet, place.column);
  const change = part?.kind === 'change' ? part : null;
  const { tying, held } = knot;
  const where = `base string ${knot.column + 1}`;
  return {
    knot,
    row,
    where,
    does: {
      tying: `${leadInWords(tying)} ties`,
      held:
        held.name === '' ? 'onto the base string' : `onto the base string (${colourInWords(held)})`,
    },
    names: { tying: `lead ${tying.id}`, held: where },
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

function headingOf({ kind, column }: KnotReading): string {
  return `${capital(kind)} knot on base string ${column + 1}`;
}

export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** What is said aloud of a knot: short in the middle of a run, complete at a change. */
export function spoken({ knot, where, heading, change, steps, way, run }: InHand): string {
  const row = way === null ? '' : `Row ${knot.row + 1}. ${way} `;
  if (change !== null) return `${row}${change} ${steps.join(' ')}`;
  if (run.of === 1 || way !== null) return `${row}${heading}.`;
  if (run.at > 1) return `${capital(where)}, ${knot.kind}.`;
  return `${run.of} ${knot.kind} knots. The first on ${where}.`;
}

/** What is said aloud of one step of a colour change, the first with what it is about. */
export function spokenStep({ change, steps, way, knot }: InHand, step: number): string {
  const row = step > 0 || way === null ? '' : `Row ${knot.row + 1}. ${way} `;
  return `${row}${step > 0 || change === null ? '' : `${change} `}${steps[step] ?? ''}`;
}

/** What a screen reader is told when the count has changed. */
export function announced({ knot, where: on, change }: InHand, knotsInRow: number): string {
  const where = `Row ${knot.row + 1}, knot ${knot.order + 1} of ${knotsInRow}`;
  const what = `${article(knot.kind)} ${knot.kind} knot on ${on}`;
  return `${where}: ${change === null ? '' : 'colour change; '}${what}.`;
}
