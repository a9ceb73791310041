import type { EdgeTechnique, StartSide } from '../chart/chart.js';
import type { StepList } from '../model/steplist.js';
import type { StringId, ThreadString } from '../model/strings.js';

/** A knotting plan: which strings hang, and every step from the first to the last. */
export interface Plan {
  readonly name: string;
  readonly rows: number;
  readonly columns: number;
  readonly edge: EdgeTechnique;
  readonly start: StartSide;
  /** Every string of the piece: the base strings first, then the leads in order of first use. */
  readonly strings: readonly ThreadString[];
  /** Ids of the base strings, from left to right. */
  readonly hung: readonly StringId[];
  readonly steps: StepList;
}

/** The way a row is knotted, by where its lead travels to. */
export type Direction = 'right' | 'left';

/** Direction of a row counted from 0. */
export function directionOf(start: StartSide, row: number): Direction {
  return (start === 'left') === (row % 2 === 0) ? 'right' : 'left';
}
