import { CHART_LIMITS, type Chart, type ChartColour, InputError } from '@halfhitch/core';
import { colourAdded } from './colours.js';
import { checkSize } from './limits.js';
import { checkName } from './names.js';
import type { Size } from './place.js';

/** What a new chart begins with: the ground first, then what is drawn on it. */
export const FIRST_COLOURS: readonly Pick<ChartColour, 'hex' | 'name'>[] = [
  { hex: '#f4f1e8', name: 'chalk' },
  { hex: '#1f6fb2', name: 'lake blue' },
  { hex: '#d9642a', name: 'buoy orange' },
  { hex: '#3f7d4e', name: 'reed green' },
  { hex: '#4a5560', name: 'slate' },
];

/**
 * A chart all in its first colour.
 *
 * @throws InputError when the size, the name or a colour can't be
 */
export function blankChart(
  name: string,
  { rows, columns }: Size,
  colours: readonly Pick<ChartColour, 'hex' | 'name'>[] = FIRST_COLOURS,
): Chart {
  checkSize({ rows, columns });
  if (colours.length < CHART_LIMITS.minColours) {
    throw new InputError('no-colours', 'There is no colour.', { path: 'colours' }, 'Give one.');
  }
  const cells = new Uint8Array(rows * columns);
  const empty: Chart = { name: checkName(name, 'name'), rows, columns, colours: [], cells };
  return colours.reduce((chart, { hex, name }) => colourAdded(chart, hex, name), empty);
}
