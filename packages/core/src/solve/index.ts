/**
 * Solving, an entry of its own (`@halfhitch/core/solve`): it brings a solver as WebAssembly along,
 * which those who solve nothing need not have in their bundles.
 */
export { placesInWords } from './explain/words.js';
export { type ForcedKnots, type ForcedOptions, forcedKnots } from './forced.js';
export * from './options.js';
export { solveDiagonal } from './solve.js';
