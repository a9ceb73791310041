import type { KnotKind } from '../../model/knot.js';
import type { DiagonalPattern } from '../pattern.js';
import { bandOf, build, modulo } from './build.js';
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
  const window = seenOfCircle(strings, ways);
  checkOptions(options, Math.ceil(window.steps / 2));
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
      return bandOnCircle(step, window, strings, colours.length);
    },
  });
}

/** The part of the circle that comes to be seen: so many steps, beginning at `from`. */
interface Window {
  readonly from: number;
  readonly steps: number;
}

function seenOfCircle(strings: number, ways: readonly Way[]): Window {
  let at = 0;
  let [least, most] = [0, 0];
  for (const way of ways) {
    at += way;
    least = Math.min(least, at);
    most = Math.max(most, at);
  }
  const round = 2 * strings;
  const steps = strings - 1 + most - least;
  // A walk that does not come back goes all the way round in the end.
  if (at !== 0 || steps >= round) return { from: 0, steps: round };
  return { from: -most, steps };
}

/** The strings that are never seen take the colour of the nearest that are. */
function bandOnCircle(step: number, window: Window, strings: number, bands: number): number {
  const round = 2 * strings;
  const into = modulo(step - window.from, round);
  const seen = Math.ceil(window.steps / 2);
  if (into < window.steps) return bandOf(Math.floor(into / 2), seen, bands);
  return into < (window.steps + round) / 2 ? bands - 1 : 0;
}

function kindBetween(came: Way, goes: Way): KnotKind {
  if (came === 1) return goes === 1 ? 'forward' : 'forward-backward';
  return goes === -1 ? 'backward' : 'backward-forward';
}
