import {
  CHART_LIMITS,
  type Chart,
  type ChartColour,
  GIVEN_KEYS,
  InputError,
  nameColours,
} from '@halfhitch/core';
import { LARGE } from './alphabet/large.js';
import { MEDIUM } from './alphabet/medium.js';
import type { Alphabet } from './alphabet/read-alphabet.js';
import { SMALL } from './alphabet/small.js';
import { BORDER_COLOUR, borderDepth, drawBorder } from './border.js';
import { Ink } from './ink.js';
import { type SetText, setText, TEXT_COLOUR, usualGaps } from './set-text.js';
import { LETTERING_LIMITS, type LetteringOptions, type LetterSize } from './settings.js';

export const ALPHABETS: Readonly<Record<LetterSize, Alphabet>> = {
  small: SMALL,
  medium: MEDIUM,
  large: LARGE,
};

/**
 * A chart with words on it.
 *
 * @throws InputError when a character is not drawn, a figure is outside its limits, or the text
 * does not fit the wanted size or the limits of a chart
 */
export function letter(text: string, options: LetteringOptions): Chart {
  checkFigures(options);
  const alphabet = ALPHABETS[options.size];
  const usual = usualGaps(alphabet);
  const gaps = {
    letter: options.letterGap ?? usual.letter,
    word: options.wordGap ?? usual.word,
    line: options.lineGap ?? usual.line,
  };
  const set = setText(text, alphabet, gaps, options.align);
  const repeated = repeat(set.ink, options);
  const page = layOut(repeated, set, options);
  const turned = options.direction === 'across' ? page : page.turned(options.direction);
  return { name: nameOf(set.lines), ...chartOf(turned, options) };
}

function checkFigures(options: LetteringOptions): void {
  const { maxGap, maxTimes } = LETTERING_LIMITS;
  const figures: readonly [string, number | null, number, number][] = [
    ['gap between letters', options.letterGap, 0, maxGap],
    ['gap between words', options.wordGap, 0, maxGap],
    ['gap between lines', options.lineGap, 0, maxGap],
    ['gap between one time and the next', options.timesGap, 0, maxGap],
    ['margin', options.margin, 0, maxGap],
    ['number of times', options.times, 1, maxTimes],
    ['width', options.columns, CHART_LIMITS.minColumns, CHART_LIMITS.maxColumns],
    ['length', options.rows, CHART_LIMITS.minRows, CHART_LIMITS.maxRows],
  ];
  for (const [name, figure, least, most] of figures) {
    if (figure === null || (Number.isInteger(figure) && figure >= least && figure <= most))
      continue;
    throw new InputError(
      'lettering-figure',
      `The ${name} cannot be ${figure}.`,
      {},
      `Give a whole number from ${least} to ${most}.`,
    );
  }
}

/** One after another down the bracelet: below each other, or on along the line of reading. */
function repeat(ink: Ink, { times, timesGap, direction }: LetteringOptions): Ink {
  if (times === 1) return ink;
  const along = direction !== 'across';
  const length = (along ? ink.width : ink.height) + timesGap;
  const whole = times * length - timesGap;
  if (whole > CHART_LIMITS.maxRows) {
    throw tooLong(whole, 'Have it fewer times, or take smaller letters.');
  }
  const all = along ? new Ink(whole, ink.height) : new Ink(ink.width, whole);
  for (let i = 0; i < times; i++) all.stamp(ink, along ? i * length : 0, along ? 0 : i * length);
  return all;
}

/** Margins, border and padding, as the text is read: not turned yet. */
function layOut(ink: Ink, set: SetText, options: LetteringOptions): Ink {
  const { margin, border, borderSides, align, direction } = options;
  const depth = borderDepth(border);
  const frame = depth === 0 ? margin : depth + margin;
  // Beside the text there is a border only where it goes all the way round.
  const beside = borderSides === 'round' ? frame : margin;
  const least = { width: ink.width + 2 * beside, height: ink.height + 2 * frame };
  const across = direction === 'across';
  const wanted = across
    ? { width: options.columns, height: options.rows }
    : { width: options.rows, height: options.columns };
  const width = wanted.width ?? least.width;
  const height = wanted.height ?? least.height;
  if (width < least.width || height < least.height) {
    throw doesNotFit({ least, wanted: { width, height }, set, options });
  }
  const columns = across ? width : height;
  const rows = across ? height : width;
  if (columns > CHART_LIMITS.maxColumns) {
    const line = longest(set);
    throw new InputError(
      'lettering-too-wide',
      `The text takes ${columns} columns; a chart has at most ${CHART_LIMITS.maxColumns}.`,
      across ? { line: line + 1 } : {},
      across
        ? 'Break the line, take smaller letters, or turn the text along the bracelet.'
        : 'Write fewer lines, or take smaller letters.',
    );
  }
  if (rows > CHART_LIMITS.maxRows) {
    throw tooLong(rows, 'Write less, or take smaller letters.');
  }
  const page = new Ink(width, height);
  drawBorder(page, border, borderSides);
  const room = width - least.width;
  const left = { start: 0, middle: Math.floor(room / 2), end: room }[align];
  page.stamp(ink, beside + left, frame + Math.floor((height - least.height) / 2));
  return page;
}

function longest({ widths }: SetText): number {
  return widths.indexOf(Math.max(...widths));
}

function tooLong(rows: number, remedy: string): InputError {
  return new InputError(
    'lettering-too-long',
    `The text takes ${rows} rows; a chart has at most ${CHART_LIMITS.maxRows}.`,
    {},
    remedy,
  );
}

interface Misfit {
  readonly least: { readonly width: number; readonly height: number };
  readonly wanted: { readonly width: number; readonly height: number };
  readonly set: SetText;
  readonly options: LetteringOptions;
}

function doesNotFit({ least, wanted, set, options }: Misfit): InputError {
  const across = options.direction === 'across';
  const wide = wanted.width < least.width;
  // Which of the chart's sizes is too small, as the maker sees it.
  const inColumns = wide === across;
  const needed = wide ? least.width : least.height;
  const given = wide ? wanted.width : wanted.height;
  const unit = inColumns ? 'columns' : 'rows';
  return new InputError(
    'lettering-does-not-fit',
    `With its margins and border the text takes ${needed} ${unit}, but ${given} are wanted.`,
    wide ? { line: longest(set) + 1 } : {},
    `Give it ${needed} ${unit}, take smaller letters or less margin${wide && across ? ', break the line, or turn the text along the bracelet' : ''}.`,
  );
}

/** Ground first; colours that are the same thread are one colour of the chart. */
function chartOf(ink: Ink, { text, ground, borderColour }: LetteringOptions): Omit<Chart, 'name'> {
  const wanted = [ground, text, borderColour];
  const used = new Set(ink.cells);
  const places: number[] = [];
  const threads: typeof wanted = [];
  for (const at of [0, TEXT_COLOUR, BORDER_COLOUR]) {
    const thread = wanted[at] as (typeof wanted)[number];
    if (!used.has(at)) continue;
    const same = threads.findIndex(({ hex }) => hex === thread.hex);
    places[at] = same >= 0 ? same : threads.push(thread) - 1;
  }
  const given = nameColours(threads.map(({ hex }) => hex));
  const colours = threads.map(
    ({ hex, name }, i): ChartColour => ({
      key: GIVEN_KEYS[i] as string,
      hex,
      name: name || (given[i] as string),
    }),
  );
  return {
    rows: ink.height,
    columns: ink.width,
    colours,
    cells: ink.cells.map((at) => places[at] as number),
  };
}

function nameOf(lines: readonly string[]): string {
  const words = lines.join(' ').replace(/\s+/g, ' ').trim();
  return [...words].slice(0, CHART_LIMITS.maxName).join('');
}
