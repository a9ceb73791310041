import {
  CHART_LIMITS,
  type ChartNotice,
  checkHeader,
  DIAGONAL_LIMITS,
  type DiagonalPattern,
  FILE_LIMITS,
  InputError,
  JsonText,
  type Properties,
  printChartDocument,
  printDiagonalDocument,
  printDiagonalPictureDocument,
  readChartDocument,
  readDiagonalDocument,
  readDiagonalPictureDocument,
  unknownProperty,
} from '@halfhitch/core';
import { type CutSettings, settingsFrom } from '../cut/settings.js';
import { asKnotted } from '../diagonal/keep/as-knotted.js';
import { newId } from '../project/new-id.js';
import type { DiagonalProject, Project } from '../project/project.js';
import { chartAsKnotted } from './as-knotted.js';

export const PROJECT_FORMAT = 'halfhitch-project';
/** By the kind of project: the first version knew alpha work only. */
const VERSIONS = { alpha: 1, diagonal: 2 } as const;

const OPTIONAL = ['id', 'created', 'changed', 'cut', 'progress'];
const PROGRESS_KEYS = ['done', 'columns', 'seconds', 'marks'];

/** ISO 8601, with the day, the time and the zone, from 1970 on. */
const TIME = /^(?:19[7-9]\d|[2-9]\d{3})-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d{1,9})?(?:Z|[+-]\d\d:\d\d)$/;

/** More seconds than any piece takes: thirty years. */
const MOST_SECONDS = 1_000_000_000;

/** How far a project is knotted, as it goes into a file. */
export interface CarriedProgress {
  /** Knots tied, in the order of knotting. */
  readonly done: number;
  /** Knots in a row of the chart, or strings of the pattern, as it was tied. */
  readonly columns: number;
  /** Spent knotting. */
  readonly seconds: number;
  /** A mark of each row as it was tied, by which later changes are seen. */
  readonly marks: Uint32Array;
}

export interface ProjectReading {
  readonly project: Project;
  readonly progress: CarriedProgress | null;
  readonly notices: readonly ChartNotice[];
}

/** A project as a document: that of its chart or pattern, and what else there is to it. */
export function printProjectDocument(
  project: Project,
  progress: CarriedProgress | null = null,
): string {
  const parts = [
    `"format": ${JSON.stringify(PROJECT_FORMAT)}`,
    `"version": ${VERSIONS[project.kind]}`,
    `"id": ${JSON.stringify(project.id)}`,
    `"created": ${JSON.stringify(new Date(project.created).toISOString())}`,
    `"changed": ${JSON.stringify(new Date(project.changed).toISOString())}`,
    ...drawnParts(project),
    `"cut": ${JSON.stringify(project.cut, null, 2).replaceAll('\n', '\n  ')}`,
  ];
  if (progress !== null) {
    const { done, columns, seconds, marks } = progress;
    parts.push(
      `"progress": ${JSON.stringify({ done, columns, seconds: Math.round(seconds), marks: [...marks] })}`,
    );
  }
  return `{\n  ${parts.join(',\n  ')}\n}\n`;
}

function drawnParts(project: Project): string[] {
  const part = (name: string, document: string): string =>
    `${JSON.stringify(name)}: ${document.trimEnd().replaceAll('\n', '\n  ')}`;
  if (project.kind === 'alpha') {
    return [part('chart', printChartDocument(chartAsKnotted(project)))];
  }
  const { pattern, wanted } = asKnotted(project);
  return [
    part('pattern', printDiagonalDocument(pattern)),
    ...(wanted === null ? [] : [part('wanted', printDiagonalPictureDocument(wanted))]),
  ];
}

/**
 * Reads a project's document, version 1 of alpha work and 2 of diagonal patterns. What was filled in for the cut list is taken as far as
 * it is known; anything else that is not listed in docs/formats.md is refused.
 *
 * @param now for a document that does not say when it was made, ms since 1970
 * @throws InputError with line, column and path
 */
export function readProjectDocument(text: string, now = Date.now()): ProjectReading {
  if (text.length > FILE_LIMITS.text) {
    throw new InputError(
      'file-too-large',
      'The document is too long.',
      {},
      'A project can have at most 32 MiB.',
    );
  }
  const json = new JsonText(text);
  const outline = json.outline();
  const diagonal = outline.has('pattern');
  checkHeader(json, outline, {
    format: PROJECT_FORMAT,
    noun: 'project',
    version: diagonal ? VERSIONS.diagonal : VERSIONS.alpha,
    required: ['format', 'version', diagonal ? 'pattern' : 'chart'],
    optional: diagonal ? [...OPTIONAL, 'wanted'] : OPTIONAL,
  });
  const drawn = diagonal ? readDiagonalParts(json, outline) : readAlphaParts(json, outline);
  const id = given(json, outline, 'id', () => readId(json)) ?? newId();
  const created = given(json, outline, 'created', () => readTime(json)) ?? now;
  const changed = given(json, outline, 'changed', () => readTime(json)) ?? now;
  const cut = given(json, outline, 'cut', () => readCut(json)) ?? settingsFrom(null);
  const progress = given(json, outline, 'progress', () => readProgress(json)) ?? null;
  const { notices, ...parts } = drawn;
  return { project: { ...parts, id, cut, created, changed }, progress, notices };
}

function readAlphaParts(json: JsonText, outline: Properties) {
  const { chart, notices } = readChartDocument(partText(json, outline, 'chart'));
  const choice = { edge: chart.edge ?? 'straight', start: chart.start ?? 'left' } as const;
  return { kind: 'alpha', chart, choice, notices } as const;
}

function readDiagonalParts(json: JsonText, outline: Properties) {
  const pattern = readDiagonalDocument(partText(json, outline, 'pattern'));
  const wanted = outline.has('wanted') ? readWanted(json, outline, pattern) : null;
  return { kind: 'diagonal', pattern, wanted, notices: [] } as const;
}

function readWanted(
  json: JsonText,
  outline: Properties,
  pattern: DiagonalPattern,
): NonNullable<DiagonalProject['wanted']> {
  const picture = readDiagonalPictureDocument(partText(json, outline, 'wanted'));
  const { name, strings, rows, first, colours } = pattern;
  const fits =
    picture.strings === strings &&
    picture.rows === rows &&
    picture.first === first &&
    picture.colours.length === colours.length &&
    picture.colours.every(({ hex }, at) => hex === colours[at]?.hex);
  if (!fits) {
    json.fail(
      'wanted-differs',
      'The picture that is wanted has another lattice, or other colours, than the pattern.',
      'Give both the same strings, rows, first slot and colours, or remove "wanted".',
      outline.get('wanted'),
    );
  }
  return { name, strings, rows, first, colours, cells: picture.cells };
}

function given<T>(json: JsonText, outline: Properties, key: string, read: () => T): T | undefined {
  const at = outline.get(key);
  return at === undefined ? undefined : json.property(key, at, read);
}

/** The text of a document inside, with blanks before it, so that lines and columns in messages are right. */
function partText(json: JsonText, outline: Properties, part: string): string {
  const at = outline.get(part) ?? 0;
  const end = json.property(part, at, () => {
    json.skip();
    return json.mark;
  });
  return json.text.slice(0, at).replace(/[^\r\n]/gu, ' ') + json.text.slice(at, end);
}

function readId(json: JsonText): string {
  const at = json.mark;
  const id = json.string();
  if (!/^[0-9a-zA-Z-]{8,64}$/.test(id)) {
    json.fail('id', 'This is no mark of a project.', 'Remove the property "id".', at);
  }
  return id;
}

function readTime(json: JsonText): number {
  const at = json.mark;
  const text = json.string();
  const time = TIME.test(text) ? Date.parse(text) : Number.NaN;
  if (!(time >= 0)) {
    json.fail('time', 'This is no time.', 'Write it as "2027-05-01T12:00:00Z".', at);
  }
  return time;
}

function readCut(json: JsonText): CutSettings {
  const found: Record<string, string> = {};
  json.object((key) => {
    if (json.glimpse().startsWith('"')) found[key] = json.string();
    else json.skip();
  });
  return settingsFrom(found);
}

function readProgress(json: JsonText): CarriedProgress {
  const at = json.mark;
  const found: { done?: number; columns?: number; seconds?: number; marks?: number[] } = {};
  const maxRows = Math.max(CHART_LIMITS.maxRows, DIAGONAL_LIMITS.maxRows);
  const maxColumns = Math.max(CHART_LIMITS.maxColumns, DIAGONAL_LIMITS.maxStrings);
  json.object((key) => {
    if (key === 'done') found.done = json.integer(0, maxColumns * maxRows);
    else if (key === 'columns') found.columns = json.integer(1, maxColumns);
    else if (key === 'seconds') found.seconds = json.integer(0, MOST_SECONDS);
    else if (key === 'marks') found.marks = readMarks(json, maxRows);
    else unknownProperty(json, key, PROGRESS_KEYS);
  });
  const { done, columns, seconds = 0, marks = [] } = found;
  if (done === undefined || columns === undefined) {
    return json.fail(
      'property-missing',
      'The progress does not say how far it is.',
      'Give "done" and "columns", or remove it.',
      at,
    );
  }
  return { done, columns, seconds, marks: Uint32Array.from(marks) };
}

function readMarks(json: JsonText, most: number): number[] {
  const marks: number[] = [];
  json.array((index) => {
    if (index === most)
      json.fail('too-many-rows', `There are more than ${most} rows.`, 'Remove some.');
    marks.push(json.integer(0, 0xffff_ffff));
  });
  return marks;
}
