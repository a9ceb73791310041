export {
  type ColourTotal,
  CUT_DEFAULTS,
  CUT_LIMITS,
  type CutList,
  type CutOptions,
  type CutPiece,
  cutList,
  type Estimate,
} from './cut-list.js';
export * from './density.js';
export { estimatedTyingLength } from './estimate.js';
export {
  bandLength,
  type FinishedSize,
  finishedSize,
  MAX_LENGTH,
  type WantedLength,
  WRIST_LIMITS,
} from './finished-size.js';
export {
  type Closing,
  closingAdds,
  closingTails,
  FIT_DEFAULTS,
  FIT_LIMITS,
  type Fit,
  knottedLength,
  WRIST_SIZES,
  type WristSize,
  wristFor,
} from './fit.js';
export { chooseJoins, type JoinRules } from './joins.js';
export type { KnotMeasures } from './measures.js';
export { putUpsNeeded } from './packing.js';
export { type Calibration, calibrate, SWATCH_LIMITS, type Swatch } from './swatch.js';
export { checkSwatch, type SwatchCheck, type SwatchSide } from './swatch-check.js';
export { THREAD_LIMITS, type Thread, type ThreadChoice, threadOf } from './thread.js';
export { tightMeasures } from './tight-measures.js';
export { Lengths, type StringUsage, usageOf } from './usage.js';
