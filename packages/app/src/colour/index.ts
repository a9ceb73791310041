export { DEFICIENCIES, type Deficiency, simulate } from './deficiency.js';
export {
  colourWarnings,
  HARD_TO_TELL,
  type HardToTell,
  hardToTell,
  SIGHTS,
  type Sight,
} from './hard-to-tell.js';
export { type Neighbours, neighboursOf } from './neighbours.js';
export {
  type Cielab,
  ciede2000,
  cielabOf,
  contrast,
  hexOfOklab,
  type Oklab,
  oklabOf,
  oklabOfLinear,
} from './spaces.js';
