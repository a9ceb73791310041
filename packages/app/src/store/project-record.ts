import { CHART_LIMITS, type Chart, type ChartColour, KNOT_KINDS } from '@halfhitch/core';
import { settingsFrom } from '../cut/settings.js';
import type { Project } from '../project/project.js';
import { StoreError } from './errors.js';

/** Grows when records of a new kind can no longer be read by what came before. */
export const RECORD_FORMAT = 1;

/** A project as it lies in the storage, but for its cells. */
export interface ProjectHead {
  readonly format: number;
  readonly name: string;
  readonly rows: number;
  readonly columns: number;
  readonly colours: readonly ChartColour[];
  readonly edge?: Chart['edge'];
  readonly start?: Chart['start'];
  readonly choice: Project['choice'];
  readonly cut: Project['cut'];
  readonly created: number;
  readonly changed: number;
  /** Grows by one each time it is kept: whoever has seen an earlier one has not seen this. */
  readonly revision: number;
  /** When it was removed; absent of those that were not. */
  readonly removed?: number;
}

export interface ProjectCells {
  readonly cells: Uint8Array;
  readonly knots?: Uint8Array;
}

export function headOf(project: Project, revision: number): ProjectHead {
  const { chart, choice, cut, created, changed } = project;
  return {
    format: RECORD_FORMAT,
    name: chart.name,
    rows: chart.rows,
    columns: chart.columns,
    colours: chart.colours.map(({ key, hex, name }) => ({ key, hex, name })),
    ...(chart.edge === undefined ? {} : { edge: chart.edge }),
    ...(chart.start === undefined ? {} : { start: chart.start }),
    choice: { ...choice },
    cut: { ...cut },
    created,
    changed,
    revision,
  };
}

export function cellsOf({ chart }: Project): ProjectCells {
  return {
    // Not a view into something larger, all of which would be kept.
    cells: chart.cells.slice(),
    ...(chart.knots === undefined ? {} : { knots: chart.knots.slice() }),
  };
}

/**
 * The head of a project from whatever lies in the storage.
 *
 * @throws StoreError `damaged`, with what is wrong
 */
export function readHead(record: unknown): ProjectHead {
  const head = fieldsOf(record, 'The record');
  const format = head['format'];
  if (typeof format === 'number' && format > RECORD_FORMAT) {
    damaged('It was kept by a later version of Halfhitch. Load the page anew to get that version.');
  }
  if (format !== RECORD_FORMAT) damaged('It is not a record of a project.');
  const choice = fieldsOf(head['choice'], 'How it is knotted');
  const edge = oneOf(head['edge'], ['straight', 'wrapped', undefined] as const, 'The edge');
  const start = oneOf(head['start'], ['left', 'right', undefined] as const, 'The start side');
  const removed = head['removed'];
  return {
    format,
    name: nameIn(head['name'], 'The name'),
    rows: whole(head['rows'], CHART_LIMITS.minRows, CHART_LIMITS.maxRows, 'The number of rows'),
    columns: whole(
      head['columns'],
      CHART_LIMITS.minColumns,
      CHART_LIMITS.maxColumns,
      'The number of columns',
    ),
    colours: coloursIn(head['colours']),
    ...(edge === undefined ? {} : { edge }),
    ...(start === undefined ? {} : { start }),
    choice: {
      edge: oneOf(choice['edge'], ['straight', 'wrapped'] as const, 'The edge'),
      start: oneOf(choice['start'], ['left', 'right'] as const, 'The start side'),
    },
    // Settings that are not what they can be are the usual ones: no work is in them.
    cut: settingsFrom(head['cut']),
    created: time(head['created'], 'The time it was made'),
    changed: time(head['changed'], 'The time it was changed'),
    revision: whole(head['revision'], 0, Number.MAX_SAFE_INTEGER, 'The revision'),
    ...(removed === undefined ? {} : { removed: time(removed, 'The time it was removed') }),
  };
}

/**
 * A project from its head, which has been read, and whatever lies there as its cells.
 *
 * @throws StoreError `damaged`
 */
export function readProject(id: string, head: ProjectHead, record: unknown): Project {
  const found = fieldsOf(record, 'Its drawing');
  const size = head.rows * head.columns;
  const cells = bytesIn(found['cells'], size, head.colours.length, 'The drawing');
  const knots = found['knots'];
  const { name, rows, columns, colours, edge, start, choice, cut, created, changed } = head;
  return {
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

export function damaged(what: string): never {
  throw new StoreError('damaged', what);
}

export function fieldsOf(value: unknown, what: string): Record<string, unknown> {
  if (typeof value !== 'object' || value === null) damaged(`${what} is missing.`);
  return value as Record<string, unknown>;
}

export function whole(value: unknown, least: number, most: number, what: string): number {
  if (typeof value !== 'number' || !Number.isInteger(value) || value < least || value > most) {
    damaged(`${what} is not a whole number from ${least} to ${most}.`);
  }
  return value;
}

/** Milliseconds since 1970, up to what a date can be. */
export function time(value: unknown, what: string): number {
  if (typeof value !== 'number' || !(value >= 0 && value <= 8.64e15))
    damaged(`${what} is no time.`);
  return value;
}

function oneOf<T>(value: unknown, choices: readonly T[], what: string): T {
  if (!choices.includes(value as T)) damaged(`${what} is not what it can be.`);
  return value as T;
}

function nameIn(value: unknown, what: string): string {
  if (typeof value !== 'string' || value.length > 2 * CHART_LIMITS.maxName) {
    damaged(`${what} is not a text of at most ${CHART_LIMITS.maxName} characters.`);
  }
  return value;
}

function coloursIn(value: unknown): ChartColour[] {
  if (
    !Array.isArray(value) ||
    value.length < CHART_LIMITS.minColours ||
    value.length > CHART_LIMITS.maxColours
  ) {
    damaged('The list of colours is not what it can be.');
  }
  const keys = new Set<string>();
  return value.map((entry: unknown, place) => {
    const what = `Colour ${place + 1}`;
    const { key, hex, name } = fieldsOf(entry, what) as Record<'key' | 'hex' | 'name', unknown>;
    if (typeof hex !== 'string' || !/^#[0-9a-f]{6}$/.test(hex)) damaged(`${what} is no colour.`);
    if (typeof key !== 'string' || [...key].length !== 1 || keys.has(key)) {
      damaged(`${what} has no character of its own.`);
    }
    keys.add(key);
    return { key, hex, name: nameIn(name, `The name of colour ${place + 1}`) };
  });
}

/** @param end what each byte must stay below */
function bytesIn(value: unknown, size: number, end: number, what: string): Uint8Array {
  if (!(value instanceof Uint8Array)) damaged(`${what} is missing.`);
  if (value.length !== size) {
    damaged(`${what} has ${value.length} knots in place of ${size}.`);
  }
  for (const byte of value) if (byte >= end) damaged(`${what} holds what is not in its legend.`);
  return value;
}
