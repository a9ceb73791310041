import { KNOT_KINDS, type KnotKind } from '../model/knot.js';
import { thread } from '../picture/knot-shapes.js';
import type { Point, Stretch } from '../picture/thread-path.js';
import { KNOT_THREAD } from './geometry.js';

/** What shows of each knot from the front: the tying string's hitch, about the knot's middle. */

/** The held string runs aslant to where it goes on, and the wraps lie across it. */
const LEAN = (34 * Math.PI) / 180;
const REACH = 6.6;
const APART = 4.9;

/** Wraps in one direction, leaning the way the string goes; two side by side are a whole knot. */
function wraps(side: 1 | -1, offs: readonly number[]): readonly Stretch[] {
  const along: Point = [Math.cos(LEAN), Math.sin(LEAN)];
  const across: Point = [Math.sin(LEAN), -Math.cos(LEAN)];
  return offs.map((off): Stretch => {
    const at = (forth: number, bow: number): Point => [
      side * (forth * along[0] + (off + bow) * across[0]),
      forth * along[1] + (off + bow) * across[1],
    ];
    return [[at(-REACH, -0.9), at(-REACH * 0.4, 0.5), at(REACH * 0.4, 0.5), at(REACH, -0.9)]];
  });
}

/** Two half hitches in one direction. */
function alike(side: 1 | -1): readonly Stretch[] {
  return wraps(side, [APART, -APART]);
}

/** Two unlike half hitches are one bent pair: out over the held string, round, and back. */
function bent(side: 1 | -1): readonly Stretch[] {
  const at = (x: number, y: number): Point => [side * x, y];
  const upper: Stretch[number] = [at(-6.4, -5.25), at(-3, -5.5), at(0.6, -5.2), at(3, -4.5)];
  const round: Stretch[number] = [at(3, -4.5), at(8, -2.4), at(8, 2.4), at(3, 4.5)];
  const lower: Stretch[number] = [at(3, 4.5), at(0.6, 5.2), at(-3, 5.5), at(-6.4, 5.25)];
  return [[upper, round, lower]];
}

const SHAPES: Readonly<Record<KnotKind, readonly Stretch[]>> = {
  forward: alike(1),
  backward: alike(-1),
  'forward-backward': bent(1),
  'backward-forward': bent(-1),
};

/** The definitions that a picture refers to, once each. The thread's colour comes in as stroke. */
export function diagonalShapes(prefix: string): string {
  const halves = (['forward', 'backward'] as const).map((way) =>
    thread(`${prefix}half-${way}`, wraps(way === 'forward' ? 1 : -1, [0]), 3, KNOT_THREAD),
  );
  const knots = KNOT_KINDS.map((kind) => {
    const shape = SHAPES[kind];
    return thread(prefix + kind, shape, shape.length > 1 ? 4 : 3, KNOT_THREAD);
  });
  return [...knots, ...halves].join('');
}
