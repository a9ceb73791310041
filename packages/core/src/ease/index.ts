export { type BestWay, type BestWayOptions, bestWay, type Way } from './best-way.js';
export { type EasierReading, easier } from './easier.js';
export {
  type Effort,
  type EffortOptions,
  effortOf,
  type KnottingChoice,
  type Pace,
  type ProvenEffort,
  USUAL_PACE,
} from './effort.js';
export { MIRRORINGS, type Mirroring, mirroredChart } from './mirror.js';
export { EASIER_DEFAULTS, EASIER_LIMITS, type EasierOptions } from './options.js';
export {
  type CellEdit,
  type Gain,
  rowsOf,
  type Suggestion,
  type SuggestionKind,
  withCells,
} from './suggestion.js';
export {
  effortInWords,
  gainInWords,
  LETTERS_IN_WORDS,
  lengthInWords,
  MIRRORING_IN_WORDS,
  suggestionInWords,
  timeInWords,
  whereInWords,
} from './words.js';
