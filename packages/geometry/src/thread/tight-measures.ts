import { KNOT_KINDS, type KnotKind } from '@halfhitch/core';
import { finishedKnot } from '../knot/finished.js';
import type { KnotMeasures } from './measures.js';

/**
 * The measures of knots tightened on a computer, of one thread throughout.
 *
 * Knots seat on each other: a knot's lead leaves it where the next one's enters, so nothing runs
 * between them, and rows lie as far apart as the tallest knot is high. At a turn a straight edge
 * sends the lead straight down to the row to come, a wrapped one round half a circle outside it.
 */
export function tightMeasures(): KnotMeasures {
  const finished = (kind: KnotKind) => finishedKnot(kind);
  const heights = KNOT_KINDS.map((kind) => finished(kind).size.height);
  const rowHeight = Math.max(...heights);
  const { width, depth } = finished('forward').size;
  const edge = finished('forward-backward');
  const down = rowHeight - (edge.exit.at[1] - edge.entry.at[1]);
  const tying = Object.fromEntries(
    KNOT_KINDS.map((kind) => [kind, finished(kind).tyingLength]),
  ) as Record<KnotKind, number>;
  return {
    tying,
    link: 0,
    turn: { straight: down, wrapped: (Math.PI / 2) * rowHeight },
    pitch: width,
    rowHeight,
    thickness: depth,
    // The held string is taut, so it runs straight through its knots.
    held: rowHeight,
  };
}
