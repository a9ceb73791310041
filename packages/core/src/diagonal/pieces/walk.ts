import type { KnotKind } from '../../model/knot.js';
import type { DiagonalPattern } from '../pattern.js';
import { bandOf, build } from './build.js';
import { stepOnCircle } from './circle.js';
import { checkOptions, type PieceOptions } from './options.js';

/** The way that what is seen goes from a row to the next: a slot to the right, or to the left. */
export type Way = 1 | -1;

/**
 * A piece of which each row shows the row above, moved by one slot. All knots of a row are of one
 * kind: it follows from the way the tying strings came and the way they go.
 *
 * @param ways the way from each row of a repeat to the next
 */
export function walkingPiece(
  options: PieceOptions,
  name: string,
  ways: readonly Way[],
  defaultRows: number,
): DiagonalPattern {
  const { strings, colours } = options;
  checkOptions(options, strings);
  const rows = options.rows ?? defaultRows;
  const wayAfter = (row: number): Way => ways[row % ways.length] ?? 1;
  const came = ways.at(-1) ?? 1;
  const first = 0;
  return build(options, {
    name,
    lattice: { strings, rows, first },
    kind: (row) => kindBetween(row === 0 ? came : wayAfter(row - 1), wayAfter(row)),
    colour: (slot) => {
      const step = stepOnCircle(slot, strings, first, came === 1 ? 'left' : 'right');
      return bandOf(Math.floor(step / 2), strings, colours.length);
    },
  });
}

function kindBetween(came: Way, goes: Way): KnotKind {
  if (came === 1) return goes === 1 ? 'forward' : 'forward-backward';
  return goes === -1 ? 'backward' : 'backward-forward';
}
