import type { EdgeTechnique } from '@halfhitch/core';
import { lengthOf } from '../curve/polyline.js';
import { edgeReach } from '../fabric/edge-reach.js';
import type { Around } from '../fabric/link-ask.js';
import { Links } from '../fabric/links.js';
import { BESIDE } from '../fabric/routes.js';
import { pairsOf, seatingOf } from '../fabric/seating.js';
import { kindCode, mirrorCode, NO_KNOT } from '../fabric/shapes.js';
import type { KnotMeasures } from './measures.js';

/**
 * The measures of knots tightened on a computer, of one thread throughout, as they sit in a piece
 * with this edge technique.
 *
 * Rows of a straight-edged piece lie as far apart as its edge knots are high; those of a wrapped
 * one closer, since all its knots are clove hitches. The ways between knots and round the turns are
 * those of the fabric. A straight edge's links into and out of its edge knots, which are higher or
 * lower than their neighbours, are counted with the edge knots.
 */
export function tightMeasures(edge: EdgeTechnique = 'straight'): KnotMeasures {
  const seating = seatingOf(pairsOf(edge), 1);
  const links = Links.of(seating);
  const inRow = { way: 'on', from: { right: -1, down: 0 } } as const;
  const inPlace = (place: Place): number =>
    links.linkFor({ ...inRow, around: surrounding(edge, place) }).length;
  const link = inPlace('inner');
  const inKnot = seating.shapes.map(({ points, from, to }) =>
    lengthOf(points.subarray(from * 3, to * 3 + 3)),
  );
  const ridden = seating.shapes[kindCode('forward')]!;
  const atEdges = (inPlace('second') + inPlace('last')) / 2;
  const clove = inKnot[kindCode('forward')]!;
  const cow = inKnot[kindCode('forward-backward')]! + (edge === 'straight' ? atEdges - link : 0);
  const turn = (technique: EdgeTechnique): number => {
    const its = Links.of(seatingOf(pairsOf(technique), 1));
    const around = surrounding(technique, 'first');
    return its.linkFor({ way: 'on', from: { right: 0, down: -1 }, around }).length;
  };
  return {
    tying: { forward: clove, backward: clove, 'forward-backward': cow, 'backward-forward': cow },
    link,
    turn: { straight: turn('straight'), wrapped: turn('wrapped') },
    pitch: seating.pitch,
    edges: edgeReach(edge, FAR, FAR, seating, links) - seating.pitch,
    rowHeight: seating.rowHeight,
    thickness: seating.front - seating.back + 1,
    laidThrough: lengthOf(ridden.lifted) - lengthOf(ridden.points),
    clearing: 2 * BESIDE,
    // The held string is taut, so it runs straight through its knots.
    held: seating.rowHeight,
  };
}

/** Far more columns than a link looks at. */
const FAR = 100;

type Place = 'first' | 'second' | 'inner' | 'last';

/** The knots round one in a wide piece, its row going to the right. */
function surrounding(edge: EdgeTechnique, place: Place): Around {
  const column = { first: 0, second: 1, inner: FAR / 2, last: FAR - 1 }[place];
  const forward = kindCode('forward');
  return (right, down) => {
    const at = column + right;
    if (at < 0 || at >= FAR) return NO_KNOT;
    if (edge === 'straight' && at === 0) return kindCode('backward-forward');
    if (edge === 'straight' && at === FAR - 1) return kindCode('forward-backward');
    return down % 2 === 0 ? forward : mirrorCode(forward);
  };
}
