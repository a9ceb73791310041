import type { DiagonalCutList } from '@halfhitch/geometry';
import { estimate, measuresAsJson, partsAsJson, rounded, totalAsJson } from '../cut/as-json.js';

/** The cut list as one object; the order of its keys is part of the stable interface. */
export function diagonalCutListAsJson(list: DiagonalCutList): string {
  const answer = {
    rows: list.rows,
    repeats: Math.round(list.repeats * 1_000) / 1_000,
    coloursClose: list.coloursClose,
    ...measuresAsJson(list),
    strings: list.pieces.map((piece) => ({
      string: piece.string,
      slot: piece.slot + 1,
      colour: piece.colour,
      name: piece.name,
      knotsTied: piece.knotsTied,
      knotsHeld: piece.knotsHeld,
      parts: partsAsJson(piece.parts),
      length: estimate(piece.length),
      cut: piece.cut,
    })),
    totals: list.totals.map(totalAsJson),
    swaps: list.swaps.map(({ row, place, strings, kind, instead, saves }) => ({
      row: row + 1,
      place: place + 1,
      strings,
      kind,
      instead,
      saves: rounded(saves),
    })),
    putUp: list.putUp,
  };
  return `${JSON.stringify(answer)}\n`;
}
