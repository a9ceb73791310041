import { directionOf, type EdgeTechnique, type StartSide, turnAt } from '@halfhitch/core';
import type { Around } from './link-ask.js';
import type { Links } from './links.js';
import type { Seating } from './seating.js';
import { kindCode, mirrorCode, NO_KNOT } from './shapes.js';

/**
 * How far a piece reaches beyond the middles of its outermost base strings, both sides together, in
 * tying diameters: to the outside of the wraps, or of the turns where these go round the outside.
 */
export function edgeReach(
  edge: EdgeTechnique,
  start: StartSide,
  rows: number,
  columns: number,
  seating: Seating,
  links: Links,
): number {
  const wraps = seating.halfWidth + 0.5;
  // The first two turns are at one edge each; those after them add nothing.
  const turns = [0, 1].filter(
    (row) => row + 1 < rows && turnAt(edge, directionOf(start, row)) === 'outside',
  ).length;
  if (turns === 0) return 2 * wraps;
  return (2 - turns) * wraps + turns * (turnReach(columns, links) + 0.5);
}

/** Distance from the outermost base string to the middle of the lead that goes round it. */
function turnReach(columns: number, links: Links): number {
  const forward = kindCode('forward');
  const around: Around = (right, down) => {
    if (right < 0 || right >= columns) return NO_KNOT;
    return down % 2 === 0 ? forward : mirrorCode(forward);
  };
  const { levels } = links.linkFor({ way: 'on', from: { right: 0, down: -1 }, around });
  let most = 0;
  const [points] = levels as [Float64Array];
  for (let i = 0; i < points.length; i += 3) most = Math.max(most, -points[i]!);
  return most;
}
