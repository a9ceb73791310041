import { readLegendBy, type SettingRule } from '../../chart/text-legend.js';
import type { Line } from '../../chart/text-lines.js';
import { colourLines, nameLines } from '../../chart/text-print.js';
import { InputError } from '../../errors.js';
import { DIAGONAL_LIMITS } from '../lattice.js';
import type { DiagonalPicture } from '../picture.js';
import { blocksOf, lastOf } from './blocks.js';
import { marksInRow, printLatticeRows, readLatticeRows } from './lattice-rows.js';
import { pictureMark, pictureMarks, withFreeKeys } from './picture-marks.js';

const { minStrings, maxStrings } = DIAGONAL_LIMITS;
const RULES = new Map<string, SettingRule>([
  ['picture', ['diagonal']],
  ['name', 'name'],
  ['first', ['1', '2']],
  ['strings', { least: minStrings, most: maxStrings }],
]);

/**
 * Reads the picture wanted of a diagonal pattern as text: a legend with the line `picture diagonal`,
 * a blank line, and the rows from the top, one character for each place: a colour's key, `?` for any
 * colour, `.` for no knot.
 *
 * @param text at most 32 MiB of it
 * @throws InputError with line and column
 */
export function readDiagonalPictureText(text: string): DiagonalPicture {
  const [head, lines] = blocksOf(text, 2);
  const { legend, settings } = readLegendBy(RULES, head);
  const top = { line: head[0].number };
  if (!settings.has('picture')) {
    throw new InputError(
      'not-diagonal',
      'The legend does not say that this is a picture wanted of a diagonal pattern.',
      top,
      'Add the line "picture diagonal".',
    );
  }
  if (lines === undefined) {
    throw new InputError(
      'no-rows',
      'There are no rows after the legend.',
      { line: lastOf(head).number },
      'Leave one line blank after the legend, then write one line for each row.',
    );
  }
  const rows = lines.map((line) => line.text);
  const first = settings.get('first') === '2' ? 1 : 0;
  const given = settings.get('strings');
  const strings = given === undefined ? stringsFor(rows, first, lines) : Number(given);
  const lattice = { strings, rows: rows.length, first } as const;
  const cells = readLatticeRows(rows, lattice, pictureMarks(legend, top), (row, _, character) => ({
    line: (lines[row] as Line).number,
    column: character + 1,
  }));
  return { name: settings.get('name') ?? '', ...lattice, colours: legend.colours, cells };
}

/**
 * How many strings a picture is for that does not say so. Two rows have a place less than there are
 * strings between them; a single one is taken to be for the fewest strings.
 */
function stringsFor(rows: readonly string[], first: 0 | 1, lines: readonly Line[]): number {
  const [top = 0, next] = rows.slice(0, 2).map((row) => marksInRow(row, maxStrings));
  const strings = next === undefined ? 2 * top + first : top + next + 1;
  if (strings >= minStrings && strings <= maxStrings) return strings;
  throw new InputError(
    strings > maxStrings ? 'too-many-strings' : 'too-few-strings',
    `The first rows are for ${strings > maxStrings ? `more than ${maxStrings}` : strings} strings.`,
    { line: (lines[0] as Line).number },
    `A diagonal pattern has ${minStrings} to ${maxStrings} strings.`,
  );
}

/**
 * Prints a wanted picture as text, its rows in brick position. A colour whose key is `?` or `.` gets
 * another one.
 */
export function printDiagonalPicture(picture: DiagonalPicture): string {
  const printed = withFreeKeys(picture);
  const { name, first, strings, colours, cells } = printed;
  const lines = ['picture diagonal', ...nameLines(name), `strings ${strings}`];
  if (first === 1) lines.push('first 2');
  lines.push(...colourLines(colours), '');
  lines.push(...printLatticeRows(printed, cells, pictureMark(printed)));
  return `${lines.join('\n')}\n`;
}
