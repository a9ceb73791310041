import type { EdgeTechnique } from '../chart/chart.js';

/**
 * How a lead goes from one row to the next at an edge: back to the inner side, so that the edge
 * string takes two edge knots there, or round the outside of it.
 */
export type TurnWay = 'inside' | 'outside';

const TURNS: Readonly<Record<EdgeTechnique, Readonly<Record<'left' | 'right', TurnWay>>>> = {
  straight: { left: 'inside', right: 'inside' },
  wrapped: { left: 'outside', right: 'outside' },
};

/** The way that an edge technique turns at an edge of the piece. */
export function turnAt(edge: EdgeTechnique, side: 'left' | 'right'): TurnWay {
  return TURNS[edge][side];
}
