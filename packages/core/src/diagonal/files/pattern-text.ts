import { readLegendBy, type SettingRule } from '../../chart/text-legend.js';
import type { Line } from '../../chart/text-lines.js';
import { colourLines, nameLines } from '../../chart/text-print.js';
import { InputError } from '../../errors.js';
import type { DiagonalPattern } from '../pattern.js';
import { blocksOf, lastOf } from './blocks.js';
import { KNOT_ROW_MARKS, knotMark, printLatticeRows, readLatticeRows } from './lattice-rows.js';
import { readStart } from './start-colours.js';

const RULES = new Map<string, SettingRule>([
  ['pattern', ['diagonal']],
  ['name', 'name'],
  ['first', ['1', '2']],
]);

/**
 * Reads a diagonal pattern as text: a legend with the line `pattern diagonal`, a blank line, the
 * starting colours of the strings on one line, a blank line, and the rows of knots from the top.
 *
 * @param text at most 32 MiB of it
 * @throws InputError with line and column
 */
export function readDiagonalText(text: string): DiagonalPattern {
  const [head, hung, lines] = blocksOf(text, 3);
  const { legend, settings } = readLegendBy(RULES, head);
  if (!settings.has('pattern')) {
    throw new InputError(
      'not-diagonal',
      'The legend does not say that the pattern is diagonal.',
      { line: head[0].number },
      'Add the line "pattern diagonal".',
    );
  }
  const [colours, more] = hung ?? [];
  if (colours === undefined) throw missing('no-start', 'starting colours', lastOf(head));
  if (more !== undefined) {
    throw new InputError(
      'start-lines',
      'The starting colours have more than one line.',
      { line: more.number },
      'Write them on one line, one key for each string, and leave a blank line before the rows.',
    );
  }
  if (lines === undefined) throw missing('no-rows', 'rows of knots', colours);
  const start = readStart(colours.text, legend.placeOf, (character) => ({
    line: colours.number,
    column: character + 1,
  }));
  const lattice = {
    strings: start.length,
    rows: lines.length,
    first: settings.get('first') === '2' ? 1 : 0,
  } as const;
  const knots = readLatticeRows(
    lines.map((line) => line.text),
    lattice,
    KNOT_ROW_MARKS,
    (row, _, character) => ({ line: (lines[row] as Line).number, column: character + 1 }),
  );
  return { name: settings.get('name') ?? '', ...lattice, colours: legend.colours, start, knots };
}

function missing(code: string, what: string, after: Line): InputError {
  return new InputError(
    code,
    `There are no ${what}.`,
    { line: after.number },
    'After the legend come a blank line, one key for each string on one line, another blank line, and one line for each row of knots.',
  );
}

/**
 * Prints a diagonal pattern as text, its rows in brick position. Reading it gives the same
 * pattern, but for names that hold line breaks, which are printed as blanks.
 */
export function printDiagonalText(pattern: DiagonalPattern): string {
  const { name, first, colours } = pattern;
  const lines = ['pattern diagonal', ...nameLines(name)];
  if (first === 1) lines.push('first 2');
  lines.push(...colourLines(colours), '', startKeys(pattern), '');
  lines.push(...printLatticeRows(pattern, pattern.knots, knotMark));
  return `${lines.join('\n')}\n`;
}

/** The starting colours, one key for each string. */
export function startKeys({ start, colours }: DiagonalPattern): string {
  return Array.from(start, (colour) => colours[colour]?.key ?? '?').join('');
}
