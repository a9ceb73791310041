/** Pictures of knots without a browser: nothing here needs a DOM, lit or three. */
export {
  type KnotPictureOptions,
  knotPicture,
  knotPictureElement,
  PictureError,
} from './picture/knot-picture.js';
