import type { DiagonalPattern } from '@halfhitch/core';
import {
  type DiagonalPose,
  type DiagonalScene,
  type DiagonalStrandPose,
  diagonalPose,
  diagonalScene,
} from '@halfhitch/geometry/diagonal';
import { yUp } from '../knot/knot-lines.js';
import type { LatticeOrder } from '../piece/lattice-order.js';
import type { Box, ThreadLabel, ThreadLine, ThreadPart } from '../thread/thread-line.js';
import type { RowMoment } from './row-lines.js';

const PART: Readonly<Record<DiagonalStrandPose['role'], ThreadPart>> = {
  tying: 'tying',
  held: 'held',
  other: 'other',
};

const LABEL: Readonly<Partial<Record<DiagonalStrandPose['role'], ThreadLabel>>> = {
  tying: 'ties',
  held: 'held',
};

/** What the geometry works out for a pattern is kept as long as the pattern. */
const scenes = new WeakMap<DiagonalPattern, DiagonalScene>();

function sceneOf(pattern: DiagonalPattern): DiagonalScene {
  const scene = scenes.get(pattern) ?? diagonalScene(pattern);
  scenes.set(pattern, scene);
  return scene;
}

/** All strings near one knot of a row while it is tied; `t` counts its half hitches. */
export function latticeLines(
  order: LatticeOrder,
  row: number,
  inRow: number,
  t: number,
  mirror: boolean,
): RowMoment {
  const scene = sceneOf(order.pattern);
  const number = order.before(row, 0) + inRow;
  const pose = diagonalPose(scene, number, t);
  const side = mirror ? -1 : 1;
  const lines = pose.strands.map((strand): ThreadLine => {
    const points = yUp(strand.points);
    if (mirror) for (let i = 0; i < points.length; i += 3) points[i] = -(points[i] as number);
    return {
      string: strand.id,
      part: PART[strand.role],
      colour: strand.colour,
      points,
      diameter: 2 * strand.radius,
      label: LABEL[strand.role] ?? null,
      labelAt: 'on',
    };
  });
  const focus: [number, number, number] = [side * pose.focus[0], -pose.focus[1], pose.focus[2]];
  const x = eased(order, scene, number, t, pose) * side;
  return { lines, box: boxOf(scene, x, focus[1]), focus, pitch: 1.6 * scene.slotPitch };
}

/** The camera follows from knot to knot of a row, instead of leaping. */
function eased(
  order: LatticeOrder,
  { slotPitch }: DiagonalScene,
  number: number,
  t: number,
  pose: DiagonalPose,
): number {
  const here = pose.focus[0];
  const before = order.knot(number - 1);
  if (before === undefined || before.row !== pose.row || t >= 0.5) return here;
  const there = (before.slot + 0.5) * slotPitch;
  const x = t / 0.5;
  return there + (here - there) * x * x * (3 - 2 * x);
}

function boxOf({ slotPitch, rowHeight }: DiagonalScene, x: number, y: number): Box {
  const across = 3.4 * slotPitch;
  return {
    min: [x - across, y - 3.1 * rowHeight, -2],
    max: [x + across, y + 2.2 * rowHeight, 3],
  };
}
