// What showing one knot takes, without the rest: strings of one thickness, others after
// `loadEveryRatio()`.
export type { HalfWay, KnotKind } from '@halfhitch/core';
export { AXES } from '../frame.js';
export {
  type FinishedKnot,
  finishedKnot,
  type KnotEnd,
  type KnotFrameSize,
  knotFrameSize,
} from './finished.js';
export { loadEveryRatio } from './load-ratios.js';
export { GeometryError, type KnotOptions } from './options.js';
export { type KnotPose, knotPose } from './pose.js';
export { RATIO_LIMITS } from './proportions.js';
export { KNOT_STAGES, type KnotStage, STAGE_ENDS, type StageAt, stageAt } from './stages.js';
