import type { Cell } from './state.js';
import type { Step } from './step.js';

/** Why a step cannot be done, in one number for hot loops; 0 means that it was done. */
export const Fault = {
  none: 0,
  unknownStep: 1,
  unknownString: 2,
  sameString: 3,
  tyingNotInFront: 4,
  heldNotInFront: 5,
  wrongSide: 6,
  notSideBySide: 7,
  halfMadeKnot: 8,
  noHalfMadeKnot: 9,
  notInFront: 10,
  partOfKnot: 11,
  alreadyLaid: 12,
  notBesideKnot: 13,
  notLocked: 14,
  lockedGoesThrough: 15,
  laidNotLocked: 16,
  alreadyInFront: 17,
  ended: 18,
  neverAdded: 19,
  addedBefore: 20,
  noSuchSlot: 21,
} as const;
export type Fault = (typeof Fault)[keyof typeof Fault];

const CODES = Object.keys(Fault) as (keyof typeof Fault)[];

export type FaultCode = keyof typeof Fault;

export function faultCode(fault: Fault): FaultCode {
  return CODES[fault] ?? 'unknownStep';
}

/** A step that cannot be done: what, where, and why. */
export interface StepFault {
  readonly code: FaultCode;
  readonly step: Step;
  /** The place worked last before the step; rows and columns from 0. */
  readonly at: Cell;
  readonly message: string;
}

/** The reason in words, as a sentence without the place. */
export function faultInWords(fault: Fault, step: Step): string {
  const subject = 'string' in step ? step.string : 'tying' in step ? step.tying : '';
  const held = 'held' in step ? step.held : '';
  const slot = 'slot' in step ? step.slot + 1 : 0;
  switch (fault) {
    case Fault.none:
      return 'The step was done.';
    case Fault.unknownStep:
      return 'There is no such step.';
    case Fault.unknownString:
      return 'The step names a string that the piece does not have.';
    case Fault.sameString:
      return `String ${subject} cannot be tied onto itself.`;
    case Fault.tyingNotInFront:
      return `String ${subject} is not in front, so it cannot tie.`;
    case Fault.heldNotInFront:
      return `String ${held} is not in front, so nothing can be tied onto it.`;
    case Fault.wrongSide: {
      const side = 'way' in step && step.way === 'forward' ? 'left' : 'right';
      return `A ${'way' in step ? step.way : ''} half hitch starts on the ${side} of ${held}, but ${subject} hangs on its other side.`;
    }
    case Fault.notSideBySide:
      return `Strings ${subject} and ${held} do not hang side by side.`;
    case Fault.halfMadeKnot:
      return 'The knot begun before is only half made.';
    case Fault.noHalfMadeKnot:
      return `There is no half-made knot to lay ${subject} through.`;
    case Fault.notInFront:
      return `String ${subject} is not in front.`;
    case Fault.partOfKnot:
      return `String ${subject} is part of the half-made knot.`;
    case Fault.alreadyLaid:
      return 'Another string already lies through the half-made knot.';
    case Fault.notBesideKnot:
      return `String ${subject} does not hang beside the half-made knot.`;
    case Fault.notLocked:
      return `String ${subject} does not lie through the knot just tied.`;
    case Fault.lockedGoesThrough:
      return `String ${subject} lies through the knot just tied, so it goes to the back from there.`;
    case Fault.laidNotLocked:
      return `String ${subject} lies through a knot whose second half is not tied yet.`;
    case Fault.alreadyInFront:
      return `String ${subject} is in front already.`;
    case Fault.ended:
      return `String ${subject} was finished before.`;
    case Fault.neverAdded:
      return `String ${subject} is not at the back: it has not been added yet.`;
    case Fault.addedBefore:
      return `String ${subject} was added before; take it up instead.`;
    case Fault.noSuchSlot:
      return `There is no place ${slot} in front for ${subject}.`;
  }
}
