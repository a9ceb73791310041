import { ANY_COLOUR } from '../../diagonal/picture.js';
import type { Problem } from '../problem.js';

/**
 * Any picture of two colours can be knotted: hang them in turn, and let no strings change places.
 * Every knot is tied by neighbours, so by one string of each colour, and either may tie. Null where
 * there are more colours, or the strings are not free to hang so.
 */
export function straightTwoColours(problem: Problem): Uint8Array | null {
  const { net, palette, most, start, fewestOf } = problem;
  const { length } = start;
  const free =
    start.every((colour) => colour === ANY_COLOUR) && most.every((limit) => limit >= length);
  if (palette.length > 2 || fewestOf !== null || !free) return null;
  const colours = new Uint8Array(net.wires);
  const colourOf = (slot: number) => Math.min(slot % 2, palette.length - 1);
  for (const [slot, wire] of net.start.entries()) colours[wire] = colourOf(slot);
  for (let knot = 0; knot < net.knots; knot++) {
    colours[net.belowLeft[knot] as number] = colours[net.aboveLeft[knot] as number] as number;
    colours[net.belowRight[knot] as number] = colours[net.aboveRight[knot] as number] as number;
  }
  return colours;
}
