import type { ChartNotice } from '../../chart/chart.js';
import { collectColours } from '../../chart/png/colours.js';
import { readPng } from '../../chart/png.js';
import { InputError } from '../../errors.js';
import { DIAGONAL_LIMITS, firstSlotOf, knotsAcross, knotsInRow } from '../lattice.js';
import { ANY_COLOUR, BARE, type DiagonalPicture } from '../picture.js';

/** A pixel that is less solid than this may be any colour. */
const SOLID = 128;

/**
 * Reads a wanted picture from a PNG: a row of pixels for each row of knots, and a pixel for each gap
 * between two strings, so one less than there are strings. Each row has knots in every second gap; the
 * first row in the first gap, the second row in the second, and so on. The pixels between knots are
 * not looked at, so that any picture can be taken. See-through pixels may be any colour.
 *
 * @param bytes at most 16 MiB of them
 * @throws InputError when it is no such picture, is damaged, or exceeds the limits
 */
export function readPngPicture(bytes: Uint8Array): {
  picture: DiagonalPicture;
  notices: readonly ChartNotice[];
} {
  const { width, height, rgb, alpha, notices } = readPng(bytes);
  const strings = width + 1;
  if (strings > DIAGONAL_LIMITS.maxStrings) {
    throw new InputError(
      'too-many-strings',
      `The picture is ${width} pixels wide, for ${strings} strings.`,
      {},
      `A diagonal pattern has at most ${DIAGONAL_LIMITS.maxStrings} strings; a long band is drawn with its length down the page.`,
    );
  }
  const lattice = { strings, rows: height, first: 0 } as const;
  const isWanted = (row: number, gap: number): boolean =>
    (gap - firstSlotOf(lattice, row)) % 2 === 0 &&
    (alpha === null || (alpha[row * width + gap] as number) >= SOLID);
  const firstWanted = rgb.findIndex((_, i) => isWanted(Math.floor(i / width), i % width));
  if (firstWanted < 0) {
    throw new InputError(
      'no-colours',
      'Every pixel that stands for a knot is see-through.',
      {},
      'Draw at least one knot.',
    );
  }
  // What is not looked at takes the colour before it, so that it adds none.
  const looked = rgb.slice();
  let last = rgb[firstWanted] as number;
  for (let i = 0; i < looked.length; i++) {
    if (isWanted(Math.floor(i / width), i % width)) last = looked[i] as number;
    else looked[i] = last;
  }
  const { colours, cells: pixels } = collectColours(looked, width);
  const across = knotsAcross(lattice);
  const cells = new Uint8Array(height * across).fill(BARE);
  for (let row = 0; row < height; row++) {
    for (let place = 0; place < knotsInRow(lattice, row); place++) {
      const gap = firstSlotOf(lattice, row) + 2 * place;
      cells[row * across + place] = isWanted(row, gap)
        ? (pixels[row * width + gap] as number)
        : ANY_COLOUR;
    }
  }
  return {
    picture: { name: '', ...lattice, colours, cells },
    notices: notices.map(openPlaces),
  };
}

function openPlaces(notice: ChartNotice): ChartNotice {
  if (notice.code !== 'transparency-flattened') return notice;
  return {
    code: 'transparency-open',
    message:
      'Pixels of the picture are see-through: knots may have any colour there, or, where they are more than half solid, what they look like on white.',
  };
}
