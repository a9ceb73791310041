import {
  ANY_COLOUR,
  BARE,
  CHART_LIMITS,
  type Chart,
  type ChartColour,
  DIAGONAL_LIMITS,
  EDGE_TECHNIQUES,
  KNOT_KINDS,
  knotsAcross,
  NO_KNOT,
  START_SIDES,
} from '@halfhitch/core';
import { settingsFrom } from '../cut/settings.js';
import type { AlphaProject, DiagonalProject, Project } from '../project/project.js';
import {
  bytesIn,
  coloursIn,
  damaged,
  fieldsOf,
  nameIn,
  oneOf,
  stringsIn,
  time,
  whole,
} from './record-fields.js';

/**
 * What records of each kind of project are written as. A number grows when records of the kind can
 * no longer be read by what came before.
 */
const FORMATS = { alpha: 1, diagonal: 2 } as const;

interface HeadOfAnyKind {
  readonly format: number;
  readonly name: string;
  readonly rows: number;
  readonly colours: readonly ChartColour[];
  readonly cut: Project['cut'];
  readonly created: number;
  readonly changed: number;
  /** Grows by one each time it is kept: whoever has seen an earlier one has not seen this. */
  readonly revision: number;
  /** When it was removed; absent of those that were not. */
  readonly removed?: number;
}

export interface AlphaHead extends HeadOfAnyKind {
  readonly kind: 'alpha';
  readonly columns: number;
  readonly edge?: Chart['edge'];
  readonly start?: Chart['start'];
  readonly choice: AlphaProject['choice'];
}

export interface DiagonalHead extends HeadOfAnyKind {
  readonly kind: 'diagonal';
  readonly strings: number;
  readonly first: 0 | 1;
  /** How many knots are tied in it: its lattice may have places without one. */
  readonly knots: number;
}

/** A project as it lies in the storage, but for what is drawn. */
export type ProjectHead = AlphaHead | DiagonalHead;

/** The bytes of what is drawn, by name. */
export type ProjectCells = Readonly<Record<string, Uint8Array>>;

/** Names that they can have. */
export const CELL_NAMES = ['cells', 'knots', 'start', 'wanted'] as const;

export function headOf(project: Project, revision: number): ProjectHead {
  const { cut, created, changed } = project;
  const shared = { cut: { ...cut }, created, changed, revision };
  if (project.kind === 'diagonal') {
    const { name, rows, strings, first, colours, knots } = project.pattern;
    return {
      kind: 'diagonal',
      format: FORMATS.diagonal,
      name,
      rows,
      strings,
      first,
      colours: plainColours(colours),
      knots: knots.reduce((sum, knot) => sum + (knot === NO_KNOT ? 0 : 1), 0),
      ...shared,
    };
  }
  const { chart, choice } = project;
  return {
    kind: 'alpha',
    format: FORMATS.alpha,
    name: chart.name,
    rows: chart.rows,
    columns: chart.columns,
    colours: plainColours(chart.colours),
    ...(chart.edge === undefined ? {} : { edge: chart.edge }),
    ...(chart.start === undefined ? {} : { start: chart.start }),
    choice: { ...choice },
    ...shared,
  };
}

function plainColours(colours: readonly ChartColour[]): ChartColour[] {
  return colours.map(({ key, hex, name }) => ({ key, hex, name }));
}

export function cellsOf(project: Project): ProjectCells {
  // Not views into something larger, all of which would be kept.
  if (project.kind === 'diagonal') {
    const { pattern, wanted } = project;
    return {
      start: pattern.start.slice(),
      knots: pattern.knots.slice(),
      ...(wanted === null ? {} : { wanted: wanted.cells.slice() }),
    };
  }
  const { cells, knots } = project.chart;
  return { cells: cells.slice(), ...(knots === undefined ? {} : { knots: knots.slice() }) };
}

/**
 * The head of a project from whatever lies in the storage. One that names no kind is of the time
 * when there was only alpha work.
 *
 * @throws StoreError `damaged`, with what is wrong
 */
export function readHead(record: unknown): ProjectHead {
  const head = fieldsOf(record, 'The record');
  const { format } = head;
  const kind = head['kind'] === 'diagonal' ? 'diagonal' : 'alpha';
  if (typeof format === 'number' && format > FORMATS[kind]) {
    damaged('It was kept by a later version of Halfhitch. Load the page anew to get that version.');
  }
  if (format !== FORMATS[kind]) damaged('It is not a record of a project.');
  return kind === 'alpha' ? readAlphaHead(head) : readDiagonalHead(head);
}

function readAlphaHead(head: Record<string, unknown>): AlphaHead {
  const choice = fieldsOf(head['choice'], 'How it is knotted');
  const edge = oneOf(head['edge'], [...EDGE_TECHNIQUES, undefined], 'The edge');
  const start = oneOf(head['start'], [...START_SIDES, undefined], 'The start side');
  const { minRows, maxRows, minColumns, maxColumns } = CHART_LIMITS;
  return {
    kind: 'alpha',
    format: FORMATS.alpha,
    rows: whole(head['rows'], minRows, maxRows, 'The number of rows'),
    columns: whole(head['columns'], minColumns, maxColumns, 'The number of columns'),
    ...(edge === undefined ? {} : { edge }),
    ...(start === undefined ? {} : { start }),
    choice: {
      edge: oneOf(choice['edge'], EDGE_TECHNIQUES, 'The edge'),
      start: oneOf(choice['start'], START_SIDES, 'The start side'),
    },
    ...readShared(head),
  };
}

function readDiagonalHead(head: Record<string, unknown>): DiagonalHead {
  const { minRows, maxRows, minStrings, maxStrings } = DIAGONAL_LIMITS;
  const rows = whole(head['rows'], minRows, maxRows, 'The number of rows');
  const strings = whole(head['strings'], minStrings, maxStrings, 'The number of strings');
  return {
    kind: 'diagonal',
    format: FORMATS.diagonal,
    rows,
    strings,
    first: oneOf(head['first'], [0, 1] as const, 'The slot of the first knot'),
    knots: whole(head['knots'], 0, rows * knotsAcross({ strings }), 'The number of knots'),
    ...readShared(head),
  };
}

function readShared(head: Record<string, unknown>) {
  const { removed } = head;
  return {
    name: nameIn(head['name'], 'The name'),
    colours: coloursIn(head['colours']),
    // Settings that are not what they can be are the usual ones: no work is in them.
    cut: settingsFrom(head['cut']),
    created: time(head['created'], 'The time it was made'),
    changed: time(head['changed'], 'The time it was changed'),
    revision: whole(head['revision'], 0, Number.MAX_SAFE_INTEGER, 'The revision'),
    ...(removed === undefined ? {} : { removed: time(removed, 'The time it was removed') }),
  };
}

/**
 * A project from its head, which has been read, and whatever lies there as what is drawn.
 *
 * @throws StoreError `damaged`
 */
export function readProject(id: string, head: ProjectHead, record: unknown): Project {
  const found = fieldsOf(record, 'Its drawing');
  return head.kind === 'alpha' ? readAlpha(id, head, found) : readDiagonal(id, head, found);
}

function readAlpha(id: string, head: AlphaHead, found: Record<string, unknown>): AlphaProject {
  const size = head.rows * head.columns;
  const { name, rows, columns, colours, edge, start, choice, cut, created, changed } = head;
  const cells = bytesIn(found['cells'], size, colours.length, 'The drawing');
  const { knots } = found;
  return {
    kind: 'alpha',
    id,
    chart: {
      name,
      rows,
      columns,
      colours,
      cells,
      ...(edge === undefined ? {} : { edge }),
      ...(start === undefined ? {} : { start }),
      ...(knots === undefined
        ? {}
        : { knots: bytesIn(knots, size, KNOT_KINDS.length, 'The kinds of knot') }),
    },
    choice,
    cut,
    created,
    changed,
  };
}

function readDiagonal(
  id: string,
  head: DiagonalHead,
  found: Record<string, unknown>,
): DiagonalProject {
  const { name, rows, strings, first, colours, cut, created, changed } = head;
  const size = rows * knotsAcross({ strings });
  const lattice = { strings, rows, first };
  const { wanted } = found;
  return {
    kind: 'diagonal',
    id,
    pattern: {
      name,
      ...lattice,
      colours,
      start: stringsIn(found['start'], strings, colours.length),
      knots: bytesIn(found['knots'], size, KNOT_KINDS.length, 'The kinds of knot', [NO_KNOT]),
    },
    wanted:
      wanted === undefined
        ? null
        : {
            name,
            ...lattice,
            colours,
            cells: bytesIn(wanted, size, colours.length, 'The picture', [ANY_COLOUR, BARE]),
          },
    cut,
    created,
    changed,
  };
}
