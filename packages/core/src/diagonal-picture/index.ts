export { type DrawDiagonalOptions, diagonalPieces, drawDiagonal } from './draw-diagonal.js';
export { type DrawLatticeOptions, drawLattice, placeDiffers } from './draw-lattice.js';
export { type DiagonalDrawn, type DrawnKnot, verifiedDrawing } from './drawn.js';
export { type DiagonalGeometry, diagonalGeometry } from './geometry.js';
