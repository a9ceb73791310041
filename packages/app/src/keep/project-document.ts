import {
  CHART_LIMITS,
  type ChartNotice,
  checkHeader,
  FILE_LIMITS,
  InputError,
  JsonText,
  type Properties,
  printChartDocument,
  readChartDocument,
  unknownProperty,
} from '@halfhitch/core';
import { type CutSettings, settingsFrom } from '../cut/settings.js';
import { newId } from '../project/new-id.js';
import type { Project } from '../project/project.js';
import { chartAsKnotted } from './as-knotted.js';

export const PROJECT_FORMAT = 'halfhitch-project';
const PROJECT_VERSION = 1;

const REQUIRED = ['format', 'version', 'chart'];
const OPTIONAL = ['id', 'created', 'changed', 'cut', 'progress'];
const PROGRESS_KEYS = ['done', 'columns', 'seconds', 'marks'];

/** More seconds than any piece takes: thirty years. */
const MOST_SECONDS = 1_000_000_000;

/** How far a project is knotted, as it goes into a file. */
export interface CarriedProgress {
  /** Knots tied, in the order of knotting. */
  readonly done: number;
  /** Knots in a row of the chart as it was tied. */
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

/** A project as a document: its chart's document, and what else there is to it. */
export function printProjectDocument(
  project: Project,
  progress: CarriedProgress | null = null,
): string {
  const chart = printChartDocument(chartAsKnotted(project)).trimEnd().replaceAll('\n', '\n  ');
  const parts = [
    `"format": ${JSON.stringify(PROJECT_FORMAT)}`,
    `"version": ${PROJECT_VERSION}`,
    `"id": ${JSON.stringify(project.id)}`,
    `"created": ${JSON.stringify(new Date(project.created).toISOString())}`,
    `"changed": ${JSON.stringify(new Date(project.changed).toISOString())}`,
    `"chart": ${chart}`,
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

/**
 * Reads a project's document, version 1. What was filled in for the cut list is taken as far as
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
  checkHeader(json, outline, {
    format: PROJECT_FORMAT,
    noun: 'project',
    version: PROJECT_VERSION,
    required: REQUIRED,
    optional: OPTIONAL,
  });
  const { chart, notices } = readChartDocument(chartText(json, outline));
  const id = given(json, outline, 'id', () => readId(json)) ?? newId();
  const created = given(json, outline, 'created', () => readTime(json)) ?? now;
  const changed = given(json, outline, 'changed', () => readTime(json)) ?? now;
  const cut = given(json, outline, 'cut', () => readCut(json)) ?? settingsFrom(null);
  const progress = given(json, outline, 'progress', () => readProgress(json)) ?? null;
  return {
    project: {
      id,
      chart,
      choice: { edge: chart.edge ?? 'straight', start: chart.start ?? 'left' },
      cut,
      created,
      changed,
    },
    progress,
    notices,
  };
}

function given<T>(json: JsonText, outline: Properties, key: string, read: () => T): T | undefined {
  const at = outline.get(key);
  return at === undefined ? undefined : json.property(key, at, read);
}

/** The chart's own text, with blanks before it, so that lines and columns in messages are right. */
function chartText(json: JsonText, outline: Properties): string {
  const at = outline.get('chart') ?? 0;
  const end = json.property('chart', at, () => {
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
  const time = Date.parse(json.string());
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
  const { maxColumns, maxRows } = CHART_LIMITS;
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
