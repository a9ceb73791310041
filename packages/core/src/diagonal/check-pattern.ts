import { checkCount } from '../chart/check-chart.js';
import { InputError } from '../errors.js';
import { KNOT_KINDS } from '../model/knot.js';
import { DIAGONAL_LIMITS, knotsAcross, knotsInRow } from './lattice.js';
import { type DiagonalPattern, NO_KNOT } from './pattern.js';

/**
 * Patterns from files are within the limits; one that another program has put together may be
 * anything.
 *
 * @throws InputError when a pattern is outside the limits, or its arrays do not fit its lattice
 */
export function checkDiagonalPattern(pattern: DiagonalPattern): void {
  const { strings, rows, first, colours, start, knots } = pattern;
  const { minStrings, maxStrings, minRows, maxRows, maxColours } = DIAGONAL_LIMITS;
  checkCount('strings', strings, minStrings, maxStrings);
  checkCount('rows', rows, minRows, maxRows);
  checkCount('slots before the first knot', first, 0, 1);
  checkCount('colours', colours.length, 1, maxColours);
  if (start.length !== strings || start.some((colour) => colour >= colours.length)) {
    throw new InputError(
      'start-size',
      `The strings hang in ${start.length} colours, or in colours that the legend does not have.`,
      {},
      `Give each of the ${strings} strings a colour from 0 to ${colours.length - 1}.`,
    );
  }
  const across = knotsAcross(pattern);
  if (knots.length !== rows * across) {
    throw new InputError(
      'knots-size',
      `The pattern has ${knots.length} places for knots; its lattice asks for ${rows * across}.`,
      {},
      'Give one for each place, row by row.',
    );
  }
  for (let row = 0; row < rows; row++) {
    const count = knotsInRow(pattern, row);
    for (let place = 0; place < across; place++) {
      const kind = knots[row * across + place] as number;
      if (kind === NO_KNOT || (place < count && kind < KNOT_KINDS.length)) continue;
      throw new InputError(
        place < count ? 'unknown-kind' : 'knot-outside',
        place < count
          ? `Kind ${kind} stands for no knot.`
          : 'There is a knot where the row has no place for one.',
        { row: row + 1, column: place + 1 },
        `Kinds go from 0 to ${KNOT_KINDS.length - 1}; ${NO_KNOT} is no knot.`,
      );
    }
  }
}
