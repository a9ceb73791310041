// Rows of knots and the hand-overs of leads: strings of one thickness, others after
// `loadEveryRatio()`.
export { loadEveryRatio } from '../knot/load-ratios.js';
export { GeometryError } from '../knot/options.js';
export { columnsOf, type RowPose, type RowStrand, rowPose } from './pose.js';
export {
  type ChangeHow,
  ROW_LIMITS,
  type RowKnot,
  type RowPhase,
  type RowScene,
  rowPhases,
} from './scene.js';
