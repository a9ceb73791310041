import { NO_KNOT } from '../diagonal/pattern.js';
import { BARE } from '../diagonal/picture.js';
import { type Comparison, lookOf } from './comparison.js';
import type { DiagonalMistake } from './mistake.js';
import { knotPiece, type PieceRow, soundPiece, withMistake } from './piece.js';

/** Where to look next so as to tell explanations apart that look alike so far. */
export type DiagonalQuestion = {
  /** By what is seen there, which of the alternatives remain, by their places in the list. */
  readonly answers: readonly { readonly seen: number; readonly alternatives: readonly number[] }[];
} & (
  | {
      /** The colour of a knot, an index into the pattern's colours or BARE; or its look. */
      readonly of: 'colour' | 'look';
      readonly row: number;
      readonly place: number;
    }
  | {
      /** The colour of the string that hangs in a slot below the work. */
      readonly of: 'hanging';
      readonly slot: number;
    }
);

/** Alternatives that are compared; there are seldom more, and likelier ones come first. */
const MOST = 48;

/**
 * The one thing not yet looked at that parts the alternatives best; null when nothing does.
 *
 * @param weights how likely each alternative is
 */
export function tellApart(
  comparison: Comparison,
  pattern: Parameters<typeof soundPiece>[0],
  alternatives: readonly (readonly DiagonalMistake[])[],
  weights: readonly number[],
): DiagonalQuestion | null {
  const some = alternatives.slice(0, MOST);
  if (some.length < 2) return null;
  const { rows, across, strings } = comparison;
  const sound = soundPiece(pattern);
  const knotted = some.map((mistakes) => knotPiece(mistakes.reduce(withMistake, sound), rows));
  let best: DiagonalQuestion | null = null;
  // What remains on average is a sum of squares; less is better, and a colour is easier to see.
  let least = weights.slice(0, some.length).reduce((sum, one) => sum + one, 0) ** 2 * 0.98;
  const consider = (values: readonly number[], question: () => Asked, handicap: number): void => {
    const sums = new Map<number, number>();
    for (const [at, value] of values.entries()) {
      sums.set(value, (sums.get(value) ?? 0) + (weights[at] ?? 0));
    }
    if (sums.size < 2) return;
    let remains = handicap;
    for (const sum of sums.values()) remains += sum * sum;
    if (remains >= least) return;
    least = remains;
    const answers = [...sums.keys()].map((seen) => ({
      seen,
      alternatives: [...values.keys()].filter((at) => values[at] === seen),
    }));
    best = { ...question(), answers };
  };
  const extra = least * 0.001;
  for (let row = 0; row < rows; row++) {
    const its = knotted.map(({ piece }) => piece.rows[row] as PieceRow | undefined);
    for (let place = 0; place < across; place++) {
      if (!comparison.colourSeen(row, place)) {
        const colours = knotted.map(({ cells, piece }) => {
          const colour = cells[row * across + place] ?? BARE;
          return colour === BARE ? BARE : (comparison.alike[colour] ?? piece.start.length);
        });
        consider(colours, () => ({ of: 'colour', row, place }), 0);
      }
      if (comparison.lookSeen(row, place)) continue;
      const looks = its.map((one) => lookOf(one?.knots[place] ?? NO_KNOT));
      consider(looks, () => ({ of: 'look', row, place }), extra);
    }
  }
  for (let slot = 0; slot < strings; slot++) {
    if (comparison.hangingSeen(slot)) continue;
    const colours = knotted.map(({ piece, order, rows: tied }) => {
      const string = order[tied * strings + slot] as number;
      return comparison.alike[piece.start[string] as number] as number;
    });
    consider(colours, () => ({ of: 'hanging', slot }), extra / 2);
  }
  return best;
}

type Asked =
  | { readonly of: 'colour' | 'look'; readonly row: number; readonly place: number }
  | { readonly of: 'hanging'; readonly slot: number };
