import {
  ANY_COLOUR,
  type ChartColour,
  type ChartNotice,
  type DiagonalPicture,
  type GridOptions,
  InputError,
  pictureFromDrawing,
  printable,
  readDrawnPng,
  readPatternOrPicture,
  simulateDiagonal,
} from '@halfhitch/core';
import { inFile, readChartBytes } from '../files/read-input.js';

export interface WantedOptions {
  readonly strings?: number;
  readonly first?: '1' | '2';
}

export interface WantedReading {
  readonly picture: DiagonalPicture;
  readonly notices: readonly ChartNotice[];
}

/**
 * Reads the picture that is wanted: a PNG or a chart, with a field for each knot; a wanted picture
 * as text or as a document; or a diagonal pattern, for what it shows.
 */
export async function readWanted(file: string, options: WantedOptions): Promise<WantedReading> {
  const bytes = await readChartBytes(file);
  return inFile(file, () => {
    const grid: GridOptions = {
      ...(options.strings === undefined ? {} : { strings: options.strings }),
      ...(options.first === undefined ? {} : { first: options.first === '2' ? 1 : 0 }),
    };
    if (bytes[1] === 0x50 && bytes[2] === 0x4e && bytes[3] === 0x47) {
      return readDrawnPng(bytes, grid);
    }
    const reading = readPatternOrPicture(bytes, '');
    if (reading.kind === 'alpha') {
      return { picture: pictureFromDrawing(reading.chart, grid), notices: reading.notices };
    }
    const picture =
      reading.kind === 'picture' ? reading.picture : simulateDiagonal(reading.pattern).picture;
    checkSame(picture, options);
    return { picture, notices: [] };
  });
}

/** A picture of a diagonal pattern says itself how many strings it is for. */
function checkSame(picture: DiagonalPicture, { strings, first }: WantedOptions): void {
  const own = String(picture.first + 1);
  if ((strings ?? picture.strings) === picture.strings && (first ?? own) === own) return;
  throw new InputError(
    'lattice-differs',
    `The picture is for ${picture.strings} strings, its first knot on slot ${own}.`,
    {},
    'Leave out --strings and --first, which are for drawings on a grid.',
  );
}

/** The colours that keys stand for; `?` for any. */
export function coloursOfKeys(
  colours: readonly ChartColour[],
  keys: readonly string[],
  option: string,
): number[] {
  return keys.map((key) => {
    const colour = colours.findIndex((one) => one.key === key);
    if (colour >= 0) return colour;
    if (key === '?' && option === '--start') return ANY_COLOUR;
    const known = colours.map((one) => `${one.key} ${one.name || one.hex}`).join(', ');
    throw new InputError(
      'unknown-key',
      `${option}: no colour of the picture has the key "${printable(key)}".`,
      {},
      `The keys are: ${known}.`,
    );
  });
}
