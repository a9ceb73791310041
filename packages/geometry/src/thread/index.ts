export {
  type ColourTotal,
  type CutList,
  type CutOptions,
  type CutPiece,
  cutList,
  type Estimate,
} from './cut-list.js';
export * from './density.js';
export { estimatedTyingLength } from './estimate.js';
export { bandLength, type FinishedSize, finishedSize, type WantedLength } from './finished-size.js';
export { chooseJoins, type JoinRules } from './joins.js';
export type { KnotMeasures } from './measures.js';
export { putUpsNeeded } from './packing.js';
export { type Calibration, calibrate, type Swatch } from './swatch.js';
export { type Thread, type ThreadChoice, threadOf } from './thread.js';
export { tightMeasures } from './tight-measures.js';
export { Lengths, type StringUsage, usageOf } from './usage.js';
