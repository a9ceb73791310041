// Diagonal work: strings of one thickness.
export type { DiagonalChunk, DiagonalStrand } from './chunk.js';
export { PASS_FIELDS } from './chunk.js';
export {
  type DiagonalCutList,
  type DiagonalCutOptions,
  type DiagonalCutPiece,
  type DiagonalSwatch,
  diagonalCutList,
  repeatedRows,
} from './cut-list.js';
export {
  DiagonalFabric,
  type DiagonalFabricOptions,
  type HangingThread,
  type LatticePlace,
} from './fabric.js';
export { LATTICE_FULLNESS } from './fullness.js';
export {
  type DiagonalPose,
  type DiagonalStrandPose,
  diagonalPose,
} from './pose/pose.js';
export { type DiagonalScene, type DiagonalSceneOptions, diagonalScene } from './pose/scene.js';
export type { WorthSwapping } from './swaps.js';
export { type DiagonalStringUsage, diagonalUsage } from './usage.js';
