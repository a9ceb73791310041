import {
  type DiagonalInstructionPart,
  type DiagonalKnotReading,
  leadInWords,
  slotRangeInWords,
  slotsInWords,
} from '@halfhitch/core';
import type { KnotPlace } from '../../tie/course.js';
import { capital, type InHand } from '../../tie/in-hand.js';
import { article, type NextMove, type Run } from '../../tie/next-moves.js';
import type { DiagonalRowSheet } from '../work/messages.js';

const MOVES_SHOWN = 3;

/**
 * The knot of a diagonal pattern that is to be tied now.
 *
 * @param next the next row with knots, if there is one
 */
export function diagonalInHand(
  sheet: DiagonalRowSheet,
  next: DiagonalRowSheet | null,
  place: KnotPlace,
): InHand | null {
  const knot = sheet.reading.knots[place.order];
  if (knot === undefined) return null;
  const { kind, tying, held, row, slot } = knot;
  const where = slotsInWords(slot);
  return {
    knot: { row, order: place.order, column: knot.place, kind, tying, held },
    where,
    does: { tying: `${leadInWords(tying)} ties`, held: `onto ${leadInWords(held)}` },
    names: { tying: `string ${tying.id}`, held: `string ${held.id}` },
    heading: `${capital(kind)} knot on ${where}`,
    change: null,
    steps: sheet.steps[place.order] ?? [],
    way: place.order === 0 ? wayOf(sheet) : null,
    run: runOf(sheet, knot),
    next: nextMoves(sheet, next, place.order),
  };
}

/** Said before the first knot of a row. */
function wayOf({ instructions }: DiagonalRowSheet): string | null {
  return instructions.parts.find(({ kind }) => kind === 'row')?.text ?? null;
}

function partOf(
  { instructions }: DiagonalRowSheet,
  place: number,
): DiagonalInstructionPart | undefined {
  return instructions.parts.find(
    ({ kind, places }) =>
      (kind === 'run' || kind === 'knot') &&
      places !== null &&
      place >= places.first &&
      place <= places.last,
  );
}

function runOf(sheet: DiagonalRowSheet, { place }: DiagonalKnotReading): Run {
  const places = partOf(sheet, place)?.places ?? null;
  if (places === null) return { at: 1, of: 1 };
  return { at: place - places.first + 1, of: places.last - places.first + 1 };
}

/** What comes after a knot in its row, and on into the next row. */
function nextMoves(
  sheet: DiagonalRowSheet,
  next: DiagonalRowSheet | null,
  order: number,
): NextMove[] {
  const moves = knotsFrom(sheet, order + 1);
  if (next !== null && moves.length < MOVES_SHOWN) {
    const { row } = next.reading;
    moves.push({ kind: 'turn', text: `row ${row + 1} begins one slot to the side` });
    moves.push(...knotsFrom(next, 0));
  }
  return moves.slice(0, MOVES_SHOWN);
}

/** Knots of a row from one on, those that are alike together. */
function knotsFrom({ reading }: DiagonalRowSheet, from: number): NextMove[] {
  const moves: NextMove[] = [];
  const { knots } = reading;
  for (let at = from; at < knots.length; ) {
    const first = knots[at] as DiagonalKnotReading;
    let end = at + 1;
    while (knots[end]?.kind === first.kind && knots[end]?.place === first.place + end - at) end++;
    const last = knots[end - 1] as DiagonalKnotReading;
    const text =
      end === at + 1
        ? `${article(first.kind)} ${first.kind} knot on ${slotsInWords(first.slot)}`
        : `${first.kind} knots on ${slotRangeInWords(first.slot, last.slot)}`;
    moves.push({ kind: 'knot', text });
    at = end;
  }
  return moves;
}
