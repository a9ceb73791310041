import type { KnotKind } from '@halfhitch/core';
import { knotPose } from '@halfhitch/geometry/knot';
import type { Box, ThreadLine } from '../thread/thread-line.js';

/** Points of the tying string: enough that its tightest bends look round. */
const POINTS = 640;

export interface KnotLook {
  readonly kind: KnotKind;
  readonly mirror: boolean;
  readonly tyingColour: string;
  readonly heldColour: string;
  /** Points of the tying string; default: enough for a large picture. */
  readonly points?: number;
}

/** The two strings of a knot at a position, 0 to 2. */
export function knotLines(look: KnotLook, position: number): ThreadLine[] {
  const pose = knotPose(look.kind, position, {
    mirror: look.mirror,
    points: look.points ?? POINTS,
  });
  return [
    {
      string: 'held',
      part: 'held',
      colour: look.heldColour,
      points: yUp(pose.held),
      diameter: 2 * pose.heldRadius,
      label: 'held',
      labelAt: 'top',
    },
    {
      string: 'tying',
      part: 'tying',
      colour: look.tyingColour,
      points: yUp(pose.tying),
      diameter: 2 * pose.tyingRadius,
      label: 'ties',
      labelAt: 'top',
    },
  ];
}

/** Middle of where the tying string crosses the held one, in mm, y up. */
export function crossingOf(lines: readonly ThreadLine[]): readonly [number, number, number] {
  const points = lines.find(({ part }) => part === 'tying')?.points ?? new Float32Array(0);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 3; i < points.length; i += 3) {
    if ((points[i] as number) * (points[i - 3] as number) > 0) continue;
    const y = points[i + 1] as number;
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  return [0, high < low ? 0 : (low + high) / 2, 0];
}

/** Room for the knot while it is loose, and for the tight one alone; mm for 1 mm thread. */
const LOOSE: Box = { min: [-3.8, -10.6, -1.6], max: [3.8, 3.4, 3.4] };
const TIGHT: Box = { min: [-2.95, -4.6, -1.6], max: [2.95, 2.4, 2.4] };

/** Where the camera begins to come nearer, while the second half is drawn up. */
const NEARER_FROM = 1.82;

/** What the picture holds: the loose strings, and at the end the finished knot from near by. */
export function knotBox(position: number): Box {
  const x = Math.max(0, Math.min(1, (position - NEARER_FROM) / (2 - NEARER_FROM)));
  const f = x * x * (3 - 2 * x);
  const between = (a: Box['min'], b: Box['min']): [number, number, number] => [
    a[0] + (b[0] - a[0]) * f,
    a[1] + (b[1] - a[1]) * f,
    a[2] + (b[2] - a[2]) * f,
  ];
  return { min: between(LOOSE.min, TIGHT.min), max: between(LOOSE.max, TIGHT.max) };
}

/** From the geometry's frame, whose y points down the page, to the picture's, y up. */
export function yUp(points: Float64Array): Float32Array {
  const turned = new Float32Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    turned[i] = points[i] as number;
    turned[i + 1] = -(points[i + 1] as number);
    turned[i + 2] = points[i + 2] as number;
  }
  return turned;
}
