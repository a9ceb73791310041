import { CHART_LIMITS } from '../chart/chart.js';
import { readCells } from '../chart/grid.js';
import { readLegend } from '../chart/text-legend.js';
import { type Line, linesOf } from '../chart/text-lines.js';
import { FILE_LIMITS, sizeInWords } from '../document/limits.js';
import { quotedCharacter } from '../document/quote.js';
import { InputError } from '../errors.js';
import { Look, nothingSeen, type Seen, Sight } from '../mistakes/seen.js';
import type { Plan } from '../plan/plan.js';
import { coloursPlace, leadColours, unknownColour } from './read-seen.js';
import { NOTE, type Note, readNote, rowsNoted, takeDown } from './seen-notes.js';

const NOT_LOOKED_AT = '?';
const BARE = '.';

/** Places in a row of characters that are no colours of the legend. */
const UNKNOWN_PLACE = 127;
const BARE_PLACE = 126;

/** Marks of how a knot looks. */
const LOOKS: ReadonlyMap<number, number> = new Map(
  Object.entries({
    '\\': Look.forward,
    '/': Look.backward,
    '>': Look.forwardBackward,
    '<': Look.backwardForward,
    '-': Look.half,
    '=': Look.two,
    [BARE]: Look.none,
    [NOT_LOOKED_AT]: Look.unknown,
  }).map(([mark, look]) => [mark.charCodeAt(0), look]),
);

interface Blocks {
  readonly legend: readonly Line[] | null;
  readonly rows: readonly Line[];
  readonly looks: readonly Line[] | null;
  readonly notes: readonly Note[];
}

/**
 * Reads rows as they were seen: legend, rows, looks and notes, with blank lines between them; all
 * but notes can be left out, looks only come with rows.
 *
 * @throws InputError with line and column
 */
export function readSeenText(text: string, plan: Plan): Seen {
  if (text.length > FILE_LIMITS.text) {
    throw new InputError(
      'file-too-large',
      `What was seen takes ${sizeInWords(text.length)} to write.`,
      {},
      `It can have at most ${sizeInWords(FILE_LIMITS.text)}: write fewer rows.`,
    );
  }
  const { legend, rows, looks, notes } = blocksOf(text);
  const noted = notes.reduce((most, note) => Math.max(most, rowsNoted(note, plan)), 0);
  const seen = nothingSeen(Math.max(rows.length, noted), plan.columns, leadColours(plan));
  if (legend !== null) readRows(legend, rows, looks, plan, seen);
  return takeDown(notes, seen);
}

function readRows(
  head: readonly Line[],
  rows: readonly Line[],
  looks: readonly Line[] | null,
  plan: Plan,
  seen: Seen,
): void {
  const { legend } = readLegend(head);
  for (const key of [NOT_LOOKED_AT, BARE]) {
    if (!legend.placeOf.has(key.charCodeAt(0))) continue;
    throw new InputError(
      'key-taken',
      `The key ${quotedCharacter(key)} has a meaning of its own here.`,
      { line: (head[0] as Line).number },
      '? is a knot that was not looked at, . a bare string; give the colour another key.',
    );
  }
  const places = legend.colours.map(({ hex, name }) => coloursPlace(plan, hex, name));
  const placeOf = new Map(legend.placeOf);
  placeOf.set(NOT_LOOKED_AT.charCodeAt(0), UNKNOWN_PLACE);
  placeOf.set(BARE.charCodeAt(0), BARE_PLACE);
  const cells = cellsOf(rows, placeOf, plan);
  cells.forEach((place, cell) => {
    if (place === UNKNOWN_PLACE) return;
    const colour = place === BARE_PLACE ? Sight.bare : places[place];
    if (colour === undefined) {
      const line = rows[Math.floor(cell / plan.columns)] as Line;
      unknownColour(plan, legend.colours[place]?.hex ?? '', { line: line.number });
    }
    seen.cells[cell] = colour;
  });
  if (looks === null) return;
  if (looks.length !== rows.length) {
    throw new InputError(
      'marks-uneven',
      `There are ${looks.length} rows of knot marks for ${rows.length} rows of knots.`,
      { line: (looks[0] as Line).number },
      'Give a row of marks for each row, with ? where you did not look.',
    );
  }
  seen.looks.set(cellsOf(looks, LOOKS, plan, readMarks));
}

/** A mark that stands for nothing is none of the legend. */
function readMarks<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof InputError) || error.code !== 'unknown-key') throw error;
    throw new InputError(
      'unknown-mark',
      error.what,
      error.place,
      'The marks are \\ forward, / backward, > forward-backward, < backward-forward, - half a knot, = two knots, . a bare string and ? not looked at.',
    );
  }
}

function cellsOf(
  lines: readonly Line[],
  placeOf: ReadonlyMap<number, number>,
  plan: Plan,
  read = <T>(cells: () => T): T => cells(),
): Uint8Array {
  const locate = (row: number, column?: number) => {
    const line = (lines[row] ?? lines.at(-1)) as Line;
    return column === undefined ? { line: line.number } : { line: line.number, column: column + 1 };
  };
  const { columns, cells } = read(() =>
    readCells(
      lines.map((line) => line.text),
      placeOf,
      locate,
    ),
  );
  if (columns === plan.columns) return cells;
  throw new InputError(
    'other-width',
    `The row has ${columns} ${columns === 1 ? 'knot' : 'knots'}, but the plan is ${plan.columns} wide.`,
    locate(0),
    'Write one character for each base string, with ? where you did not look.',
  );
}

function blocksOf(text: string): Blocks {
  const blocks: Line[][] = [];
  const notes: Note[] = [];
  let open = false;
  let last: Line = { number: 1, text: '' };
  for (const line of linesOf(text)) {
    if (line.text === '') {
      open = false;
      continue;
    }
    last = line;
    if (NOTE.test(line.text)) {
      if (notes.length >= 4 * CHART_LIMITS.maxRows) tooMany(line);
      notes.push(readNote(line));
      continue;
    }
    if (notes.length > 0) {
      throw new InputError(
        'notes-last',
        'Rows come before notes.',
        { line: line.number },
        'Write legend, rows and marks first, then the notes, one a line, such as "row 5 right edge pulls in".',
      );
    }
    if (!open) blocks.push([]);
    open = true;
    const block = blocks.at(-1) as Line[];
    if (block.length === CHART_LIMITS.maxRows || blocks.length > 3) tooMany(line);
    block.push(line);
  }
  const [legend, rows, looks] = blocks;
  if (
    (legend === undefined && notes.length === 0) ||
    (legend !== undefined && rows === undefined)
  ) {
    throw new InputError(
      legend === undefined ? 'empty' : 'no-rows',
      legend === undefined ? 'Nothing was written down.' : 'There are no rows after the legend.',
      { line: last.number },
      'Write a legend such as "b #1f6fb2 lake blue", a blank line, and the rows seen so far.',
    );
  }
  return { legend: legend ?? null, rows: rows ?? [], looks: looks ?? null, notes };
}

function tooMany(line: Line): never {
  throw new InputError(
    'too-many-rows',
    'There are too many lines or blocks.',
    { line: line.number },
    `Write a legend, at most ${CHART_LIMITS.maxRows} rows, their marks, and notes.`,
  );
}
