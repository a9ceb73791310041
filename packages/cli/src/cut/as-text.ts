import { printable } from '@halfhitch/core';
import type { ColourTotal, CutList, CutPiece, DiagonalCutList } from '@halfhitch/geometry';

/** The cut list in words, a line at a time. */
export function* cutListAsText(title: string, list: CutList): Generator<string> {
  yield `Cut list: ${printable(title)}\n\n`;
  yield* measuresAsText(`${list.rows} rows of ${list.columns} knots`, list);
  yield '\nBase strings\n';
  for (const line of baseLines(list.pieces)) yield line;
  yield '\nLeading strings\n';
  for (const piece of list.pieces) if (piece.role === 'lead') yield leadLine(piece);
  yield '\nTo buy\n';
  for (const total of list.totals) {
    yield totalLine(total, list.putUp, total.role === 'base' ? 'base strings' : 'leads');
  }
  if (list.joins.length > 0) {
    yield '\nA lead that would be too long to work with is joined to a new one where the list says so: tie the new lead in as at a colour change, and leave both tails at the back.\n';
  }
  yield BLADES;
}

export const BLADES =
  '\nBlades: cut away from your hand, and keep cut ends and long cords from small children.\n';

/**
 * What a cut list says of the thread and of the piece, whatever is knotted.
 *
 * @param what rows and knots of the piece, in words
 */
export function* measuresAsText(what: string, list: CutList | DiagonalCutList): Generator<string> {
  const off = Math.round(list.uncertainty * 100);
  const { thread, size, calibration } = list;
  yield `${what}, in thread ${thread.diameter.toFixed(2)} mm thick (${thread.tex.toFixed(0)} tex).\n`;
  yield `Knotted part: ${withOff(size.width, off)} wide, ${withOff(size.length, off)} long.\n`;
  if (calibration === null) {
    yield `Every figure may be off by ${off} %, tails not counted. A swatch would mend much of that.\n`;
  } else {
    yield `By the swatch the thread works up like one ${calibration.diameter.toFixed(2)} mm thick; that leaves ${share(calibration.residual.width)} of the width and ${share(calibration.residual.length)} of the length unexplained. Figures may still be off by ${off} %.\n`;
  }
}

function withOff(mm: number, off: number): string {
  return `${mm.toFixed(0)} mm (± ${((mm * off) / 100).toFixed(0)})`;
}

/** Base strings are alike, so they are said together. */
function* baseLines(pieces: readonly CutPiece[]): Generator<string> {
  const groups = new Map<string, CutPiece[]>();
  for (const piece of pieces) {
    if (piece.role !== 'base') continue;
    const key = `${piece.cut} ${piece.colour}`;
    groups.set(key, [...(groups.get(key) ?? []), piece]);
  }
  for (const [piece, ...others] of groups.values()) {
    if (piece === undefined) continue;
    const many = others.length + 1;
    yield `  ${many} of ${piece.cut} mm (± ${piece.length.plusMinus.toFixed(0)}), ${colour(piece)}\n`;
  }
}

function leadLine(piece: CutPiece): string {
  const { knots, travel, floats, tails, margin } = piece.parts;
  const joined = piece.joinedInRow === null ? '' : `, joined in row ${piece.joinedInRow}`;
  const parts = [
    `${piece.knotsTied} ${piece.knotsTied === 1 ? 'knot' : 'knots'} ${knots.toFixed(0)}`,
    `travel ${travel.toFixed(0)}`,
    `floats ${floats.toFixed(0)}`,
    `tails ${tails.toFixed(0)}`,
    `margin ${margin.toFixed(0)}`,
  ];
  return `  ${piece.string}: ${piece.cut} mm (± ${piece.length.plusMinus.toFixed(0)}), ${colour(piece)}${joined}\n      ${parts.join(', ')}\n`;
}

/** @param what what the pieces are */
export function totalLine(total: ColourTotal, putUp: number, what: string): string {
  const pieces = `${total.pieces} ${total.pieces === 1 ? 'piece' : 'pieces'}`;
  const putUps = `${total.putUps} ${total.putUps === 1 ? 'put-up' : 'put-ups'} of ${(putUp / 1000).toFixed(1)} m`;
  return `  ${colour(total)}, ${what}: ${(total.length.mm / 1000).toFixed(2)} m (± ${(total.length.plusMinus / 1000).toFixed(2)}) in ${pieces}; ${putUps}\n`;
}

export function colour({ name, colour: hex }: { name: string; colour: string }): string {
  const shown = printable(name);
  return shown === '' ? printable(hex) : `${shown} (${printable(hex)})`;
}

function share(residual: number): string {
  return `${Math.abs(residual * 100).toFixed(1)} %`;
}
