import { InputError } from '../errors.js';
import { Fault, faultInWords } from '../model/fault.js';
import { type HalfWay, kindOf } from '../model/knot.js';
import { Machine } from '../model/machine.js';
import { Op } from '../model/steplist.js';
import { directionOf, type Plan } from '../plan/plan.js';

/**
 * Prints what a plan's steps do as lines of JSON, one for each knot, with their line ends:
 * where the knot is, which strings tie it, and where every string is after it. Rows and columns
 * are counted from 1 at the top left of the finished work. The lines come from running the steps
 * once through the state machine and from nothing else.
 *
 * @throws InputError at the first step that cannot be done; the knots before it are printed
 */
export function* printTrace(plan: Plan): Generator<string, void, undefined> {
  const { steps, strings } = plan;
  const { op, a, b } = steps;
  const machine = new Machine(strings, plan.hung);
  const ids = strings.map((string) => JSON.stringify(string.id));
  const colours = strings.map((string) => JSON.stringify(string.colour));
  let first: HalfWay | null = null;
  // Most knots leave the back as it is, so what is parked is put into words only after a change.
  let parked = '';
  let parkedIsOld = true;
  const run = (i: number): void => {
    const fault = machine.run(op[i] as number, a[i] as number, b[i] as number);
    if (fault !== Fault.none) {
      throw new InputError(
        'step-cannot-be-done',
        faultInWords(fault, steps.at(i)),
        { row: machine.row + 1, path: `step ${i + 1}` },
        'Verify the plan to see where it first goes wrong.',
      );
    }
    if (op[i] !== Op.halfForward && op[i] !== Op.halfBackward) parkedIsOld = true;
  };
  for (let i = 0; i < steps.length; i++) {
    run(i);
    if (op[i] !== Op.halfForward && op[i] !== Op.halfBackward) continue;
    const way: HalfWay = op[i] === Op.halfForward ? 'forward' : 'backward';
    if (first === null) {
      first = way;
      continue;
    }
    const [tying, held] = [a[i] as number, b[i] as number];
    // A lead locked in this knot leaves after it, and a used-up one is finished then.
    while (op[i + 1] === Op.parkThrough || op[i + 1] === Op.end) run(++i);
    if (parkedIsOld) parked = parkedNow(machine);
    parkedIsOld = false;
    const place = `"row":${machine.row + 1},"column":${machine.column + 1},"direction":"${directionOf(plan.start, machine.row)}"`;
    const knot = `"kind":"${kindOf(first, way)}","tying":${ids[tying]},"held":${ids[held]},"colour":${colours[tying]}`;
    yield `{${place},${knot},"front":[${frontNow(machine, ids)}],"parked":[${parked}]}\n`;
    first = null;
  }
}

function frontNow({ front, frontLength }: Machine, ids: readonly string[]): string {
  let text = '';
  for (let slot = 0; slot < frontLength; slot++) {
    text += slot === 0 ? ids[front[slot] as number] : `,${ids[front[slot] as number]}`;
  }
  return text;
}

function parkedNow(machine: Machine): string {
  return machine
    .parkedStrings()
    .map(({ string, at, how }) =>
      JSON.stringify({ string, row: at.row + 1, column: at.column + 1, how }),
    )
    .join(',');
}
