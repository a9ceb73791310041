/** How much thicker than the tube round its centre-line a thread of a piece is drawn. */
export { FABRIC_FULLNESS as FULLNESS } from '@halfhitch/geometry/fabric';
