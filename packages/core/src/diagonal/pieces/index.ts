export { chevrons, diamonds } from './chevrons.js';
export type { PieceOptions } from './options.js';
export {
  diagonalStripes,
  type StripeOptions,
  type WaveOptions,
  wave,
  type ZigzagOptions,
  zigzag,
} from './stripes.js';
