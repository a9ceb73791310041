// Whole pieces: strings of one thickness, others after `loadEveryRatio()`.
export { loadEveryRatio } from '../knot/load-ratios.js';
export type { FabricChunk, FabricStrand, StrandPart } from './chunk.js';
export { Fabric, type FabricOptions, type FabricSize } from './fabric.js';
export { FABRIC_FULLNESS } from './fullness.js';
export { type Level, levelFor } from './levels.js';
