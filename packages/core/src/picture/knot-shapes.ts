import { KNOT_KINDS, type KnotKind } from '../model/knot.js';
import { CELL, THREAD } from './fabric-geometry.js';
import { short } from './markup.js';
import { type Point, pathOf, plyLines, type Stretch } from './thread-path.js';

/** What shows of each knot from the front: the thread's own path, in the box of one cell. */

const { width: W, height: H } = CELL;

/** Rise of a wrap over its run: a lead that travels comes out of a knot lower than it went in. */
const SLANT = 0.3;
const REACH = 8.8;
/** Height of the two wraps in the cell. */
const UPPER = 5.6;
const LOWER = H - UPPER;

/** Two half hitches in one direction show as two wraps side by side, both slanting its way. */
function alike(slant: number): readonly Stretch[] {
  return [UPPER, LOWER].map((y): Stretch => {
    const x = W / 2;
    const [end, flat] = [slant * REACH * 1.15, slant * REACH * 0.75];
    return [
      [
        [x - REACH, y - end],
        [x - REACH * 0.4, y - flat],
        [x + REACH * 0.4, y + flat],
        [x + REACH, y + end],
      ],
    ];
  });
}

/** Two unlike half hitches are one bent pair: out over the string, round, and back. */
function bent(towards: 'left' | 'right'): readonly Stretch[] {
  const at = (x: number, y: number): Point => [towards === 'right' ? x : W - x, y];
  const far = W - 1.4;
  const upper: Stretch[number] = [at(3, 4), at(9, 4.4), at(13, 5.6), at(17, 6.6)];
  const round: Stretch[number] = [at(17, 6.6), at(far, 8.2), at(far, H - 8.2), at(17, H - 6.6)];
  const lower: Stretch[number] = [at(17, H - 6.6), at(13, H - 5.6), at(9, H - 4.4), at(3, H - 4)];
  return [[upper, round, lower]];
}

/** At a wrapped edge the lead runs round the outside, from one row down to the next. */
function outside(towards: 'left' | 'right'): readonly Stretch[] {
  const at = (x: number, y: number): Point => [towards === 'right' ? x : W - x, y];
  return [[[at(W - 4, H - 6), at(W + 9, H - 4.5), at(W + 9, H + 4.5), at(W - 4, H + 6)]]];
}

/** At a straight edge the lead goes down to the next row on the inner side of the edge string. */
function inside(edge: 'left' | 'right'): readonly Stretch[] {
  const at = (x: number, y: number): Point => [edge === 'right' ? x : W - x, y];
  return [[[at(5, H - 4), at(-1, H - 3), at(-1, H + 3), at(5, H + 4)]]];
}

const KNOT_SHAPES: Readonly<Record<KnotKind, readonly Stretch[]>> = {
  forward: alike(SLANT),
  backward: alike(-SLANT),
  'forward-backward': bent('right'),
  'backward-forward': bent('left'),
};

export type TurnShape = 'outside-left' | 'outside-right' | 'inside-left' | 'inside-right';

const TURN_SHAPES: Readonly<Record<TurnShape, readonly Stretch[]>> = {
  'outside-left': outside('left'),
  'outside-right': outside('right'),
  'inside-left': inside('left'),
  'inside-right': inside('right'),
};

/** The definitions that a picture refers to, once each. The thread's colour comes in as stroke. */
export function shapeDefinitions(prefix: string): string {
  const knots = KNOT_KINDS.map((kind) => {
    const shape = KNOT_SHAPES[kind];
    return thread(prefix + kind, shape, shape.length > 1 ? 5 : 4);
  });
  const turns = (Object.keys(TURN_SHAPES) as TurnShape[]).map((name) =>
    thread(prefix + name, TURN_SHAPES[name], 4),
  );
  return [...knots, ...turns].join('');
}

/**
 * One stretch of twisted thread to refer to: dark rim, colour, light and shade, and its plies.
 * The thread's colour comes in as stroke.
 */
export function thread(
  id: string,
  stretches: readonly Stretch[],
  plies: number,
  thickness = THREAD,
): string {
  const path = pathOf(stretches);
  const flank = (colour: string, opacity: number, share: number, up: number): string =>
    `<path d="${path}" stroke="${colour}" stroke-opacity="${opacity}" stroke-width="${short(thickness * share)}" transform="translate(0 ${short((-up * thickness) / THREAD)})"/>`;
  return [
    `<g id="${id}" fill="none" stroke-linecap="round" stroke-linejoin="round">`,
    `<path d="${path}" stroke="#000" stroke-opacity=".6" stroke-width="${short(thickness + 1.3)}"/>`,
    `<path d="${path}" stroke-width="${short(thickness)}"/>`,
    flank('#000', 0.13, 0.52, -2.7),
    flank('#fff', 0.13, 0.5, 1.5),
    flank('#fff', 0.13, 0.22, 2),
    `<path d="${plyLines(stretches, thickness, plies)}" stroke="#000" stroke-opacity=".2" stroke-width=".9"/>`,
    '</g>',
  ].join('');
}
