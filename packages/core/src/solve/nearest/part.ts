import { ANY_COLOUR } from '../../diagonal/picture.js';
import type { ColourLimit, Task } from '../task.js';
import type { Net } from '../weave.js';

/** Entry of a wire whose colour is not known yet. */
export const UNKNOWN = 255;

/** The knots at the two ends of each wire, or -1 where it begins or ends the work. */
export interface WireEnds {
  readonly above: Int32Array;
  readonly below: Int32Array;
}

export function wireEnds(net: Net): WireEnds {
  const above = new Int32Array(net.wires).fill(-1);
  const below = new Int32Array(net.wires).fill(-1);
  for (let knot = 0; knot < net.knots; knot++) {
    below[net.aboveLeft[knot] as number] = knot;
    below[net.aboveRight[knot] as number] = knot;
    above[net.belowLeft[knot] as number] = knot;
    above[net.belowRight[knot] as number] = knot;
  }
  return { above, below };
}

/** Some knots of a task as a task of their own, and the whole's number of each of its wires. */
export interface Part {
  readonly task: Task;
  readonly wires: readonly number[];
}

/**
 * Takes some knots out of a task. Wires that lead out of the part keep the colours they have; those
 * within it, and those of no known colour, are open.
 *
 * @param colours colour of each wire of the whole, or UNKNOWN
 */
export function partOf(
  whole: Task,
  ends: WireEnds,
  colours: Uint8Array,
  knots: readonly number[],
): Part {
  const inside = new Set(knots);
  const numbers = new Map<number, number>();
  const wires: number[] = [];
  const numbered = (list: Int32Array) =>
    Int32Array.from(knots, (knot) => {
      const wire = list[knot] as number;
      const known = numbers.get(wire);
      if (known !== undefined) return known;
      numbers.set(wire, wires.length);
      wires.push(wire);
      return wires.length - 1;
    });
  const net = {
    aboveLeft: numbered(whole.net.aboveLeft),
    aboveRight: numbered(whole.net.aboveRight),
    belowLeft: numbered(whole.net.belowLeft),
    belowRight: numbered(whole.net.belowRight),
    knots: knots.length,
    wires: wires.length,
  };
  const within = (knot: number) => knot < 0 || inside.has(knot);
  const fixed = Uint8Array.from(wires, (wire) => {
    const colour = colours[wire] as number;
    const asked = whole.fixed[wire] as number;
    if (asked !== ANY_COLOUR) return asked;
    const open = within(ends.above[wire] as number) && within(ends.below[wire] as number);
    return open || colour === UNKNOWN ? ANY_COLOUR : colour;
  });
  const asked = Uint8Array.from(knots, (knot) => whole.asked[knot] as number);
  const limits = whole.limits.map((limit) => limitWithin(limit, numbers, fixed, colours));
  return { task: { net, colours: whole.colours, asked, fixed, limits }, wires };
}

function limitWithin(
  { colour, wires, most }: ColourLimit,
  numbers: ReadonlyMap<number, number>,
  fixed: Uint8Array,
  colours: Uint8Array,
): ColourLimit {
  const inside: number[] = [];
  let outside = 0;
  for (const wire of Array.from(wires)) {
    const number = numbers.get(wire);
    if (number !== undefined && fixed[number] === ANY_COLOUR) inside.push(number);
    else if (colours[wire] === colour) outside++;
  }
  return { colour, wires: inside, most: Math.max(0, most - outside) };
}
