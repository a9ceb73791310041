import type { ChartColour } from '../../chart/chart.js';
import { InputError } from '../../errors.js';
import { DIAGONAL_LIMITS } from '../lattice.js';

/** How a known piece is made: its rule does the rest. */
export interface PieceOptions {
  /** How many strings hang: 3 to 300. */
  readonly strings: number;
  /** One to as many colours as the piece has strings to show them, in the order they follow. */
  readonly colours: readonly ChartColour[];
  /** Rows to knot. Default: one repeat, after which the strings hang as at the start. */
  readonly rows?: number;
  /** What the piece is called. Default: a name from our rowing club. */
  readonly name?: string;
}

/** With fewer strings no shape can be told. */
export const FEWEST_STRINGS = 3;

/**
 * Checks the options of a piece.
 *
 * @param shown how many strings can show different colours
 * @throws InputError when the piece cannot be made so
 */
export function checkOptions({ strings, colours, rows }: PieceOptions, shown: number): void {
  const { maxStrings, maxRows, maxColours } = DIAGONAL_LIMITS;
  whole('strings', strings, FEWEST_STRINGS, maxStrings);
  if (rows !== undefined) whole('rows', rows, 1, maxRows);
  whole('colours', colours.length, 1, Math.min(shown, maxColours));
}

/** Checks that a piece is made with a whole number of something. */
export function whole(what: string, given: number, least: number, most: number): void {
  if (Number.isInteger(given) && given >= least && given <= most) return;
  throw new InputError(
    `bad-${what}`,
    `The piece cannot be made with ${Number.isFinite(given) ? given : 'so many'} ${what}.`,
    {},
    `Choose a whole number of ${what} from ${least} to ${most}.`,
  );
}
