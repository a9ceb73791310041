import { printable } from '@halfhitch/core';
import type { DiagonalCutList, DiagonalCutPiece } from '@halfhitch/geometry';
import { BLADES, colour, measuresAsText, totalLine } from '../cut/as-text.js';

/** The cut list of a diagonal pattern in words, a line at a time. */
export function* diagonalCutListAsText(title: string, list: DiagonalCutList): Generator<string> {
  yield `Cut list: ${printable(title)}\n\n`;
  yield* measuresAsText(`${list.rows} rows with ${list.strings} strings`, list);
  if (list.repeats > 1 && !list.coloursClose) {
    yield 'The colours do not hang as at the start when the pattern has been knotted once, so its repeats look different.\n';
  }
  yield '\nStrings, from the left\n';
  for (const piece of list.pieces) yield pieceLine(piece);
  yield '\nTo buy\n';
  for (const total of list.totals) yield totalLine(total, list.putUp, 'strings');
  if (list.swaps.length > 0) {
    yield '\nStrings of one colour that share their knots unevenly\n';
    for (const { row, place, strings, kind, instead, saves } of list.swaps) {
      yield `  In row ${row + 1}, at knot ${place + 1} from the left, a ${instead} knot in place of the ${kind} one lets ${strings.join(' and ')} go on in each other's place: the longer of them becomes ${saves.toFixed(0)} mm shorter, and the picture stays.\n`;
    }
  }
  yield BLADES;
}

function pieceLine(piece: DiagonalCutPiece): string {
  const { tied, held, ways, tails, margin } = piece.parts;
  const parts = [
    `ties ${piece.knotsTied} ${piece.knotsTied === 1 ? 'knot' : 'knots'} ${tied.toFixed(0)}`,
    `is tied onto ${piece.knotsHeld} ${piece.knotsHeld === 1 ? 'time' : 'times'} ${held.toFixed(0)}`,
    `between knots ${ways.toFixed(0)}`,
    `tails ${tails.toFixed(0)}`,
    `margin ${margin.toFixed(0)}`,
  ];
  return `  ${printable(piece.string)}: ${piece.cut} mm (± ${piece.length.plusMinus.toFixed(0)}), ${colour(piece)}\n      ${parts.join(', ')}\n`;
}
