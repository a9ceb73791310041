/** Pictures of knots, of rows and of diagonal work without a browser: nothing here needs a DOM, lit or three. */
export {
  type KnotPictureOptions,
  knotPicture,
  knotPictureElement,
  PictureError,
} from './picture/knot-picture.js';
export {
  MOST_KNOTS_PICTURED,
  type PatternPictureOptions,
  patternPicture,
} from './picture/pattern-picture.js';
export {
  MOST_COLUMNS_PICTURED,
  type RowPictureOptions,
  rowPicture,
} from './picture/row-picture.js';
