import { CHART_LIMITS, DIAGONAL_LIMITS } from '@halfhitch/core';
import { StoreError } from './errors.js';
import { STORE_LIMITS } from './limits.js';
import type { Progress, TimedKnots } from './progress.js';
import { damaged, fieldsOf, time, whole } from './record-fields.js';
import type { Shelves } from './shelves.js';
import { revisionOf } from './unread-record.js';

const FORMAT = 1;

const MOST_ACROSS = Math.max(CHART_LIMITS.maxColumns, DIAGONAL_LIMITS.maxStrings);
const MOST_ROWS = Math.max(CHART_LIMITS.maxRows, DIAGONAL_LIMITS.maxRows);

/** How progress lies in the storage. */
export function progressRecord(progress: Progress): Record<string, unknown> {
  const { id: _, times, ...fields } = progress;
  const last = times.slice(-STORE_LIMITS.times);
  return {
    ...fields,
    format: FORMAT,
    marks: progress.marks.slice(),
    seconds: Float32Array.from(last, ({ seconds }) => seconds),
    knots: Uint16Array.from(last, ({ knots }) => knots),
    changes: Uint16Array.from(last, ({ changes }) => changes),
  };
}

/**
 * Puts progress in its place, with a revision of its own.
 *
 * @throws StoreError `newer` when a later revision lies there that is not to be replaced
 */
export async function putProgress(
  shelves: Shelves,
  progress: Progress,
  replace: boolean,
): Promise<Progress> {
  const last = revisionOf(await shelves.get('progress', progress.id));
  if (!replace && last > progress.revision) {
    throw new StoreError(
      'newer',
      'Knots of this piece were counted in another window meanwhile. Its count holds.',
    );
  }
  const next = { ...progress, revision: Math.max(last, progress.revision) + 1 };
  await shelves.put('progress', progress.id, progressRecord(next));
  return next;
}

/**
 * Progress from whatever lies in the storage. What only the pace is told from is left out where it
 * is broken; where the position is, nothing can be made of it.
 *
 * @throws StoreError `damaged`
 */
export function readProgress(id: string, record: unknown): Progress {
  const found = fieldsOf(record, 'The record');
  if (typeof found['format'] === 'number' && found['format'] > FORMAT) {
    damaged('It was kept by a later version of Halfhitch. Load the page anew to get that version.');
  }
  const columns = whole(
    found['columns'],
    CHART_LIMITS.minColumns,
    MOST_ACROSS,
    'The number of columns',
  );
  const marks = found['marks'];
  if (!(marks instanceof Uint32Array) || marks.length > MOST_ROWS) {
    damaged('The rows tied are missing.');
  }
  const active = found['active'];
  return {
    id,
    done: whole(found['done'], 0, columns * MOST_ROWS, 'The position'),
    columns,
    marks,
    times: timesIn(found['seconds'], found['knots'], found['changes']),
    active: typeof active === 'number' && active >= 0 && active < 1e9 ? active : 0,
    changed: time(found['changed'], 'The time'),
    revision: whole(found['revision'], 0, Number.MAX_SAFE_INTEGER, 'The revision'),
  };
}

function timesIn(seconds: unknown, knots: unknown, changes: unknown): TimedKnots[] {
  if (!(seconds instanceof Float32Array) || seconds.length > STORE_LIMITS.times) return [];
  if (!(knots instanceof Uint16Array) || !(changes instanceof Uint16Array)) return [];
  const times: TimedKnots[] = [];
  for (const [i, value] of seconds.entries()) {
    const timed = { seconds: value, knots: knots[i] ?? 0, changes: changes[i] ?? 0 };
    const sound = value >= 0 && Number.isFinite(value) && timed.changes <= timed.knots;
    if (sound && timed.knots > 0) times.push(timed);
  }
  return times;
}
