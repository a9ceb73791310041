import type { KnotKind } from '@halfhitch/core';
import { knotPose } from '@halfhitch/geometry';
import type { Box, ThreadLine } from '../thread/thread-line.js';

/** Points of the tying string: enough that its tightest bends look round. */
const POINTS = 640;

export interface KnotLook {
  readonly kind: KnotKind;
  readonly mirror: boolean;
  readonly tyingColour: string;
  readonly heldColour: string;
}

/** The two strings of a knot at a position, 0 to 2. */
export function knotLines(look: KnotLook, position: number): ThreadLine[] {
  const pose = knotPose(look.kind, position, { mirror: look.mirror, points: POINTS });
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

/**
 * The part of the page that a knot is watched in, in mm for 1 mm thread: the knot itself, with
 * some of the strings above and below it.
 */
export const KNOT_BOX: Box = { min: [-3.4, -10.6, -1.6], max: [3.4, 3.4, 3.4] };

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
