import {
  apply,
  Cursor,
  colourInWords,
  type KnotReading,
  mirrorKnot,
  PARK_ROUTES,
  type ParkRoute,
  type Step,
  type ThreadString,
} from '@halfhitch/core';
import { leadName } from '../row/row-words.js';
import { answerOfTrial, done, knotShow, namesOf, rightAnswer, rowShow } from './answers.js';
import { drawnFabric } from './fabric-picture.js';
import type { Answer, Choice, Question } from './lesson.js';
import { withMistakes, withRoute } from './trial.js';
import { knotOf, type Work } from './work.js';

/** Which string ties this knot? */
export function askString(work: Work, row: number, order: number): Question {
  const knot = knotOf(work, row, order);
  const { say } = work;
  const names = namesOf(work, knot);
  const choices: Choice[] = [
    {
      text: say('choice.string', { string: names.lead }),
      right: true,
      answer: () =>
        rightAnswer([say('lesson.right'), say('why.string', names)], [rowShow(work, row, order)]),
    },
    {
      text: say('choice.string', { string: capitalised(names.held) }),
      right: false,
      answer: () => baseTies(work, knot),
    },
  ];
  for (const other of otherLeads(work, knot)) {
    choices.push({
      text: say('choice.string', { string: leadName(other, work.words) }),
      right: false,
      answer: () => otherTies(work, knot, other),
    });
  }
  const prompt = say('ask.string', { ...names, colour: colourOf(work, knot.tying) });
  return { prompt, choices };
}

/** The knot alone: what follows it is not worth a look, since the lead cannot go on. */
function baseTies(work: Work, knot: KnotReading): Answer {
  const { say } = work;
  const names = namesOf(work, knot);
  const swapped = { tying: knot.held, held: knot.tying };
  const called = { tying: names.held, held: names.lead };
  return {
    right: false,
    text: [
      say('lesson.notThis'),
      say('wrong.base', { ...names, colour: colourOf(work, knot.held) }),
    ],
    findings: [],
    shows: [done(knotShow(mirrorKnot(knot.kind), swapped, called))],
  };
}

function otherTies(work: Work, knot: KnotReading, other: ThreadString): Answer {
  const { row, column } = knot;
  const { say } = work;
  // At the edge of a run the same slip is called an early or a late change.
  const trial =
    withMistakes(work, [{ kind: 'wrong-lead', row, column, lead: other.id, span: 'knot' }]) ??
    withMistakes(work, [{ kind: 'late-change', row, column }]);
  return answerOfTrial(work, knot, trial, [
    say('lesson.notThis'),
    say('wrong.lead', { lead: leadName(other, work.words), colour: colourOf(work, other) }),
  ]);
}

/** Leads of other colours that have been used by then, or are in hand; at most two. */
function otherLeads(work: Work, knot: KnotReading): ThreadString[] {
  return work.plan.strings
    .filter(({ role, colour }) => role === 'lead' && colour !== knot.tying.colour)
    .slice(0, 2);
}

/** Where does the old lead go at a hand-over? */
export function askRoute(work: Work, row: number, order: number): Question {
  const knot = knotOf(work, row, order);
  const { say } = work;
  const names = namesOf(work, knot);
  const right: ParkRoute = knot.change?.oldLeadRoute ?? 'through';
  return {
    prompt: say('ask.route', names),
    choices: PARK_ROUTES.map((route) => ({
      text: say(`choice.${route}`),
      right: route === right,
      answer: () => {
        if (route === right) {
          return rightAnswer(
            [say('lesson.right'), say(`why.${route}`, names)],
            [rowShow(work, row, order), drawnFabric(work, knot)],
          );
        }
        const trial = withRoute(work, knot, route);
        const more = trial.verification.ok ? [say('wrong.onlyPlace')] : [];
        const answer = answerOfTrial(work, knot, trial, [say('lesson.notThis'), ...more]);
        // Where the colour stays the same, nothing in the piece tells of it.
        return right === 'through' && answer.findings.length === 0
          ? { ...answer, text: [...answer.text, say('wrong.notHeld', names)] }
          : answer;
      },
    })),
  };
}

type Entry = 'add' | 'takeUp' | 'faraway';

/** How does a lead come to the place it is to tie at? */
export function askEntry(work: Work, row: number, order: number): Question {
  const knot = knotOf(work, row, order);
  const { say, plan } = work;
  const names = namesOf(work, knot);
  const entering = stepEntering(work, knot);
  const right: Entry = entering.do === 'takeUp' ? 'takeUp' : 'add';
  const float = knot.change?.float;
  const why = say(whyEntered(right, float?.rows ?? 0), {
    ...names,
    rows: float?.rows ?? 0,
    columns: float?.columns ?? 0,
  });
  const entries: readonly Entry[] = ['add', 'takeUp', 'faraway'];
  return {
    prompt: say('ask.entry', names),
    choices: entries.map((entry) => ({
      text: say(`choice.${entry}`, names),
      right: entry === right,
      answer: () =>
        entry === right
          ? rightAnswer([say('lesson.right'), why], [rowShow(work, row, order)])
          : refused(work, knot, entry, entering),
    })),
  };

  /** Tries it in the state machine, which says why not. */
  function refused(at: Work, of: KnotReading, entry: Entry, right: Step): Answer {
    const cursor = new Cursor(plan.steps, plan.hung);
    let before = of.steps.first;
    while (!sameStep(plan.steps.at(before), right)) before++;
    cursor.seek(before);
    const string = of.tying.id;
    const slot =
      entry === 'faraway' ? (of.column === 0 ? cursor.state.front.length : 0) : slotOf(right);
    const way = entry === 'faraway' ? right.do : entry;
    const step = { do: way === 'takeUp' ? 'takeUp' : 'add', string, slot } as const;
    const entered = apply(cursor.state, step);
    let code = entered.ok ? '' : entered.fault.code;
    if (entered.ok) {
      const halfWay =
        of.kind === 'backward' || of.kind === 'backward-forward' ? 'backward' : 'forward';
      const tied = apply(entered.state, {
        do: 'halfHitch',
        way: halfWay,
        tying: string,
        held: of.held.id,
      });
      code = tied.ok ? '' : tied.fault.code;
    }
    const key =
      code === 'neverAdded'
        ? 'wrong.neverAdded'
        : code === 'addedBefore'
          ? 'wrong.addedBefore'
          : 'wrong.apart';
    return {
      right: false,
      text: [at.say('lesson.notThis'), at.say(key, names)],
      findings: [],
      shows: [rowShow(at, of.row, of.order)],
    };
  }
}

function whyEntered(entry: Entry, rows: number): 'why.add' | 'why.takeUp' | 'why.takeUpBelow' {
  if (entry !== 'takeUp') return 'why.add';
  return rows === 0 ? 'why.takeUp' : 'why.takeUpBelow';
}

function stepEntering({ plan }: Work, knot: KnotReading): Step {
  for (let i = knot.steps.first; i < knot.steps.end; i++) {
    const step = plan.steps.at(i);
    if ((step.do === 'add' || step.do === 'takeUp') && step.string === knot.tying.id) return step;
  }
  throw new RangeError(`No lead comes in at row ${knot.row + 1}, knot ${knot.order + 1}.`);
}

function sameStep(one: Step, other: Step): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

function slotOf(step: Step): number {
  return step.do === 'add' || step.do === 'takeUp' ? step.slot : 0;
}

function colourOf(work: Work, string: ThreadString): string {
  return string.role === 'base' && string.name === ''
    ? work.say('colour.undyed')
    : colourInWords(string);
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
