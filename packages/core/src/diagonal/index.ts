export * from './files/index.js';
export * from './lattice.js';
export * from './pattern.js';
export * from './picture.js';
export * from './pieces/index.js';
export * from './plan.js';
export * from './reading.js';
export { type DiagonalReading, NO_STRING_HERE, simulateDiagonal } from './simulate.js';
