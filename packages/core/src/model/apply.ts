import { Fault, faultCode, faultInWords, type StepFault } from './fault.js';
import { Machine } from './machine.js';
import type { State } from './state.js';
import type { Step } from './step.js';
import { StepList } from './steplist.js';
import type { StringId, ThreadString } from './strings.js';

export type ApplyResult =
  | { readonly ok: true; readonly state: State }
  | { readonly ok: false; readonly fault: StepFault };

/**
 * The state in which the base strings hang in front and nothing is tied.
 *
 * @param strings every string the piece will ever have
 * @param hung ids of the base strings, from left to right
 * @throws InputError when a hung string is not in the table, or hung twice
 */
export function startState(strings: readonly ThreadString[], hung: readonly StringId[]): State {
  return new Machine(strings, hung).state();
}

/**
 * Does one step. Pure and total: the state given is left as it is, and whatever the step, the
 * answer is a new state or a located fault, never an exception.
 */
export function apply(state: State, step: Step): ApplyResult {
  const machine = Machine.of(state);
  const list = StepList.from(state.strings, [step]);
  const fault =
    list.length === 0
      ? Fault.unknownStep
      : machine.run(list.op[0] as number, list.a[0] as number, list.b[0] as number);
  if (fault === Fault.none) return { ok: true, state: machine.state() };
  return {
    ok: false,
    fault: { code: faultCode(fault), step, at: state.at, message: faultInWords(fault, step) },
  };
}
