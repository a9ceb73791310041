import {
  type Chart,
  drawFabric,
  InputError,
  type Plan,
  printChartDocument,
  type Verification,
} from '@halfhitch/core';
import { EMBEDDED_ID, jsonForMarkup } from './embedded.js';

/** Most knots in an exported picture: it then has some ten megabytes, which drawing programs take. */
export const MOST_KNOTS_IN_SVG = 100_000;

/**
 * The knotted piece as an SVG picture that holds its chart too, so that it can be opened again.
 *
 * @throws InputError above 100,000 knots
 */
export function svgOfPiece(chart: Chart, plan: Plan, verification: Verification): string {
  const knots = chart.rows * chart.columns;
  if (knots > MOST_KNOTS_IN_SVG) {
    throw new InputError(
      'picture-too-large',
      `A picture of ${knots.toLocaleString('en-GB')} knots would be too large for drawing programs; the most is ${MOST_KNOTS_IN_SVG.toLocaleString('en-GB')}.`,
      {},
      'Export the PNG chart, or a piece with fewer rows.',
    );
  }
  const picture = drawFabric({ plan, verification });
  const held = `<metadata id="${EMBEDDED_ID}">${jsonForMarkup(printChartDocument(chart))}</metadata>`;
  return picture.replace('</desc>', () => `</desc>\n${held}`);
}
