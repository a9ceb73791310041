import { type EdgeTechnique, type TurnWay, turnAt } from '@halfhitch/core';
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
  const inPlace = (way: TurnWay, place: Place): number =>
    links.linkFor({ ...inRow, around: surrounding(way, place) }).length;
  const link = inPlace('outside', 'inner');
  const inKnot = seating.shapes.map(({ points, from, to }) =>
    lengthOf(points.subarray(from * 3, to * 3 + 3)),
  );
  const ridden = seating.shapes[kindCode('forward')]!;
  // By symmetry the ways at one edge are those at the other.
  const atEdges = (inPlace('inside', 'second') + inPlace('inside', 'last')) / 2;
  const isInside = turnAt(edge, 'left') === 'inside' || turnAt(edge, 'right') === 'inside';
  const clove = inKnot[kindCode('forward')]!;
  const cow = inKnot[kindCode('forward-backward')]! + (isInside ? atEdges - link : 0);
  const turn = (way: TurnWay): number => {
    const around = surrounding(way, 'first');
    return links.linkFor({ way: 'on', from: { right: 0, down: -1 }, around }).length;
  };
  return {
    tying: { forward: clove, backward: clove, 'forward-backward': cow, 'backward-forward': cow },
    link,
    turn: { inside: turn('inside'), outside: turn('outside') },
    pitch: seating.pitch,
    edges: edgeReach(edge, 'left', FAR, FAR, seating, links) - seating.pitch,
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

/** The knots round one in a wide piece, its row going to the right, its edges turning one way. */
function surrounding(way: TurnWay, place: Place): Around {
  const column = { first: 0, second: 1, inner: FAR / 2, last: FAR - 1 }[place];
  const forward = kindCode('forward');
  return (right, down) => {
    const at = column + right;
    if (at < 0 || at >= FAR) return NO_KNOT;
    if (way === 'inside' && at === 0) return kindCode('backward-forward');
    if (way === 'inside' && at === FAR - 1) return kindCode('forward-backward');
    return down % 2 === 0 ? forward : mirrorCode(forward);
  };
}
