import {
  type DiagonalMistake,
  type DiagonalPattern,
  KNOT_KINDS,
  knotAt,
  knotsInRow,
  slotOfPlace,
} from '../../src/index.js';

/**
 * Every single mistake of a pattern, listed by a second hand: straight from the pattern, without
 * the piece that the diagnosis works on.
 */
export function everyDiagonalSlip(pattern: DiagonalPattern): DiagonalMistake[] {
  const { rows, strings, start, colours } = pattern;
  const slips: DiagonalMistake[] = [];
  for (let row = 0; row < rows; row++) {
    if (rows > 1) slips.push({ kind: 'missing-row', row });
    slips.push({ kind: 'extra-row', row: row + 1 });
    const places = knotsInRow(pattern, row);
    let tied = 0;
    for (let place = 0; place < places; place++) if (knotAt(pattern, row, place)) tied = place;
    for (let place = 0; place < places; place++) {
      const asked = knotAt(pattern, row, place);
      for (const kind of KNOT_KINDS) {
        if (asked === null) slips.push({ kind: 'extra-knot', row, place, tied: kind });
        else if (kind !== asked) slips.push({ kind: 'wrong-kind', row, place, tied: kind });
      }
      if (asked === null) continue;
      slips.push({ kind: 'missing-knot', row, place }, { kind: 'half-knot', row, place });
      const slot = slotOfPlace(pattern, row, place);
      for (const towards of ['left', 'right'] as const) {
        if (towards === 'left' ? slot === 0 : slot + 2 === strings) continue;
        slips.push({ kind: 'one-slot-off', row, place, towards, span: 'knot' });
        if (place < tied) slips.push({ kind: 'one-slot-off', row, place, towards, span: 'rest' });
      }
    }
  }
  for (let slot = 0; slot < strings; slot++) {
    for (let other = slot + 1; other < strings; other++) {
      if (start[slot] !== start[other]) slips.push({ kind: 'swapped-strings', slot, other });
    }
    for (const colour of colours.keys()) {
      if (colour !== start[slot]) slips.push({ kind: 'wrong-colour', slot, colour });
    }
  }
  return slips;
}
