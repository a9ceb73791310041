import {
  type Chart,
  type DiagonalPattern,
  drawDiagonal,
  drawFabric,
  InputError,
  knotsInLattice,
  type Plan,
  printChartDocument,
  printDiagonalDocument,
  simulateDiagonal,
  type Verification,
} from '@halfhitch/core';
import { figures } from '../view/figures.js';
import { EMBEDDED_ID, jsonForMarkup } from './embedded.js';

/** Most knots in an exported picture: it then has some ten megabytes, which drawing programs take. */
const MOST_KNOTS_IN_SVG = 100_000;

/**
 * The knotted piece as an SVG picture that holds its chart too, so that it can be opened again.
 *
 * @throws InputError above 100,000 knots
 */
export function svgOfPiece(chart: Chart, plan: Plan, verification: Verification): string {
  checkKnots(chart.rows * chart.columns, 'Export the PNG chart, or a piece with fewer rows.');
  return holding(drawFabric({ plan, verification }), printChartDocument(chart));
}

/** The same of a diagonal pattern. */
export function svgOfPattern(pattern: DiagonalPattern): string {
  checkKnots(knotsInLattice(pattern), 'Export the text pattern, or one with fewer rows.');
  return holding(drawDiagonal(simulateDiagonal(pattern)), printDiagonalDocument(pattern));
}

function checkKnots(knots: number, remedy: string): void {
  if (knots <= MOST_KNOTS_IN_SVG) return;
  throw new InputError(
    'picture-too-large',
    `A picture of ${figures(knots)} knots would be too large for drawing programs; the most is ${figures(MOST_KNOTS_IN_SVG)}.`,
    {},
    remedy,
  );
}

function holding(picture: string, document: string): string {
  const held = `<metadata id="${EMBEDDED_ID}">${jsonForMarkup(document)}</metadata>`;
  return picture.replace('</desc>', () => `</desc>\n${held}`);
}
