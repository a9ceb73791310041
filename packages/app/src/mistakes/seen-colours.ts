import { KNOT_KINDS, Sight } from '@halfhitch/core';
import type { Piece } from '../work/messages.js';

export interface SeenColour {
  readonly hex: string;
  readonly name: string;
  /** The chart's sign for it, so that colour is not all that tells it apart. */
  readonly key: string;
}

/** Colours of the leads, each once, in the order in which what is seen names them. */
export function colourNames(piece: Piece): SeenColour[] {
  const hexes = [
    ...new Set(piece.strings.filter(({ role }) => role === 'lead').map(({ colour }) => colour)),
  ];
  return hexes.map((hex, place) => {
    const drawn = piece.colours.find((colour) => colour.hex === hex);
    const name = drawn?.name.trim() ?? '';
    const key = drawn?.key.trim() ?? '';
    return { hex, name: name === '' ? hex : name, key: key === '' ? String(place + 1) : key };
  });
}

/** Place among those colours of the one that the plan ties in a cell. */
export function drawnColour(
  piece: Piece,
  colours: readonly SeenColour[],
  row: number,
  column: number,
): number {
  const cell = row * piece.columns + column;
  if (KNOT_KINDS[piece.kinds[cell] ?? 255] === undefined) return Sight.bare;
  const hex = piece.strings[piece.tying[cell] ?? 0xffff]?.colour;
  const place = colours.findIndex((colour) => colour.hex === hex);
  return place < 0 ? Sight.bare : place;
}

/**
 * What comes after a sight when a cell is pressed: from not looked at to the colour drawn there,
 * over the other colours to the bare string, and back.
 *
 * @param way 1 forwards, -1 backwards
 */
export function nextSight(sight: number, drawn: number, colours: number, way: 1 | -1): number {
  const others = Array.from({ length: colours }, (_, place) => place).filter(
    (place) => place !== drawn,
  );
  const order = [Sight.unknown, ...(drawn < 0 ? [] : [drawn]), ...others, Sight.bare];
  const at = order.indexOf(sight as never);
  return order[(Math.max(0, at) + way + order.length) % order.length] ?? Sight.unknown;
}

export function sightInWords(sight: number, colours: readonly SeenColour[]): string {
  if (sight === Sight.unknown) return 'not looked at';
  if (sight === Sight.bare) return 'bare string';
  return colours[sight]?.name ?? 'not looked at';
}
