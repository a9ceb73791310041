import './knot/tightened/every-ratio.js';

export { type Bend, furthestStep, sharpestBend } from './checks/bends.js';
export { type CheckedStrand, type Clearance, leastClearance } from './checks/clearance.js';
export * from './curve/polyline.js';
export * from './diagonal/index.js';
export * from './fabric/index.js';
export * from './knot/index.js';
export * from './plan/index.js';
export * from './row/index.js';
export * from './thread/index.js';
export { type ClosureSide, closedHitch } from './topology/closure.js';
export * from './topology/crossings.js';
export { determinantOf } from './topology/determinant.js';
export {
  type DiagramCrossing,
  diagramOf,
  type LinkDiagram,
  linkingNumber,
  upright,
  writhe,
} from './topology/diagram.js';
export { bracket, jonesPolynomial, type Laurent } from './topology/jones.js';
export { gaussLinking } from './topology/linking.js';
export * from './topology/turning.js';
