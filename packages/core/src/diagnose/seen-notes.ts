import { CHART_LIMITS } from '../chart/chart.js';
import type { Line } from '../chart/text-lines.js';
import { quoted } from '../document/quote.js';
import { InputError } from '../errors.js';
import { Back, type ColoursOff, Edge, type Seen, Stick } from '../mistakes/seen.js';
import { directionOf, type Plan } from '../plan/plan.js';

/** A line that is a note and no row, legend or mark. */
export const NOTE = /^\s*row\s+\d/i;
const LONGEST_NOTE = 200;

const EDGES: Readonly<Record<string, number>> = {
  straight: Edge.straight,
  'steps out': Edge.out,
  'pulls in': Edge.in,
};

/** One thing noted of a row; rows and columns from 0. */
export type Note = { readonly line: number; readonly row: number } & (
  | { readonly of: 'edge'; readonly side: 0 | 1; readonly edge: number }
  | { readonly of: 'knots'; readonly knots: number }
  | { readonly of: 'stick'; readonly side: 0 | 1 }
  | { readonly of: 'loop'; readonly column: number }
  | { readonly of: 'off'; readonly towards: 'left' | 'right' | null }
);

/**
 * Rows that must be knotted for a note to be made. How an edge turns out at the end of a row is
 * seen when the next one has begun.
 */
export function rowsNoted(note: Note, plan: Plan): number {
  const end = directionOf(plan.start, note.row) === 'right' ? 1 : 0;
  const turned = note.of === 'edge' && note.side === end && note.row + 1 < plan.rows;
  return note.row + (turned ? 2 : 1);
}

const SIDE = '(?<side>left|right)';
const FORMS = [
  new RegExp(`^${SIDE} edge (?<edge>straight|steps out|pulls in)$`),
  /^knots (?<knots>\d{1,4})$/,
  new RegExp(`^lead sticks out ${SIDE}$`),
  /^column (?<column>\d{1,4}) loop$/,
  /^colours off(?: (?<towards>left|right))?$/,
];

/** @throws InputError when a line is no note */
export function readNote(line: Line): Note {
  const text = line.text
    .slice(0, LONGEST_NOTE + 1)
    .trim()
    .toLowerCase()
    .replace(/\s+/g, ' ');
  const found = /^row (?<row>\d{1,5}) (?<rest>.*)$/.exec(text)?.groups;
  const row = Number(found?.['row']) - 1;
  const rest = found?.['rest'] ?? '';
  if (text.length > LONGEST_NOTE || !(row >= 0 && row < CHART_LIMITS.maxRows)) refuse(line);
  const at = { line: line.number, row };
  const [edge, knots, stick, loop, off] = FORMS.map((form) => form.exec(rest));
  const sideOf = (match: RegExpExecArray): 0 | 1 => (match.groups?.['side'] === 'left' ? 0 : 1);
  if (edge) {
    return {
      ...at,
      of: 'edge',
      side: sideOf(edge),
      edge: EDGES[edge.groups?.['edge'] ?? ''] as number,
    };
  }
  if (knots) return { ...at, of: 'knots', knots: Number(knots.groups?.['knots']) };
  if (stick) return { ...at, of: 'stick', side: sideOf(stick) };
  if (loop) return { ...at, of: 'loop', column: Number(loop.groups?.['column']) - 1 };
  if (off) {
    const towards = off.groups?.['towards'];
    return {
      ...at,
      of: 'off',
      towards: towards === 'left' || towards === 'right' ? towards : null,
    };
  }
  return refuse(line);
}

/** The piece as seen, with what was noted. */
export function takeDown(notes: readonly Note[], seen: Seen): Seen {
  const off: ColoursOff[] = [];
  for (const note of notes) {
    const { row } = note;
    switch (note.of) {
      case 'edge':
        seen.edges[2 * row + note.side] = note.edge;
        break;
      case 'knots':
        seen.knots[row] = note.knots;
        break;
      case 'stick':
        seen.sticks[2 * row + note.side] = Stick.yes;
        break;
      case 'loop':
        if (note.column < 0 || note.column >= seen.columns) {
          throw new InputError(
            'column-outside',
            `There is no column ${note.column + 1}.`,
            { line: note.line },
            `Choose a column from 1 to ${seen.columns}.`,
          );
        }
        seen.backs[row * seen.columns + note.column] = Back.loop;
        break;
      case 'off':
        off.push({ row, towards: note.towards });
    }
  }
  return { ...seen, off };
}

function refuse(line: Line): never {
  throw new InputError(
    'bad-note',
    `${quoted(line.text)} is no note.`,
    { line: line.number },
    'Notes are such as "row 5 right edge steps out" (or "pulls in", "straight"), "row 5 knots 13", "row 5 lead sticks out left", "row 5 column 3 loop" and "row 5 colours off left".',
  );
}
