import type { DiagonalPattern } from '../diagonal/pattern.js';
import { NO_KNOT } from '../diagonal/pattern.js';
import { ANY_COLOUR } from '../diagonal/picture.js';
import { balance } from './balance.js';
import { ALL_KINDS, kindsBetween } from './kinds.js';
import type { SolvePreference } from './options.js';
import type { Problem } from './problem.js';

/**
 * Chooses the kinds of all knots once the colours of all wires are known. Between two colours, the
 * colour below on the left says whether the places change, and the wanted colour who ties; between
 * two strings of one colour all four kinds look alike, and the preference chooses.
 *
 * @param colours colour of each wire, by its number in the palette
 */
export function settle(
  problem: Problem,
  colours: Uint8Array,
  prefer: SolvePreference,
): DiagonalPattern {
  const { picture, net, palette } = problem;
  const choices = possibleKinds(problem, colours);
  const chosen = prefer === 'balance' ? balance(picture, choices) : fewestChanges(problem, choices);
  const knots = new Uint8Array(picture.cells.length).fill(NO_KNOT);
  for (let knot = 0; knot < net.knots; knot++) {
    knots[net.cells[knot] as number] = chosen[knot] as number;
  }
  const { name, strings, rows, first } = picture;
  const start = Uint8Array.from(net.start, (wire) => palette[colours[wire] as number] as number);
  return { name, strings, rows, first, colours: picture.colours, start, knots };
}

/**
 * The kinds that each knot may be, as bits. A knot that cannot show its colour shows the likelier of
 * its two strings' colours.
 */
export function possibleKinds(
  { picture, palette, net, asked }: Problem,
  colours: Uint8Array,
): Uint8Array {
  const hexOf = (colour: number) => picture.colours[palette[colour] as number]?.hex ?? '#000000';
  return Uint8Array.from({ length: net.knots }, (_, knot) => {
    const colour = (wires: Int32Array) => colours[wires[knot] as number] as number;
    const left = colour(net.aboveLeft);
    const right = colour(net.aboveRight);
    const [belowLeft, belowRight] = [colour(net.belowLeft), colour(net.belowRight)];
    let shown = asked[knot] === ANY_COLOUR ? -1 : (asked[knot] as number);
    if (shown >= 0 && shown !== left && shown !== right) {
      const wanted = hexOf(shown);
      shown = unlike(hexOf(left), wanted) <= unlike(hexOf(right), wanted) ? left : right;
    }
    return kindsBetween(left, right, belowLeft, belowRight, shown);
  });
}

/** How far apart two colours `#rrggbb` are, roughly: by their three values. */
function unlike(one: string, other: string): number {
  let sum = 0;
  for (let at = 1; at < 7; at += 2) {
    const [a, b] = [one, other].map((hex) => Number.parseInt(hex.slice(at, at + 2), 16));
    sum += ((a as number) - (b as number)) ** 2;
  }
  return sum;
}

/**
 * Kinds with the fewest changes along each row: a kind is kept for as long as the knots allow one
 * of those that were possible since the last change, which no other choice can better.
 */
export function fewestChanges({ picture, net }: Problem, choices: Uint8Array): Uint8Array {
  const chosen = new Uint8Array(net.knots);
  const across = Math.floor(picture.strings / 2);
  const rowOf = (knot: number) => Math.floor((net.cells[knot] as number) / across);
  let begun = 0;
  let run = ALL_KINDS;
  for (let knot = 0; knot <= net.knots; knot++) {
    const goesOn = knot < net.knots && rowOf(knot) === rowOf(begun);
    const left = goesOn ? run & (choices[knot] as number) : 0;
    if (left !== 0) {
      run = left;
      continue;
    }
    chosen.fill(lowest(run), begun, knot);
    begun = knot;
    run = choices[knot] ?? ALL_KINDS;
  }
  return chosen;
}

function lowest(kinds: number): number {
  return 31 - Math.clz32(kinds & -kinds);
}
