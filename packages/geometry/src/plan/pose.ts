import {
  InputError,
  type KnotReading,
  type Plan,
  PlanReader,
  type RowReading,
  type Step,
} from '@halfhitch/core';
import { type RowPose, rowPose } from '../row/pose.js';
import { type RowPhase, rowPhases } from '../row/scene.js';
import { columnsRound, type PlanScene, sceneOf, type WindowOptions } from './window.js';

/** Every string near the knot of a step, at one moment of the step. */
export interface PlanPose extends RowPose {
  /** The knot that the step belongs to; rows and columns from 0. */
  readonly row: number;
  readonly column: number;
  /** Column of the piece at which the pose's own columns begin. */
  readonly firstColumn: number;
}

/** Scenes kept of a plan; the joints of a scene are worked out once for as long as it is kept. */
const SCENES_KEPT = 12;

interface Kept {
  readonly reader: PlanReader;
  readonly scenes: Map<string, PlanScene>;
}

/** A plan never changes, so what was worked out for it holds for as long as it is used. */
const kept = new WeakMap<Plan, Kept>();

/**
 * The strings while a step of a plan is done. Pure: the same plan, step and fraction give the same
 * pose, in whatever order they are asked for.
 *
 * Steps that move no thread, such as the turn, hold the pose of the moment at which they come.
 *
 * @param step place of the step in the plan, from 0
 * @param fraction how far the step is done, 0 to 1
 * @throws InputError when the plan has no such step, or its steps cannot be done up to there
 */
export function planPose(
  plan: Plan,
  step: number,
  fraction: number,
  options: WindowOptions = {},
): PlanPose {
  const { knot, part } = placeOf(plan, step, options);
  const index = part.knots.findIndex(
    ({ row, column }) => row === knot.row && column === knot.column,
  );
  const phases = rowPhases(part.scene, index);
  const t = timeOf(plan, knot, step, Math.min(Math.max(fraction, 0), 1), phases);
  return {
    ...rowPose(part.scene, index, t),
    row: knot.row,
    column: knot.column,
    firstColumn: part.firstColumn,
  };
}

function placeOf(
  plan: Plan,
  step: number,
  options: WindowOptions,
): { knot: KnotReading; part: PlanScene } {
  if (!Number.isInteger(step) || step < 0 || step >= plan.steps.length) {
    throw new InputError(
      'no-such-step',
      `The plan has no step ${step + 1}.`,
      {},
      `Choose a step from 1 to ${plan.steps.length}.`,
    );
  }
  let known = kept.get(plan);
  if (known === undefined) {
    known = { reader: new PlanReader(plan), scenes: new Map() };
    kept.set(plan, known);
  }
  const reading = known.reader.row(rowOfStep(known.reader, plan.rows, step));
  const at = reading.knots.findIndex((knot) => step < knot.steps.end);
  // A step after the last knot, such as a turn that nothing follows, shows that knot finished.
  const knot = reading.knots[at < 0 ? reading.knots.length - 1 : at];
  if (knot === undefined) {
    throw new InputError(
      'row-missing',
      'The row has no knots.',
      { row: reading.row + 1 },
      'Verify the plan to see where it first goes wrong.',
    );
  }
  return { knot, part: sceneAt(known, reading, knot.column, plan.columns, options) };
}

function sceneAt(
  { reader, scenes }: Kept,
  reading: RowReading,
  column: number,
  columns: number,
  options: WindowOptions,
): PlanScene {
  const shown = columnsRound(column, columns, options.beside);
  const { tyingDiameter = 1, heldDiameter = tyingDiameter } = options;
  const key = [reading.row, ...shown, tyingDiameter, heldDiameter].join(' ');
  let part = scenes.get(key);
  if (part === undefined) {
    const rows = reading.row === 0 ? [reading] : [reader.row(reading.row - 1), reading];
    part = sceneOf(rows, shown, options);
    const [oldest] = scenes.keys();
    if (scenes.size >= SCENES_KEPT && oldest !== undefined) scenes.delete(oldest);
    scenes.set(key, part);
  }
  return part;
}

/** Rows lie in the order of their steps, so halving finds the one that a step belongs to. */
function rowOfStep(reader: PlanReader, rows: number, step: number): number {
  let low = 0;
  let high = rows - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    const knots = reader.row(middle).knots;
    const end = knots[knots.length - 1]?.steps.end ?? 0;
    if (step < end) high = middle;
    else low = middle + 1;
  }
  return low;
}

function timeOf(
  plan: Plan,
  knot: KnotReading,
  step: number,
  fraction: number,
  phases: readonly RowPhase[],
): number {
  if (step >= knot.steps.end) return phases.length;
  let halves = 0;
  for (let i = knot.steps.first; i < step; i++) {
    if (plan.steps.at(i).do === 'halfHitch') halves++;
  }
  const phase = phaseOf(plan.steps.at(step), halves);
  const at = phase === null ? -1 : phases.indexOf(phase);
  if (at >= 0) return at + fraction;
  if (halves === 0) return timeBefore(plan, knot, step, phases);
  return halves === 1 ? phases.indexOf('second-half') : phases.length;
}

/** The move that a step is, after so many halves of its knot. */
function phaseOf(step: Step, halves: number): RowPhase | null {
  switch (step.do) {
    case 'halfHitch':
      return halves === 0 ? 'first-half' : 'second-half';
    case 'layThrough':
      return 'lay-through';
    case 'park':
      return step.route === 'behind' ? 'pass-behind' : step.route === 'down' ? 'take-down' : null;
    case 'add':
    case 'takeUp':
      return 'lay-aside';
    default:
      return null;
  }
}

/** The moment at which a step comes that moves nothing: after the moves of the steps before it. */
function timeBefore(
  plan: Plan,
  knot: KnotReading,
  step: number,
  phases: readonly RowPhase[],
): number {
  let time = 0;
  for (let i = knot.steps.first; i < step; i++) {
    const phase = phaseOf(plan.steps.at(i), 0);
    const at = phase === null ? -1 : phases.indexOf(phase);
    if (at >= 0) time = Math.max(time, at + 1);
  }
  return time;
}
