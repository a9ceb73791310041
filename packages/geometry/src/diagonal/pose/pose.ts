import { type HalfWay, halvesOf, KNOT_KINDS, type KnotKind } from '@halfhitch/core';
import { joined, placed } from '../../curve/polyline.js';
import type { Vec3 } from '../../curve/track.js';
import { GeometryError } from '../../knot/options.js';
import type { KnotStage } from '../../knot/stages.js';
import { heldAside } from './aside.js';
import { tiedAt } from './moment.js';
import type { DiagonalScene } from './scene.js';
import { finishedPath, hangingFrom } from './strand.js';
import { heldString, tyingString } from './working.js';

/** A string at one moment. Points are xyz triplets in mm. */
export interface DiagonalStrandPose {
  readonly id: string;
  /** `#rrggbb` */
  readonly colour: string;
  /** Its part in the knot being tied, or none. */
  readonly role: 'tying' | 'held' | 'other';
  readonly points: Float64Array;
  readonly radius: number;
  /** Points that the current move moves: first and last index, inclusive. */
  readonly active?: { readonly from: number; readonly to: number };
}

export interface DiagonalPose {
  /** In the order of knotting, from 0. */
  readonly knot: number;
  readonly row: number;
  readonly place: number;
  readonly t: number;
  readonly kind: KnotKind;
  readonly halfWay: HalfWay;
  readonly stage: KnotStage;
  readonly stageProgress: number;
  readonly strands: readonly DiagonalStrandPose[];
  /** Middle of the knot being tied, for a camera. Mm. */
  readonly focus: Vec3;
}

/**
 * All strings near a knot while it is tied: knots before it finished, later ones not yet begun, and
 * what is not in it hanging. Pure: the same arguments give the same pose.
 *
 * @param knot in the order of knotting, from 0
 * @param t 0 to 2: the first half hitch from 0 to 1, the second from 1 to 2
 * @throws GeometryError when there is no such knot
 */
export function diagonalPose(scene: DiagonalScene, knot: number, t: number): DiagonalPose {
  const { sequence } = scene;
  const cell = sequence.cells[knot];
  if (cell === undefined) {
    throw new GeometryError(
      `There is no knot ${knot}; the pattern has ${scene.knots}, counted from 0.`,
    );
  }
  if (Number.isNaN(t)) throw new GeometryError('t is not a number; give the time from 0 to 2.');
  const time = Math.min(Math.max(t, 0), 2);
  const { tying, held, across } = sequence.work;
  const kind = KNOT_KINDS[sequence.kindOf(cell)] as KnotKind;
  const moment = tiedAt(sequence.kindOf(cell), time);
  const strands = stringsNear(scene, cell).map((string): DiagonalStrandPose => {
    const { id, colour } = sequence.work.strings[string]!;
    const before = finishedPath(scene, string, knot, cell);
    const own = { id, colour, radius: scene.diameter / 2 };
    if (string === tying[cell]) {
      const { points, from } = tyingString(sequence, knot, string, before, moment, time);
      const active = { from, to: points.length / 3 - 1 };
      return { ...own, role: 'tying', points: placed(points, scene.diameter), active };
    }
    const points =
      string === held[cell]
        ? heldString(sequence, knot, string, before, time)
        : joined(
            before,
            heldAside(sequence, string, knot, hangingFrom(sequence, string, knot, cell), time),
          );
    return {
      ...own,
      role: string === held[cell] ? 'held' : 'other',
      points: placed(points, scene.diameter),
    };
  });
  const [x, y] = sequence.placeOf(cell);
  return {
    knot,
    row: sequence.rowOf(cell),
    place: cell % across,
    t: time,
    kind,
    halfWay: halvesOf(kind)[moment.half],
    stage: moment.stage,
    stageProgress: moment.progress,
    strands,
    focus: [x * scene.diameter, y * scene.diameter, 0],
  };
}

/** Strings in the slots round a knot. */
function stringsNear({ sequence, beside }: DiagonalScene, cell: number): number[] {
  const { order, strings } = sequence.work;
  const row = sequence.rowOf(cell);
  const slot = sequence.slotOf(cell);
  const from = Math.max(0, slot - beside);
  const to = Math.min(strings.length - 1, slot + 1 + beside);
  const before = row * strings.length;
  return Array.from(order.subarray(before + from, before + to + 1));
}
