import type { Finding, KnotKind, KnotReading, ThreadString } from '@halfhitch/core';
import { LESSON_MESSAGES } from '../messages/lesson-words.js';
import { leadName } from '../row/row-words.js';
import { drawnFabric, trialFabric } from './fabric-picture.js';
import type { Answer, KnotShow, RowShow, Show } from './lesson.js';
import { type Trial, trialRow } from './trial.js';
import { rowOf, type Work } from './work.js';

const MOST_FINDINGS = 4;

/** A row of the work as it is planned, from one of its knots on. */
export function rowShow(work: Work, row: number, knot: number): RowShow {
  return {
    what: 'row',
    ...rowOf(work, row),
    knot,
    done: false,
    still: false,
    caption: work.say('lesson.watch'),
  };
}

/** How things are before a knot, to be looked at for the answer. */
export function situation(work: Work, row: number, knot: number): RowShow {
  return { ...rowShow(work, row, knot), still: true, caption: work.say('lesson.situation') };
}

export function knotShow(
  kind: KnotKind,
  strings: { readonly tying: ThreadString; readonly held: ThreadString } | null,
  names: { readonly tying: string; readonly held: string } = { tying: '', held: '' },
  backward = false,
): KnotShow {
  return {
    what: 'knot',
    kind,
    tyingColour: strings?.tying.colour ?? '#1f6fb2',
    heldColour: strings?.held.colour ?? '#e9e2d0',
    tyingName: names.tying,
    heldName: names.held,
    backward,
    done: backward,
  };
}

/** What comes of a choice that differs from the plan, in the row and in the finished work. */
export function answerOfTrial(
  work: Work,
  knot: KnotReading,
  trial: Trial | null,
  text: readonly string[],
): Answer {
  const shows: Show[] = [];
  if (trial !== null) {
    const row = trialRow(trial, knot.row);
    if (row !== null) {
      shows.push({
        what: 'row',
        ...row,
        knot: knot.order,
        done: true,
        still: false,
        caption: work.say('lesson.becomes'),
      });
    }
    shows.push(drawnFabric(work, knot), trialFabric(trial, knot, work.say('lesson.yours')));
  }
  return { right: false, text, findings: trial === null ? [] : findingsIn(work, trial), shows };
}

export function rightAnswer(text: readonly string[], shows: readonly Show[]): Answer {
  return { right: true, text, findings: [], shows: shows.map(done) };
}

/** The same picture with its knot finished. */
export function done<T extends Show>(show: T): T {
  return show.what === 'fabric' || show.what === 'piece' ? show : { ...show, done: true };
}

/** What the verifier found, in the language of the lesson where that has words for it. */
function findingsIn(work: Work, trial: Trial): string[] {
  const told = trial.verification.findings.filter(({ grade }) => grade !== 'note');
  return told.slice(0, MOST_FINDINGS).map((finding) => inWords(work, finding));
}

function inWords({ say }: Work, { code, row, column, message }: Finding): string {
  const key = LESSON_MESSAGES.keys.find((known) => known === `finding.${code}`);
  return key === undefined || row === null || column === null ? message : say(key, { row, column });
}

export function namesOf(
  work: Work,
  knot: KnotReading,
): { lead: string; held: string; old: string; row: number; knot: number } {
  const old = knot.change?.oldLead ?? null;
  return {
    lead: leadName(knot.tying, work.words),
    held: work.words('name.base', { number: knot.column + 1 }),
    old: old === null ? '' : leadName(old, work.words),
    row: knot.row + 1,
    knot: knot.order + 1,
  };
}
