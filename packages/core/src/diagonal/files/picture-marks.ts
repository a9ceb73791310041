import type { ChartColour } from '../../chart/chart.js';
import { GIVEN_KEYS, type Legend } from '../../chart/legend.js';
import { quotedCharacter } from '../../document/quote.js';
import { InputError, type Place } from '../../errors.js';
import { ANY_COLOUR, BARE, type DiagonalPicture } from '../picture.js';
import { BARE_MARK, type RowMarks } from './lattice-rows.js';

const ANY_MARK = '?';
const TAKEN = [ANY_MARK, BARE_MARK];

/** The marks of a picture: the keys of its colours, `?` for any colour, `.` for no knot. */
export function pictureMarks(legend: Legend, place: Place): RowMarks {
  for (const key of TAKEN) {
    if (!legend.placeOf.has(key.charCodeAt(0))) continue;
    throw new InputError(
      'key-taken',
      `The key ${quotedCharacter(key)} has a meaning of its own here.`,
      place,
      '? is a knot of any colour, . a place without a knot; give the colour another key.',
    );
  }
  const entryOf = new Map(legend.placeOf);
  entryOf.set(ANY_MARK.charCodeAt(0), ANY_COLOUR);
  entryOf.set(BARE_MARK.charCodeAt(0), BARE);
  return {
    entryOf,
    remedy: 'Add it to the legend, or write ? for any colour and . for no knot.',
  };
}

export function pictureMark({ colours }: DiagonalPicture): (entry: number) => string {
  return (entry) => (entry === ANY_COLOUR ? ANY_MARK : (colours[entry]?.key ?? BARE_MARK));
}

/** The picture with keys that have no other meaning in its file. */
export function withFreeKeys(picture: DiagonalPicture): DiagonalPicture {
  if (!picture.colours.some(({ key }) => TAKEN.includes(key))) return picture;
  const used = new Set(picture.colours.map(({ key }) => key));
  const free = [...GIVEN_KEYS].filter((key) => !used.has(key));
  const colours = picture.colours.map(
    (colour): ChartColour =>
      TAKEN.includes(colour.key) ? { ...colour, key: free.shift() ?? colour.key } : colour,
  );
  return { ...picture, colours };
}
