import { type SwatchCheck, type SwatchSide, WRIST_SIZES } from '@halfhitch/geometry/thread';
import { counted } from '../view/figures.js';
import type { BandFit } from './fit.js';
import { millimetres, percent, plusMinus } from './in-words.js';
import type { CutSheet } from './sheet.js';

/** The least of the sizes that are listed, a small child's, mm. */
const SMALLEST_WRIST = Math.min(...WRIST_SIZES.map(({ wrist }) => wrist));

/** How the piece goes round a wrist and what its closing takes, in whole sentences. */
export function fitInWords(fit: BandFit, { size, uncertainty }: CutSheet): string[] {
  const { closing, ease, goesRound, tails } = fit;
  const told: string[] = [];
  const off = plusMinus(size.length * uncertainty);
  if (goesRound === null || goesRound < SMALLEST_WRIST * (1 - uncertainty)) {
    told.push(
      `The knotted part is ${millimetres(size.length)} ${off} long: too short to go round a wrist and close. Have it knotted again and again under “Length”, or draw more rows, for a bracelet.`,
    );
  } else {
    told.push(
      `It goes round a wrist of ${millimetres(goesRound)} ${off}, with ${millimetres(ease)} of ease.`,
    );
  }
  switch (closing.how) {
    case 'meet':
      break;
    case 'ties':
      told.push(
        `Plait the tails at each end for ${millimetres(closing.plait)} and knot the plaits at their ends. Tied to each other they fill ${millimetres(closing.gap)}, so the knotted part is so much shorter.`,
      );
      break;
    case 'loop':
      told.push(
        `At the beginning plait the tails for ${millimetres(2 * closing.loop)}, fold the plait back and bind it down: a loop ${millimetres(closing.loop)} long, by which the knotted part is shorter. At the end make plaits of ${millimetres(closing.plait)}, to go through the loop and be tied.`,
      );
      break;
    case 'buckle':
      told.push(
        `Turn ${millimetres(closing.turnOver)}, which is ${counted(fit.rowsTurned ?? 0, 'row')}, over the bar and sew it down. ${millimetres(closing.overlap)} go through the buckle and lie double. Both are counted in the knotted part; the ${millimetres(closing.buckle)} that the buckle itself fills are not.`,
      );
      told.push(...buckleInWords(fit, size.width, uncertainty));
  }
  const needed = Math.max(fit.tailsNeeded.first, fit.tailsNeeded.last);
  if (needed > 0) {
    told.push(
      `That takes tails of ${millimetres(fit.tailsNeeded.first)} at the beginning and ${millimetres(fit.tailsNeeded.last)} at the end; the list has ${millimetres(tails)} at both.`,
    );
  }
  return told;
}

function buckleInWords({ buckleWidth }: BandFit, width: number, uncertainty: number): string[] {
  if (buckleWidth === null || width * (1 + uncertainty) <= buckleWidth) return [];
  const band = `The band is ${millimetres(width)} ${plusMinus(width * uncertainty)} wide and the buckle takes ${millimetres(buckleWidth)}`;
  return width > buckleWidth
    ? [`${band}: it will not go through. Take a wider buckle, or fewer columns.`]
    : [`${band}: it may not go through. Knot a swatch, or take a wider buckle.`];
}

/** What a swatch says of the thread and the hand, in whole sentences. */
export function swatchMeaning({ width, length }: SwatchCheck): string {
  if (width.within && length.within) {
    return 'Both are as near as can be expected. The list goes by the swatch all the same.';
  }
  const [across, along] = [width.difference, length.difference];
  if (Math.abs(across - along) <= ALIKE) {
    return across > 0
      ? 'Both are larger by about the same: the thread is thicker than was given, or the hitches are looser. The list goes by the swatch.'
      : 'Both are smaller by about the same: the thread is finer than was given, or the hitches are tighter. The list goes by the swatch.';
  }
  return along > across
    ? 'It is longer for its width than such knots are: rows that are not pushed up close, or a swatch that was stretched in measuring. The list goes by the swatch; measure it lying loose to be sure.'
    : 'It is wider for its length than such knots are: rows that are pushed up hard, or knots not drawn close to each other. The list goes by the swatch.';
}

/** Shares that differ by no more than this are about the same: a reading of the rule. */
const ALIKE = 0.05;

export function differenceInWords({ difference }: SwatchSide): string {
  if (Math.abs(difference) < 0.0005) return 'none';
  return `${percent(Math.abs(difference), 1)} ${difference > 0 ? 'more' : 'less'}`;
}
