import { ANY_COLOUR } from '../diagonal/picture.js';
import type { Problem } from './problem.js';
import type { Net } from './weave.js';

/** Pieces with more knots than this are not put into clauses as a whole, but in windows. */
export const MOST_AT_ONCE = 30_000;

/** Of these wires, at most so many may have the colour. */
export interface ColourLimit {
  readonly colour: number;
  readonly wires: ArrayLike<number>;
  readonly most: number;
}

/** What is to be solved at once: a net, or a part of one whose outer wires have their colours. */
export interface Task {
  readonly net: Net;
  /** Colours are numbered from 0. */
  readonly colours: number;
  /** Colour that each knot is to show, or ANY_COLOUR. */
  readonly asked: Uint8Array;
  /** Colour that each wire has, or ANY_COLOUR. */
  readonly fixed: Uint8Array;
  readonly limits: readonly ColourLimit[];
}

/** The whole of a problem as one task. */
export function wholeTask(problem: Problem): Task {
  const { net, asked, palette, start, most } = problem;
  const fixed = new Uint8Array(net.wires).fill(ANY_COLOUR);
  for (const [slot, wire] of net.start.entries()) fixed[wire] = start[slot] as number;
  const limits = most.flatMap((limit, colour) => {
    return limit < net.start.length ? [{ colour, wires: net.start, most: limit }] : [];
  });
  return { net, colours: palette.length, asked, fixed, limits };
}
