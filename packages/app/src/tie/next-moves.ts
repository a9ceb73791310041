import {
  changesPlaces,
  type InstructionPart,
  type KnotReading,
  leadInWords,
} from '@halfhitch/core';
import type { RowSheet } from '../work/messages.js';

/** A move that comes after the knot in hand, short enough to be glanced at. */
export interface NextMove {
  readonly text: string;
  readonly kind: 'knot' | 'change' | 'turn';
}

/** How many knots alike come in one go, and which of them is next. */
export interface Run {
  /** Place in the run, from 1. */
  readonly at: number;
  readonly of: number;
}

/** The part of the row's instructions that a knot belongs to. */
export function partOf({ instructions }: RowSheet, column: number): InstructionPart | null {
  return (
    instructions.parts.find(({ columns }) => columns !== null && holds(columns, column)) ?? null
  );
}

/** The run of like knots that a knot belongs to; of 1 where it is alone. */
export function runOf(sheet: RowSheet, column: number): Run {
  const columns = partOf(sheet, column)?.columns ?? null;
  if (columns === null) return { at: 1, of: 1 };
  return {
    at: Math.abs(column - columns.first) + 1,
    of: Math.abs(columns.last - columns.first) + 1,
  };
}

/** The moves after a knot in its row, and on into the next row; at most `most`. */
export function nextMoves(
  sheet: RowSheet,
  next: RowSheet | null,
  column: number,
  most: number,
): NextMove[] {
  const run = runOf(sheet, column);
  const knot = knotAt(sheet, column);
  const moves: NextMove[] = [];
  if (knot !== null && run.at < run.of) {
    const step = knot.direction === 'right' ? 1 : -1;
    const last = column + step * (run.of - run.at);
    moves.push({ kind: 'knot', text: knotsInWords(knot, column + step, last) });
  }
  const after = (knot?.order ?? 0) + run.of - run.at;
  moves.push(...movesFrom(sheet, after));
  if (next !== null && moves.length < most) {
    moves.push({ kind: 'turn', text: turnInWords(next) });
    moves.push(...movesFrom(next, -1));
  }
  return moves.slice(0, most);
}

/** The parts of a row that come after a place in the order of knotting. */
function movesFrom(sheet: RowSheet, order: number): NextMove[] {
  return sheet.instructions.parts.flatMap(({ columns, kind }): NextMove[] => {
    if (columns === null) return [];
    const knot = knotAt(sheet, columns.first);
    if (knot === null || knot.order <= order) return [];
    return kind === 'change'
      ? [{ kind: 'change', text: changeInShort(knot) }]
      : [{ kind: 'knot', text: knotsInWords(knot, columns.first, columns.last) }];
  });
}

function knotAt({ reading }: RowSheet, column: number): KnotReading | null {
  return reading.knots.find((knot) => knot.column === column) ?? null;
}

/** "forward knots on base strings 3 to 7" */
export function knotsInWords(knot: KnotReading, first: number, last: number): string {
  const edge = knot.place !== 'inner' && !changesPlaces(knot.kind) ? ', the edge knot' : '';
  if (first === last)
    return `${article(knot.kind)} ${knot.kind} knot on base string ${first + 1}${edge}`;
  const joined = Math.abs(first - last) === 1 ? 'and' : 'to';
  return `${knot.kind} knots on base strings ${first + 1} ${joined} ${last + 1}`;
}

function changeInShort(knot: KnotReading): string {
  const { change } = knot;
  const to = leadInWords(knot.tying);
  const first = `its first knot is ${article(knot.kind)} ${knot.kind} knot on base string ${knot.column + 1}`;
  return change?.oldLead == null ? `start with ${to}; ${first}` : `change to ${to}; ${first}`;
}

function turnInWords({ reading }: RowSheet): string {
  const way = reading.direction === 'right' ? 'from left to right' : 'from right to left';
  return `turn; row ${reading.row + 1} goes ${way}`;
}

export function article(kind: string): string {
  return /^[aeiou]/.test(kind) ? 'an' : 'a';
}

function holds({ first, last }: { first: number; last: number }, column: number): boolean {
  return column >= Math.min(first, last) && column <= Math.max(first, last);
}
