import { InputError } from '../../errors.js';
import { CHART_LIMITS, type ChartColour } from '../chart.js';
import { nameColours } from '../colour-names.js';
import { GIVEN_KEYS } from '../legend.js';

/**
 * The colours of a picture in the order in which they first appear, and each pixel's place in
 * them.
 *
 * @param rgb 0xrrggbb of each pixel, row by row
 */
export function collectColours(
  rgb: Uint32Array,
  width: number,
): { colours: ChartColour[]; cells: Uint8Array } {
  const cells = new Uint8Array(rgb.length);
  const places = new Map<number, number>();
  let last = -1;
  let place = 0;
  for (let i = 0; i < rgb.length; i++) {
    const colour = rgb[i] as number;
    if (colour !== last) {
      const known = places.get(colour);
      if (known === undefined && places.size === CHART_LIMITS.maxColours) tooMany(rgb, width, i);
      place = known ?? places.size;
      places.set(colour, place);
      last = colour;
    }
    cells[i] = place;
  }
  const hexes = [...places.keys()].map((colour) => `#${colour.toString(16).padStart(6, '0')}`);
  const names = nameColours(hexes);
  const colours = hexes.map((hex, i) => ({
    key: GIVEN_KEYS[i] as string,
    hex,
    name: names[i] as string,
  }));
  return { colours, cells };
}

function tooMany(rgb: Uint32Array, width: number, at: number): never {
  // A bit for each of the 16.8 million colours.
  const seen = new Uint8Array(2 ** 21);
  let count = 0;
  for (const colour of rgb) {
    const bit = 1 << (colour & 7);
    if (((seen[colour >> 3] as number) & bit) !== 0) continue;
    seen[colour >> 3] = (seen[colour >> 3] as number) | bit;
    count++;
  }
  throw new InputError(
    'too-many-colours',
    `The picture has ${count} colours; a chart can have at most ${CHART_LIMITS.maxColours}. This pixel is the first of colour ${CHART_LIMITS.maxColours + 1}.`,
    { row: Math.floor(at / width) + 1, column: (at % width) + 1 },
    'Soft edges from smoothing or from a photograph make many shades: reduce the palette in a picture editor, draw with a hard pencil, and scale without smoothing.',
  );
}
