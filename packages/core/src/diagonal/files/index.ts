export { printDiagonalDocument, readDiagonalDocument } from './pattern-json.js';
export { printDiagonalText, readDiagonalText } from './pattern-text.js';
export { printDiagonalPictureDocument, readDiagonalPictureDocument } from './picture-json.js';
export { printDiagonalPicture, readDiagonalPictureText } from './picture-text.js';
export { type PatternReading, readDiagonalPicture, readPattern } from './read.js';
