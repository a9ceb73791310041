import {
  type Chart,
  changesPlaces,
  InputError,
  type KnotReading,
  type Plan,
  PlanReader,
} from '@halfhitch/core';
import { LESSON_MESSAGES } from '../messages/lesson-words.js';
import { MESSAGES } from '../messages/words.js';
import { rowShow } from './answers.js';
import { askKind } from './ask-kind.js';
import { askEntry, askRoute, askString } from './ask-strings.js';
import { drawnFabric } from './fabric-picture.js';
import type { Lesson, LessonPage } from './lesson.js';
import { ask, LESSON_NAMES, LESSONS, type LessonName, titleValues } from './lessons.js';
import { page } from './pages.js';
import type { Hand, Teaching, Work } from './work.js';

export interface LessonOptions {
  /** Default: English. */
  readonly lang?: string;
  /** Default: right. For the left hand everything is mirrored. */
  readonly hand?: Hand;
}

/** Most steps of a plan of which one place is made into a lesson. */
export const MOST_STEPS_TAUGHT = 400_000;

function teachingFor({ lang = 'en', hand = 'right' }: LessonOptions): Teaching {
  return { say: LESSON_MESSAGES.in(lang), words: MESSAGES.in(lang), hand };
}

export function lessonTitle(name: LessonName, options: LessonOptions = {}): string {
  const teaching = teachingFor(options);
  return teaching.say(`${name}.title`, titleValues(teaching, name));
}

export function isLessonName(name: string): name is LessonName {
  return (LESSON_NAMES as readonly string[]).includes(name);
}

/** One of the lessons, generated from a small chart. */
export function lessonNamed(name: LessonName, options: LessonOptions = {}): Lesson {
  const teaching = teachingFor(options);
  return {
    name,
    title: lessonTitle(name, options),
    language: LESSON_MESSAGES.languageFor(options.lang ?? 'en'),
    pages: LESSONS[name](teaching),
  };
}

/**
 * A lesson about one place of any plan: its turn, its change of lead, its edge or its knot.
 *
 * @param row from 0
 * @param column from 0, from the left
 * @param options `hand` has no say here: the plan is taught as it is
 * @throws InputError when the plan has no such knot, is not sound, or has over 400,000 steps
 */
export function lessonFor(
  plan: Plan,
  row: number,
  column: number,
  options: LessonOptions = {},
): Lesson {
  if (plan.steps.length > MOST_STEPS_TAUGHT) {
    throw new InputError(
      'plan-too-large',
      `The plan has ${plan.steps.length} steps; a place in it can be made into a lesson up to ${MOST_STEPS_TAUGHT}.`,
      {},
      'Make the lesson from some rows of the chart.',
    );
  }
  const teaching = teachingFor({ ...options, hand: 'right' });
  const reader = new PlanReader(plan);
  const chart = chartOf(plan, reader);
  const knot = reader.row(row).knots.find((other) => other.column === column);
  if (knot === undefined) {
    throw new InputError(
      'no-such-knot',
      `Row ${row + 1} has no knot in column ${column + 1}.`,
      { row: row + 1, column: column + 1 },
      `Choose a column from 1 to ${plan.columns}.`,
    );
  }
  const work: Work = { plan, chart, reader, ...teaching };
  const name = caseOf(knot);
  return {
    name,
    title: lessonTitle(name, options),
    language: LESSON_MESSAGES.languageFor(options.lang ?? 'en'),
    pages: pagesFor(teaching, work, knot, name),
  };
}

/** Which of the lessons a place is a case of. */
export function caseOf(knot: KnotReading): LessonName {
  const { change, place } = knot;
  if (change !== null && change.oldLead !== null) {
    if (change.join) return 'run-out';
    switch (change.place) {
      case 'afterFirstKnot':
        return 'change-after-first';
      case 'lastKnot':
        return 'change-last';
      case 'turn':
        return 'change-turn';
      default:
        return 'change-within';
    }
  }
  if (change !== null) return 'first-use';
  if (place === 'inner' || place === 'only') return 'strings';
  if (changesPlaces(knot.kind)) return 'wrapped';
  if (place === 'first' && knot.row > 0) return 'turn';
  return knot.column === 0 ? 'edge-left' : 'edge-right';
}

function pagesFor(
  teaching: Teaching,
  work: Work,
  knot: KnotReading,
  name: LessonName,
): LessonPage[] {
  const { row, order } = knot;
  const values = {
    side: teaching.words(knot.column === 0 ? 'side.left' : 'side.right'),
    inner: teaching.words(`kind.${knot.direction === 'right' ? 'forward' : 'backward'}`),
  };
  const shows = [rowShow(work, row, order), drawnFabric(work, knot)];
  const pages = [page(teaching, `${name}.1`, shows, values)];
  const { change } = knot;
  if (change !== null && change.oldLead !== null)
    pages.push(ask(askRoute(work, row, order), work, row, order));
  if (change !== null) {
    if (change.float !== null && change.float.columns + change.float.rows > 1) {
      pages.push(page(teaching, 'float.1', [], { columns: change.float.columns }));
    }
    pages.push(ask(askEntry(work, row, order), work, row, order));
  }
  pages.push(
    ask(
      name === 'strings' ? askString(work, row, order) : askKind(work, row, order),
      work,
      row,
      order,
    ),
  );
  return pages;
}

/** What a plan knots, as a drawing: its own steps are what is to be learnt. */
function chartOf(plan: Plan, reader: PlanReader): Chart {
  const hexes: string[] = [];
  const colours: { key: string; hex: string; name: string }[] = [];
  const cells = new Uint8Array(plan.rows * plan.columns);
  for (let row = 0; row < plan.rows; row++) {
    const { knots } = reader.row(row);
    const end = knots.at(-1)?.steps.end ?? plan.steps.length;
    if (knots.length !== plan.columns || (row + 1 < plan.rows && end >= plan.steps.length)) {
      throw new InputError(
        'plan-unsound',
        `Row ${row + 1} of the plan has not one knot for each base string, or is the last of its steps.`,
        { row: row + 1 },
        'Verify the plan and put it right first.',
      );
    }
    for (const { tying, column } of knots) {
      let colour = hexes.indexOf(tying.colour);
      if (colour < 0) {
        colour = hexes.push(tying.colour) - 1;
        colours.push({
          key: String.fromCharCode(97 + (colour % 26)),
          hex: tying.colour,
          name: tying.name,
        });
      }
      cells[row * plan.columns + column] = colour;
    }
  }
  return { name: plan.name, rows: plan.rows, columns: plan.columns, colours, cells };
}
