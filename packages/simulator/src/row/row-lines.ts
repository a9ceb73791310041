import type { KnotReading } from '@halfhitch/core';
import { type RowPose, type RowStrand, rowPose } from '@halfhitch/geometry/row';
import { yUp } from '../knot/knot-lines.js';
import type { Box, ThreadLabel, ThreadLine, ThreadPart } from '../thread/thread-line.js';
import { columnsAcross } from './columns-across.js';
import { colourOfString, type RowToPlay, windowAt } from './row-scene.js';

export interface RowMoment {
  readonly lines: readonly ThreadLine[];
  readonly box: Box;
  /** Middle of the knot being tied, y up. */
  readonly focus: readonly [number, number, number];
  readonly pitch: number;
}

const PART: Readonly<Record<RowStrand['role'], ThreadPart>> = {
  tying: 'tying',
  held: 'held',
  'old-lead': 'old-lead',
  base: 'other',
  lead: 'resting',
};

const LABEL: Readonly<Partial<Record<RowStrand['role'], ThreadLabel>>> = {
  tying: 'ties',
  held: 'held',
  'old-lead': 'old',
};

/** All strings near one knot of a row while it is tied; `t` counts the knot's moves. */
export function rowLines(play: RowToPlay, order: number, t: number, mirror: boolean): RowMoment {
  const { scene, index, firstColumn } = windowAt(play, order);
  const pose = rowPose(scene, index, t);
  const side = mirror ? -1 : 1;
  const shift = (columnsAcross(play)[firstColumn] as number) - (pose.columns[0] as number);
  const lines = pose.strands.map((strand): ThreadLine => {
    const points = yUp(strand.points);
    for (let i = 0; i < points.length; i += 3) points[i] = side * ((points[i] as number) + shift);
    return {
      string: strand.id,
      part: PART[strand.role],
      colour: colourOfString(play.reading.before, strand.id),
      points,
      diameter: 2 * strand.radius,
      label: LABEL[strand.role] ?? null,
      labelAt: strand.role === 'held' ? 'top' : 'end',
    };
  });
  const focus: [number, number, number] = [
    side * (pose.focus[0] + shift),
    -pose.focus[1],
    pose.focus[2],
  ];
  return {
    lines,
    box: boxOf(pose, eased(play, order, t, side), focus[1]),
    focus,
    pitch: pose.pitch,
  };
}

/** The camera follows from knot to knot, instead of leaping. */
function eased(play: RowToPlay, order: number, t: number, side: number): number {
  const columns = columnsAcross(play);
  const here = (columns[(play.reading.knots[order] as KnotReading).column] as number) * side;
  const before = play.reading.knots[order - 1];
  if (before === undefined || t >= 0.5) return here;
  const there = (columns[before.column] as number) * side;
  const x = t / 0.5;
  return there + (here - there) * x * x * (3 - 2 * x);
}

/**
 * Two knots to each side, the row above and the loop of what is being tied. About as high as wide: a
 * picture that is far wider than high would show less of them, from nearer by.
 */
function boxOf({ pitch, rowHeight }: RowPose, x: number, y: number): Box {
  const across = 2.4 * pitch;
  return {
    min: [x - across, y - 2.1 * rowHeight, -2],
    max: [x + across, y + 1.9 * rowHeight, 3],
  };
}
