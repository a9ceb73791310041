import { halvesOf, startSide } from '../model/knot.js';
import { Op } from '../model/steplist.js';
import type { ThreadString } from '../model/strings.js';
import type { Plan } from '../plan/plan.js';
import type { ChangeReading, KnotReading } from '../plan/reading.js';
import { printable } from '../printable.js';
import { halfHitchInShort } from './half-hitch-words.js';
import { changeFollows } from './neighbours.js';
import * as say from './step-words.js';
import { colourInWords, count, heldInWords, leadInWords, otherSide } from './wording.js';

/** A colour change spelled out, whatever cases meet in it. */
export interface ChangeInWords {
  readonly text: string;
  readonly cases: readonly string[];
  readonly substeps: readonly string[];
}

/**
 * @param knot the first knot of the new lead
 * @param streak how many changes follow each other knot by knot from here on, this one included
 */
export function changeInWords(knot: KnotReading, plan: Plan, streak: number): ChangeInWords {
  const change = knot.change as ChangeReading;
  const held = heldInWords(knot.held, knot.column);
  const cases = casesOf(knot, change, plan, streak);
  return { text: headline(knot, change, held, cases), cases, substeps: substepsOf(knot, plan) };
}

function headline(
  knot: KnotReading,
  change: ChangeReading,
  held: string,
  cases: readonly string[],
): string {
  const fresh = leadInWords(change.newLead);
  if (change.oldLead === null) {
    return `Start with ${fresh} at ${held}, with a ${knot.kind} knot.`;
  }
  const old = leadInWords(change.oldLead);
  const named = cases.length === 0 ? '' : ` (${cases.join('; ')})`;
  return `Colour change at ${held}${named}: from ${old} to ${fresh}, whose first knot is a ${knot.kind} knot.`;
}

const PLACE_NAMES = {
  withinRow: 'within the row',
  afterFirstKnot: 'after the first knot',
  lastKnot: 'at the last knot',
  turn: 'at the turn',
} as const;

/** The cases that meet in a change, each by its name. */
function casesOf(
  knot: KnotReading,
  change: ChangeReading,
  plan: Plan,
  streak: number,
): readonly string[] {
  const cases: string[] = [];
  if (change.place !== null) cases.push(PLACE_NAMES[change.place]);
  const ended = endedIn(knot, plan);
  if (change.firstUse) cases.push(`first use of ${colourInWords(change.newLead)}`);
  if (ended !== null) cases.push(`join: ${printable(ended.id)} has run out`);
  const again = changeFollows(plan, knot.steps.end);
  const ends = knot.place === 'last' || knot.place === 'only';
  if (change.oldLead !== null && again && streak < 3) {
    cases.push(`a single knot of ${colourInWords(change.newLead)}`);
  }
  if (again && ends && change.place === 'lastKnot') {
    cases.push('the colour changes again at the turn after it');
  }
  if (streak >= 3) cases.push(`changes at every knot, for ${streak} knots`);
  if (isFar(change.float)) cases.push('the lead comes back over a float');
  if (change.place !== null && plan.columns === 2) cases.push('a piece two knots wide');
  if (change.place !== null && plan.columns === 1) cases.push('a piece one knot wide');
  return cases;
}

/** Nearer than this, what lies behind the work is no more than a change itself leaves there. */
function isFar(float: ChangeReading['float']): boolean {
  return float !== null && Math.max(float.rows, float.columns) > 1;
}

/** The lead that is finished with this knot, because it has run out. */
function endedIn(knot: KnotReading, plan: Plan): ThreadString | null {
  const { op, a } = plan.steps;
  for (let i = knot.steps.first; i < knot.steps.end; i++) {
    if (op[i] === Op.end) return plan.strings[a[i] as number] ?? null;
  }
  return null;
}

/** Every step of the knot and its change, in order, in words. */
function substepsOf(knot: KnotReading, plan: Plan): string[] {
  const { op, a } = plan.steps;
  const held = heldInWords(knot.held, knot.column);
  const lead = printable(knot.tying.id);
  const side = startSide(knot.kind);
  const substeps: string[] = [];
  const caught = caughtIn(knot, plan);
  let half: 'first' | 'second' = 'first';
  for (let i = knot.steps.first; i < knot.steps.end; i++) {
    const string = plan.strings[a[i] as number];
    const name = string === undefined ? 'the string' : leadInWords(string);
    const id = string === undefined ? 'the string' : printable(string.id);
    switch (op[i]) {
      case Op.takeUp:
        if (caught !== null) substeps.push(asideInWords(caught, knot));
        substeps.push(
          `Bring ${name} up from behind to the ${side} of ${held}.${floatInWords(knot.change, plan.columns)}`,
        );
        break;
      case Op.add:
        if (caught !== null) substeps.push(asideInWords(caught, knot));
        substeps.push(
          `Add ${name} from behind, to the ${side} of ${held}. Leave a tail of about 15 cm at the back; the first knot holds it.`,
        );
        break;
      case Op.layThrough:
        substeps.push(say.layThroughInWords(id, lead));
        break;
      case Op.parkThrough:
        substeps.push(say.parkThroughInWords(id));
        break;
      case Op.parkBehind:
        substeps.push(say.parkBehindInWords(id, held));
        break;
      case Op.parkDown:
        substeps.push(say.parkDownInWords(id));
        break;
      case Op.end:
        substeps.push(say.endInWords(id));
        break;
      case Op.turn:
        substeps.push(say.TURN);
        break;
      case Op.halfForward:
      case Op.halfBackward:
        substeps.push(
          halfHitchInShort(halvesOf(knot.kind)[half === 'first' ? 0 : 1], lead, held, {
            kind: knot.kind,
            half,
          }) + (half === 'second' ? comesOut(knot, held) : ''),
        );
        half = 'second';
        break;
    }
  }
  return substeps;
}

function comesOut(knot: KnotReading, held: string): string {
  const [first, second] = halvesOf(knot.kind);
  const start = startSide(knot.kind);
  return first === second
    ? ` The lead comes out on the ${otherSide(start)} of ${held}.`
    : ` The lead comes back to the ${start} of ${held}.`;
}

/** The old lead that is laid through the new one's first knot. */
function caughtIn(knot: KnotReading, plan: Plan): ThreadString | null {
  const { op, a } = plan.steps;
  for (let i = knot.steps.first; i < knot.steps.end; i++) {
    if (op[i] === Op.layThrough) return plan.strings[a[i] as number] ?? null;
  }
  return null;
}

function asideInWords(old: ThreadString, knot: KnotReading): string {
  const side = knot.direction === 'right' ? 'left' : 'right';
  return `Lay ${leadInWords(old)} aside to the ${side}, over the knots just tied; this knot is going to lock it.`;
}

/** Where the lead comes from and how much lies behind the work. */
function floatInWords(change: ChangeReading | null, columns: number): string {
  const float = change?.float ?? null;
  if (float === null) return '';
  const from =
    float.from.column < 0 || columns === 1
      ? `row ${float.from.row + 1}`
      : `row ${float.from.row + 1} at base string ${float.from.column + 1}`;
  const spans: string[] = [];
  if (float.rows > 0) spans.push(count(float.rows, 'row'));
  if (float.columns > 0) spans.push(count(float.columns, 'knot'));
  if (!isFar(float)) return ` It has rested behind since ${from}.`;
  return ` It has rested behind since ${from}, so its float runs over ${spans.join(' and ')}: keep the float flat behind the work, not tight.`;
}
