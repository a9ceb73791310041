export type { HalfWay, KnotKind } from '@halfhitch/core';
export { type Bend, furthestStep, sharpestBend } from './checks/bends.js';
export { type CheckedStrand, type Clearance, leastClearance } from './checks/clearance.js';
export * from './curve/polyline.js';
export * from './fabric/index.js';
export { AXES } from './frame.js';
export {
  type FinishedKnot,
  finishedKnot,
  type KnotEnd,
  type KnotFrameSize,
  knotFrameSize,
} from './knot/finished.js';
export { GeometryError, type KnotOptions } from './knot/options.js';
export { type KnotPose, knotPose } from './knot/pose.js';
export { RATIO_LIMITS } from './knot/proportions.js';
export { KNOT_STAGES, type KnotStage, STAGE_ENDS, type StageAt, stageAt } from './knot/stages.js';
export * from './plan/index.js';
export { type RowPose, type RowStrand, rowPose } from './row/pose.js';
export {
  type ChangeHow,
  ROW_LIMITS,
  type RowKnot,
  type RowPhase,
  type RowScene,
  rowPhases,
} from './row/scene.js';
export * from './thread/index.js';
export { type ClosureSide, closedHitch } from './topology/closure.js';
export * from './topology/crossings.js';
export { determinantOf } from './topology/determinant.js';
export {
  type DiagramCrossing,
  diagramOf,
  type LinkDiagram,
  linkingNumber,
  upright,
  writhe,
} from './topology/diagram.js';
export { bracket, jonesPolynomial, type Laurent } from './topology/jones.js';
export { gaussLinking } from './topology/linking.js';
export * from './topology/turning.js';
