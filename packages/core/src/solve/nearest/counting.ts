import { ANY_COLOUR } from '../../diagonal/picture.js';
import type { Problem } from '../problem.js';
import { placeOfCell } from '../problem.js';

/**
 * Knots that must be wrong by counting strings. A row ties every string at most once, so a row of m
 * knots of one colour needs m strings of it, and how many strings have a colour is the same in all
 * rows. With n strings of a colour, m - n of its knots in a row are wrong at least. The sharing out
 * of the strings to the colours that makes the sum least is found by giving each string in turn to
 * the colour that gains most, as every further string of a colour gains no more than the one
 * before.
 */
export function wrongByCounting({ picture, net, asked, palette, most, start }: Problem): number {
  const rows = new Map<number, Uint16Array>();
  for (let knot = 0; knot < net.knots; knot++) {
    const colour = asked[knot] as number;
    if (colour === ANY_COLOUR) continue;
    const { row } = placeOfCell(picture, net.cells[knot] as number);
    let counts = rows.get(row);
    if (counts === undefined) {
      counts = new Uint16Array(palette.length);
      rows.set(row, counts);
    }
    (counts[colour] as number)++;
  }
  // Rows with more than n knots of a colour: what string n + 1 of it gains.
  const { strings } = picture;
  const gains = new Int32Array(palette.length * (strings + 1));
  let wrong = 0;
  for (const counts of rows.values()) {
    for (const [colour, count] of counts.entries()) {
      wrong += count;
      for (let n = 0; n < count; n++) (gains[colour * (strings + 1) + n] as number)++;
    }
  }
  const given = new Int32Array(palette.length);
  const gainOf = (colour: number): number =>
    gains[colour * (strings + 1) + (given[colour] as number)] as number;
  const give = (colour: number): void => {
    wrong -= gainOf(colour);
    (given[colour] as number)++;
  };
  let left = strings;
  for (const colour of start) {
    if (colour === ANY_COLOUR) continue;
    give(colour);
    left--;
  }
  for (; left > 0; left--) {
    let best = -1;
    let gained = 0;
    for (let colour = 0; colour < palette.length; colour++) {
      if ((given[colour] as number) >= (most[colour] as number)) continue;
      const gain = gainOf(colour);
      if (gain <= gained) continue;
      best = colour;
      gained = gain;
    }
    if (best < 0) break;
    give(best);
  }
  return wrong;
}
