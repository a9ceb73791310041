import { changesPlaces, startSide } from '../model/knot.js';
import { Op, stringIndex } from '../model/steplist.js';
import type { Plan } from '../plan/plan.js';
import type { KnotReading, RowReading } from '../plan/reading.js';
import { printable } from '../printable.js';
import { changeInWords } from './change-words.js';
import { type KnotBefore, knotBefore } from './neighbours.js';
import type { InstructionPart, RowInstructions } from './parts.js';
import { TURN } from './step-words.js';
import {
  baseStrings,
  count,
  directionInWords,
  halvesInWords,
  heldInWords,
  leadInWords,
} from './wording.js';

/**
 * Written instructions for one row of a plan. The parts cover every knot and every step of the
 * row, each once and in order.
 */
export function instructRow(row: RowReading, plan: Plan): RowInstructions {
  const heading = `Row ${row.row + 1}, ${directionInWords(row.direction)}`;
  const parts = partsOf(row, plan);
  return {
    row: row.row,
    direction: row.direction,
    heading,
    parts,
    sentences: parts.map((part) => [part.text, ...part.substeps].join(' ')).join(' '),
  };
}

function partsOf(row: RowReading, plan: Plan): InstructionPart[] {
  const first = row.knots[0];
  if (first === undefined) {
    const nothing = { first: 0, end: 0 };
    return [part('direction', `Row ${row.row + 1} has no knots in this plan.`, null, nothing)];
  }
  const before = knotBefore(plan, first.steps.first);
  const parts = [directionPart(row, first)];
  let from = first.steps.first;
  if (first.change === null && row.row > 0) {
    const turn = turnPart(first, before, plan);
    parts.push(turn);
    from = turn.steps.end;
  }
  for (let i = 0; i < row.knots.length; ) {
    const knot = row.knots[i] as KnotReading;
    const steps = { first: i === 0 ? from : knot.steps.first, end: knot.steps.end };
    if (knot.change !== null) {
      parts.push(changePart(row.knots, i, before, plan));
      i++;
    } else if (isEdgeKnot(knot)) {
      const text = edgeInWords(knot, before, plan);
      parts.push(part('edge', text, { first: knot.column, last: knot.column }, steps));
      i++;
    } else {
      let last = i;
      while (goesOn(row.knots, last)) last++;
      const end = row.knots[last] as KnotReading;
      parts.push(runPart(knot, end, last - i + 1, { first: steps.first, end: end.steps.end }));
      i = last + 1;
    }
  }
  return parts;
}

function part(
  kind: InstructionPart['kind'],
  text: string,
  columns: InstructionPart['columns'],
  steps: InstructionPart['steps'],
): InstructionPart {
  return { kind, text, substeps: [], cases: [], columns, steps };
}

function directionPart(row: RowReading, first: KnotReading): InstructionPart {
  const changes = row.knots.filter((knot) => knot.order > 0 && knot.change !== null).length;
  const leads = new Set(row.knots.map((knot) => knot.tying.id)).size;
  let text = `This row goes ${directionInWords(row.direction)}. ${leadInWords(first.tying)} leads`;
  if (changes === 0) text += '.';
  else {
    text += ` first; the lead changes ${changes === 1 ? 'once' : count(changes, 'time')}`;
    text += leads > 2 ? `, among ${leads} leads.` : '.';
  }
  const step = first.steps.first;
  return part('direction', text, null, { first: step, end: step });
}

/** The lead that ended the last row starts this one. */
function turnPart(first: KnotReading, before: KnotBefore | null, plan: Plan): InstructionPart {
  const held = heldInWords(first.held, first.column);
  const lead = leadInWords(first.tying);
  const { op } = plan.steps;
  let end = first.steps.first;
  while (end < first.steps.end && op[end] !== Op.halfForward && op[end] !== Op.halfBackward) end++;
  let text: string;
  if (before !== null && changesPlaces(before.kind) && before.kind !== first.kind) {
    text = `${TURN} Take ${lead} round the outside of ${held}, where it shows at the edge, and start the row from there. Draw it up only until it lies against the edge.`;
  } else {
    text = `${TURN} ${lead} stays in hand: it hangs to the ${startSide(first.kind)} of ${held}, where the last row ended.`;
  }
  return part('turn', text, null, { first: first.steps.first, end });
}

function isEdgeKnot(knot: KnotReading): boolean {
  return knot.place !== 'inner' && !changesPlaces(knot.kind);
}

function edgeInWords(knot: KnotReading, before: KnotBefore | null, plan: Plan): string {
  const held = heldInWords(knot.held, knot.column);
  const does = `${knot.kind} knot on ${held}: ${halvesInWords(knot.kind)}, so that the lead comes back to the ${startSide(knot.kind)} of ${held}.`;
  if (knot.place === 'last') return `Tie the edge knot at the end of the row, a ${does}`;
  const second = secondAtTurn(knot, before, plan);
  if (second !== '')
    return `Tie ${second}, a ${does} One ended the last row, this one starts the new row.`;
  return `Tie the edge knot at the start of the row, a ${does}`;
}

/** Names a first knot that is the second of two edge knots at a turn; '' when it is not. */
function secondAtTurn(knot: KnotReading, before: KnotBefore | null, plan: Plan): string {
  const starts = knot.place === 'first' || knot.place === 'only';
  if (!starts || before === null || changesPlaces(knot.kind)) return '';
  const same = before.held === stringIndex(plan.strings).get(knot.held.id);
  return same && before.kind === knot.kind ? 'the second edge knot at this turn' : '';
}

function changePart(
  knots: readonly KnotReading[],
  at: number,
  before: KnotBefore | null,
  plan: Plan,
): InstructionPart {
  const knot = knots[at] as KnotReading;
  const words = changeInWords(knot, plan, streakFrom(knots, at));
  const second = secondAtTurn(knot, before, plan);
  const edge = isEdgeKnot(knot)
    ? second !== ''
      ? ` It is ${second}: one ended the last row, this one starts the new row.`
      : ` It is the edge knot at the ${knot.place === 'last' ? 'end' : 'start'} of the row: ${halvesInWords(knot.kind)}.`
    : '';
  return {
    kind: 'change',
    text: words.text + edge,
    substeps: words.substeps,
    cases: words.cases,
    columns: { first: knot.column, last: knot.column },
    steps: knot.steps,
  };
}

/**
 * How many changes follow each other knot by knot from here on, this one included; 1 within such
 * a streak, which is named where it begins.
 */
function streakFrom(knots: readonly KnotReading[], at: number): number {
  const changes = (i: number): boolean => (knots[i]?.change?.oldLead ?? null) !== null;
  if (!changes(at) || changes(at - 1)) return 1;
  let end = at + 1;
  while (changes(end)) end++;
  return end - at;
}

/** Whether the knot after this one only goes on with the same. */
function goesOn(knots: readonly KnotReading[], at: number): boolean {
  const knot = knots[at] as KnotReading;
  const next = knots[at + 1];
  return (
    next !== undefined &&
    next.change === null &&
    next.kind === knot.kind &&
    !isEdgeKnot(next) &&
    Math.abs(next.column - knot.column) === 1
  );
}

function runPart(
  first: KnotReading,
  last: KnotReading,
  knots: number,
  steps: InstructionPart['steps'],
): InstructionPart {
  const lead = printable(first.tying.id);
  const halves = changesPlaces(first.kind) ? '' : `: ${halvesInWords(first.kind)}`;
  const columns = { first: first.column, last: last.column };
  if (knots === 1) {
    const held = heldInWords(first.held, first.column);
    return part(
      'knot',
      `Tie a ${first.kind} knot on ${held} with ${lead}${halves}.`,
      columns,
      steps,
    );
  }
  const each = halves === '' ? '' : `${halves} each`;
  const text = `Tie ${first.kind} knots on ${baseStrings(first.column, last.column)} with ${lead}${each} (${count(knots, 'knot')}).`;
  return part('run', text, columns, steps);
}
