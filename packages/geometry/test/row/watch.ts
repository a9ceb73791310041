import { type PlanOptions, PlanReader, planAlpha } from '@halfhitch/core';
import {
  leastClearance,
  lengthOf,
  type RowScene,
  rowPhases,
  rowPose,
  sharpestBend,
} from '../../src/index.js';
import { sceneOf } from '../../src/plan/window.js';
import { drawn } from '../support/charts.js';

/** What thread does over a knot's moves, in tying diameters. */
export interface Findings {
  clearance: number;
  /** Where that is: knot, time and strands. */
  where: string;
  bend: number;
  /** How much longer than at its shortest a lead is at its longest, within one move. */
  stretch: number;
}

/** Nothing further apart than this is looked for, in sums of radii. */
const NEAR = 1.05;

/**
 * Watches one knot of a scene at `samples` + 1 moments a move.
 *
 * @param shift how much later than usual the moments between are, in parts of the time from one to the next
 */
export function watch(scene: RowScene, index: number, samples: number, shift = 0): Findings {
  const found: Findings = { clearance: NEAR, where: '', bend: Infinity, stretch: 0 };
  rowPhases(scene, index).forEach((_, phase) => {
    const lengths = new Map<string, [number, number]>();
    for (let s = 0; s <= samples; s++) {
      const at = s === 0 ? 0 : Math.min((s + shift) / samples, 1 - 1e-9);
      const pose = rowPose(scene, index, phase + at);
      const least = leastClearance(pose.strands, NEAR);
      if (least && least.ratio < found.clearance) {
        found.clearance = least.ratio;
        found.where = `knot ${index} t ${pose.t} ${least.between} ${least.at}`;
      }
      for (const strand of pose.strands) {
        if (strand.role === 'base' || strand.role === 'held') continue;
        found.bend = Math.min(found.bend, sharpestBend(strand.points).radius);
        const length = lengthOf(strand.points);
        const [a, b] = lengths.get(strand.id) ?? [length, length];
        lengths.set(strand.id, [Math.min(a, length), Math.max(b, length)]);
      }
    }
    for (const [a, b] of lengths.values()) found.stretch = Math.max(found.stretch, b / a - 1);
  });
  return found;
}

/** One row of a drawing with the row before it, as planned, and where its knots begin in the scene. */
export function plannedRow(
  rows: readonly string[],
  row: number,
  options: PlanOptions = {},
): { readonly scene: RowScene; readonly first: number } {
  const plan = planAlpha(drawn(...rows), options);
  const reader = new PlanReader(plan);
  const reading = reader.row(row);
  const shown = row === 0 ? [reading] : [reader.row(row - 1), reading];
  const { scene } = sceneOf(shown, [0, plan.columns - 1]);
  return { scene, first: scene.knots.length - reading.knots.length };
}
