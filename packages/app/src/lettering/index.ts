export { BORDERS, type BorderKind } from './border.js';
export { ALPHABETS, letter } from './letter.js';
export {
  type LetteringOptions,
  type LetterSize,
  type TextDirection,
  USUAL_LETTERING,
} from './settings.js';
