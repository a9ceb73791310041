export { printDiagonalDocument, readDiagonalDocument } from './pattern-json.js';
export { printDiagonalText, readDiagonalText } from './pattern-text.js';
export {
  type Drawing,
  type GridOptions,
  pictureFromDrawing,
  readDrawnPng,
} from './picture-drawing.js';
export { type PictureReading, readDiagonalPicture, readPictureFile } from './picture-file.js';
export { printDiagonalPictureDocument, readDiagonalPictureDocument } from './picture-json.js';
export { printDiagonalPicture, readDiagonalPictureText } from './picture-text.js';
export { DIAGONAL_PLAN_LIMITS, readDiagonalPlan } from './plan-parse.js';
export { printDiagonalPlan } from './plan-print.js';
export {
  type PatternOrPicture,
  type PatternReading,
  readPattern,
  readPatternOrPicture,
} from './read.js';
