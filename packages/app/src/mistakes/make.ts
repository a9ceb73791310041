import {
  type Chart,
  colourInWords,
  directionOf,
  type Finding,
  isOfTurn,
  KNOT_KINDS,
  Look,
  type Mistake,
  type MistakeWords,
  makeMistakes,
  type Plan,
  type Seen,
  type Undo,
  type Verification,
  verifyPlan,
  type Written,
} from '@halfhitch/core';
import type { Tile } from '../work/fabric-tile.js';
import type { KnotPair, KnotTied, MistakenView, MistakePlace } from './messages.js';
import { differsAt, observedInWords } from './observed.js';
import { drawSeen, type Slip } from './picture.js';

/** Rows and columns in a picture: few enough that single knots can be told apart. */
const ABOVE = 2;
const BELOW = 6;
const ACROSS = 30;
const MOST_FINDINGS = 6;

/** A piece with all that comparing a mistaken one with it takes. */
export interface Sound {
  readonly chart: Chart;
  readonly plan: Plan;
  readonly written: Written;
  readonly words: MistakeWords;
  readonly verification: Verification;
  readonly seen: Seen;
}

/** Knots the piece with these mistakes, and shows it around the first of them. */
export function viewMistakes(
  sound: Sound,
  mistakes: readonly Mistake[],
  undo: Undo | null,
): MistakenView {
  const { chart, plan, written, words } = sound;
  const made = makeMistakes(plan, mistakes);
  const verification = verifyUpTo(made.plan, chart);
  const first = mistakes.reduce((one, other) => (other.row < one.row ? other : one));
  const [start] = slipsOf(plan, first, made.seen.rows) as [MistakePlace, ...MistakePlace[]];
  const tile = tileAround(start, made.seen.rows, plan.columns);
  const drawnTile = {
    ...tile,
    firstRow: Math.min(tile.firstRow, plan.rows - 1),
    endRow: Math.min(tile.endRow, plan.rows),
  };
  const findings = newFindings(verification.findings, sound.verification.findings);
  const undoTo = undo ?? undoOf(sound, first);
  return {
    what: mistakes.map((mistake) => words.what(mistake, mistakes)),
    rows: { first: tile.firstRow + 1, last: tile.endRow },
    columns: { first: tile.firstColumn + 1, last: tile.endColumn },
    drawn: drawSeen(written, plan, sound.verification, sound.seen, drawnTile, null),
    made: drawSeen(written, made.plan, verification, made.seen, tile, {
      differs: (row, column) => differsAt(made.seen, sound.seen, row, column),
      slips: mistakes.map((mistake) => around(slipsOf(plan, mistake, made.seen.rows))),
    }),
    seen: observedInWords(made.seen, sound.seen),
    findings: findings.slice(0, MOST_FINDINGS).map(findingInWords),
    moreFindings: Math.max(0, findings.length - MOST_FINDINGS),
    undo: words.undo(undoTo),
    goOn:
      undo === null || mistakes.length === 1
        ? words.goOn(first, mistakes)
        : words.goOnFrom(undo, mistakes),
    knot: 'column' in first || isOfTurn(first) ? knotPair(sound, made.seen, start) : null,
    place: {
      row: Math.max(0, Math.min(plan.rows - 1, made.sources[start.row] ?? start.row)),
      column: start.column,
    },
  };
}

/** Judges a piece by as much of the drawing as it has rows for; rows too many are left off. */
function verifyUpTo(plan: Plan, chart: Chart): Verification {
  if (plan.rows === chart.rows) return verifyPlan(plan, chart);
  if (plan.rows < chart.rows) {
    const cells = chart.cells.slice(0, plan.rows * chart.columns);
    return verifyPlan(plan, { ...chart, rows: plan.rows, cells });
  }
  // Nothing is drawn for a last row too many: it is held against the last row of the drawing.
  const cells = new Uint8Array(plan.rows * chart.columns);
  cells.set(chart.cells);
  for (let row = chart.rows; row < plan.rows; row++) {
    cells.set(chart.cells.subarray((chart.rows - 1) * chart.columns), row * chart.columns);
  }
  return verifyPlan(plan, { ...chart, rows: plan.rows, cells });
}

/** The cells in which a mistake was made, the first of them first. */
function slipsOf(plan: Plan, mistake: Mistake, rows: number): MistakePlace[] {
  const row = Math.min(mistake.row, rows - 1);
  const right = directionOf(plan.start, row) === 'right';
  const end = right ? plan.columns - 1 : 0;
  if ('column' in mistake) return [{ row, column: mistake.column }];
  if (isOfTurn(mistake)) {
    return [
      { row, column: end },
      { row: Math.min(rows - 1, row + 1), column: end },
    ];
  }
  const columns = Array.from({ length: plan.columns }, (_, order) =>
    right ? order : plan.columns - 1 - order,
  );
  return columns.map((column) => ({ row, column }));
}

function around(cells: readonly MistakePlace[]): Slip {
  const rows = cells.map(({ row }) => row);
  const columns = cells.map(({ column }) => column);
  return {
    firstRow: Math.min(...rows),
    lastRow: Math.max(...rows),
    firstColumn: Math.min(...columns),
    lastColumn: Math.max(...columns),
  };
}

/** The knot of a cell as it belongs and as it is seen. */
function knotPair(
  { plan, written, seen }: Sound,
  made: Seen,
  { row, column }: MistakePlace,
): KnotPair | null {
  const base = plan.strings[written.baseOf[column] ?? -1];
  const drawn = row < seen.rows ? knotSeen(written, seen, row, column) : '';
  if (base === undefined || typeof drawn === 'string') return null;
  return { row, column, base, drawn, made: knotSeen(written, made, row, column) };
}

function knotSeen(written: Written, seen: Seen, row: number, column: number): KnotTied | string {
  const cell = row * seen.columns + column;
  const look = seen.looks[cell] as number;
  if (look === Look.none) return 'No knot: the bare string.';
  if (look === Look.half) return 'Only a half hitch: it holds nothing and works loose.';
  if (look === Look.two) return 'Two knots on the one string: they crowd each other.';
  const kind = KNOT_KINDS[look - 1];
  const lead = written.plan.strings[written.leadOfColour[seen.cells[cell] as number] ?? -1];
  if (kind === undefined || lead === undefined) return '';
  return { kind, lead: lead.id, colour: lead.colour, name: colourInWords(lead) };
}

function tileAround({ row, column }: MistakePlace, rows: number, columns: number): Tile {
  const firstRow = Math.max(0, Math.min(row - ABOVE, rows - ABOVE - BELOW - 1));
  const firstColumn = Math.max(0, Math.min(column - ACROSS / 2, columns - ACROSS));
  return {
    firstRow,
    endRow: Math.min(rows, firstRow + ABOVE + BELOW + 1),
    firstColumn,
    endColumn: Math.min(columns, firstColumn + ACROSS),
  };
}

/** Where to undo to when the mistake is noticed at the end of its row, or after its turn's row. */
function undoOf({ plan, chart }: Sound, mistake: Mistake): Undo {
  const next = isOfTurn(mistake) ? 1 : 0;
  const { rows: all } = makeMistakes(plan, [mistake], { rows: mistake.row + next + 1 }).plan;
  const noticed = Math.min(all, mistake.row + next + 1);
  const made = makeMistakes(plan, [mistake], { rows: noticed });
  const tied = verifyUpTo(made.plan, chart).knots;
  const fromStart = mistake.kind === 'single-edge-knot' && mistake.lacking === 'start';
  const row = fromStart ? mistake.row + 1 : mistake.row;
  const right = directionOf(plan.start, row) === 'right';
  const last = right ? plan.columns - 1 : 0;
  const column =
    'column' in mistake
      ? mistake.column
      : isOfTurn(mistake) && !fromStart
        ? last
        : plan.columns - 1 - last;
  const order = right ? column : plan.columns - 1 - column;
  const good = row * plan.columns + order + (mistake.kind === 'doubled-knot' ? 1 : 0);
  return { row, column, knots: Math.max(0, tied - good) };
}

function newFindings(made: readonly Finding[], sound: readonly Finding[]): Finding[] {
  const nameOf = ({ code, row, column }: Finding): string => `${code} ${row} ${column}`;
  const known = new Set(sound.map(nameOf));
  const grades = { wrong: 0, weak: 1, note: 2 };
  return made
    .filter((finding) => finding.grade !== 'note' && !known.has(nameOf(finding)))
    .sort(
      (one, other) => (one.row ?? 0) - (other.row ?? 0) || grades[one.grade] - grades[other.grade],
    );
}

/** "Row 3, column 5: ..." */
function findingInWords({ row, column, message, grade }: Finding): string {
  const place =
    row === null ? '' : column === null ? `Row ${row}: ` : `Row ${row}, column ${column}: `;
  return `${grade === 'wrong' ? 'Wrong' : 'Weak'}. ${place}${message}`;
}
