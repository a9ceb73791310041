import { type HalfWay, kindOf } from '../model/knot.js';
import type { Step } from '../model/step.js';
import { Op, stringIndex } from '../model/steplist.js';
import type { StringId, ThreadString } from '../model/strings.js';
import type { Plan } from '../plan/plan.js';
import { printable } from '../printable.js';
import { type HalfPlace, halfHitchInWords } from './half-hitch-words.js';
import { colourInWords, heldInWords, leadInWords } from './wording.js';

/**
 * One step in words, complete enough to do it with thread in hand.
 *
 * @param place for a half hitch, the knot it belongs to; `planStepInWords` finds it out
 */
export function stepInWords(step: Step, plan: Plan, place: HalfPlace | null = null): string {
  switch (step.do) {
    case 'halfHitch':
      return halfHitchInWords(
        step.way,
        printable(step.tying),
        stringInWords(step.held, plan),
        place,
      );
    case 'layThrough':
      return layThroughInWords(leadOf(step.string, plan), null);
    case 'park':
      switch (step.route) {
        case 'through':
          return parkThroughInWords(leadOf(step.string, plan));
        case 'behind':
          return parkBehindInWords(leadOf(step.string, plan), null);
        case 'down':
          return parkDownInWords(leadOf(step.string, plan));
      }
      break;
    case 'takeUp':
      return `Bring ${leadOf(step.string, plan)} up from behind to the front. It goes to place ${step.slot + 1} from the left. Keep the float behind the work flat, not tight.`;
    case 'add':
      return `Add ${leadOf(step.string, plan)} from behind as a new lead, at place ${step.slot + 1} from the left. Leave its tail at the back.`;
    case 'end':
      return endInWords(leadOf(step.string, plan));
    case 'turn':
      return TURN;
  }
  return 'There is no such step.';
}

/**
 * The step of a plan at an index from 0, in words. Which half of which knot a half hitch is,
 * is read from the steps beside it.
 */
export function planStepInWords(plan: Plan, index: number): string {
  return stepInWords(plan.steps.at(index), plan, halfPlaceOf(plan, index));
}

/** The knot to which the half hitch at an index belongs; null for other steps. */
export function halfPlaceOf(plan: Pick<Plan, 'steps'>, index: number): HalfPlace | null {
  const { op, a, b, length } = plan.steps;
  const isHalf = (i: number): boolean => op[i] === Op.halfForward || op[i] === Op.halfBackward;
  // Between the halves of a knot strings are laid through it or leave the front; none comes in.
  const between = (i: number): boolean =>
    op[i] === Op.layThrough || op[i] === Op.parkBehind || op[i] === Op.parkDown;
  if (index < 0 || index >= length || !isHalf(index)) return null;
  const sameKnot = (i: number): boolean => isHalf(i) && a[i] === a[index] && b[i] === b[index];
  let before = 0;
  let partner = -1;
  for (let i = index - 1; i >= 0 && (sameKnot(i) || between(i)); i--) {
    if (!sameKnot(i)) continue;
    if (before === 0) partner = i;
    before++;
  }
  if (before % 2 === 1) {
    return {
      kind: kindOf(wayOf(op[partner] as number), wayOf(op[index] as number)),
      half: 'second',
    };
  }
  for (let i = index + 1; i < length && (sameKnot(i) || between(i)); i++) {
    if (!sameKnot(i)) continue;
    return { kind: kindOf(wayOf(op[index] as number), wayOf(op[i] as number)), half: 'first' };
  }
  return null;
}

function wayOf(op: number): HalfWay {
  return op === Op.halfForward ? 'forward' : 'backward';
}

export const TURN =
  'Turn: from here the row goes the other way. The work itself is not turned over; its front stays towards you.';

export function layThroughInWords(old: string, lead: string | null): string {
  const under = lead === null ? 'under the tying lead' : `under ${lead}`;
  return `Lay ${old} ${under}, through the middle of this knot, between its two halves.`;
}

export function parkThroughInWords(old: string): string {
  return `The second half locks ${old}. Take it to the back and let it hang there.`;
}

export function parkBehindInWords(old: string, held: string | null): string {
  const where = held === null ? 'the edge string' : held;
  return `Pass ${old} behind ${where}, under where this last knot comes, and leave it at the back. Don't catch it in the knot: caught, it would stick out at the side.`;
}

export function parkDownInWords(old: string): string {
  return `Take ${old} down and behind the work. Check that the last knot still lies level.`;
}

export function endInWords(old: string): string {
  return `${old.charAt(0).toUpperCase()}${old.slice(1)} has run out: leave its end at the back, about 15 cm long, to finish later.`;
}

function stringOf(id: StringId, plan: Plan): ThreadString | undefined {
  const place = stringIndex(plan.strings).get(id);
  return place === undefined ? undefined : plan.strings[place];
}

function stringInWords(id: StringId, plan: Plan): string {
  const string = stringOf(id, plan);
  return string === undefined
    ? `string ${printable(id)}`
    : heldInWords(string, plan.hung.indexOf(id));
}

function leadOf(id: StringId, plan: Plan): string {
  const string = stringOf(id, plan);
  if (string === undefined) return `string ${printable(id)}`;
  return string.role === 'lead' ? leadInWords(string) : stringInWords(id, plan);
}

/** A lead's whole description for the list of strings. */
export function leadInFull(string: ThreadString): string {
  const name = colourInWords(string);
  return name === string.colour
    ? `${printable(string.id)}: ${name}`
    : `${printable(string.id)}: ${name} (${string.colour})`;
}
