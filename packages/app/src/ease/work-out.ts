import { bestWay, type Chart, easier, InputError, type Suggestion } from '@halfhitch/core';
import { Lengths, threadOf } from '@halfhitch/geometry/thread';
import { type ReadSettings, readSettings } from '../cut/read-settings.js';
import { lengthsFor, measuresOf } from '../cut/work-out.js';
import { isOutOfMemory, reasonOf } from '../work/reason.js';
import type { Advice, EaseOutcome, EaseRequest } from './messages.js';
import { threadSaved } from './thread-saved.js';

/** Knots followed in working out what thread is saved; each suggestion takes those of its rows. */
const MOST_FOLLOWED = 400_000;

/** What would make the piece easier, and the best way to start it. Never throws. */
export function workOut(request: EaseRequest): EaseOutcome {
  const { chart, choice, pace, mayMirror } = request;
  try {
    const { ok, before, suggestions, untried } = easier(chart, choice, { pace });
    return {
      ok,
      before,
      advice: adviceOn(chart, suggestions, request),
      untried,
      way: bestWay(chart, { ...choice, pace, mayMirror }),
    };
  } catch (error) {
    return { problem: inWords(error) };
  }
}

function adviceOn(
  chart: Chart,
  suggestions: readonly Suggestion[],
  { choice, cut }: EaseRequest,
): Advice[] {
  if (suggestions.length === 0) return [];
  const [lengths, tail] = threadFor(readSettings(cut), choice.edge);
  let left = MOST_FOLLOWED;
  return suggestions.map((suggestion) => {
    left -= 2 * (suggestion.rows.end - suggestion.rows.first) * chart.columns;
    const thread = left < 0 ? null : threadSaved(chart, choice, suggestion, lengths, tail);
    return { suggestion, thread };
  });
}

/** By the fields of the cut list; by the usual thread while something in them is wrong. */
function threadFor(
  read: ReturnType<typeof readSettings>,
  edge: EaseRequest['choice']['edge'],
): [Lengths, number] {
  const measures = measuresOf(edge);
  if (!('errors' in read)) {
    const { options }: ReadSettings = read;
    return [lengthsFor(read, measures), options.tails ?? 0];
  }
  return [new Lengths(measures, threadOf().diameter), 0];
}

function inWords(error: unknown): string {
  if (error instanceof InputError) return error.message;
  if (isOutOfMemory(error)) {
    return 'The browser has not enough memory to look through a chart so large.';
  }
  return `Something went wrong in looking for what would be easier (${reasonOf(error)}).`;
}
