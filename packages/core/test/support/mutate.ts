import fc from 'fast-check';
import type { ParkRoute, Plan, Step, StringId } from '../../src/index.js';
import { StepList } from '../../src/index.js';

export interface Mutant {
  readonly plan: Plan;
  /** Steps touched, as indexes into the plan before. */
  readonly touched: readonly number[];
  readonly what: string;
}

const ROUTES: readonly ParkRoute[] = ['through', 'behind', 'down'];

/** One random change to one step of a plan, of any sort a slip of the hand or pen can make. */
export const anyMutation = fc.record({
  sort: fc.constantFrom(
    'delete',
    'deleteKnot',
    'duplicate',
    'duplicateKnot',
    'swap',
    'way',
    'bothWays',
    'kind',
    'tying',
    'tyingBoth',
    'held',
    'heldBoth',
    'route',
    'slot',
    'insertTurn',
    'insertPark',
    'insertEnd',
    'insertTakeUp',
    'insertLay',
  ),
  at: fc.nat(),
  other: fc.nat(),
});

export type Mutation = typeof anyMutation extends fc.Arbitrary<infer T> ? T : never;

export function mutate(plan: Plan, mutation: Mutation): Mutant | null {
  const steps = [...plan.steps];
  const i = mutation.at % steps.length;
  const pick = <T>(items: readonly T[]): T => items[mutation.other % items.length] as T;
  const anyId = (): StringId => pick(plan.strings).id;
  const step = steps[i] as Step;
  const next = steps[i + 1];
  const isHalf = step.do === 'halfHitch';
  const wholeKnot =
    isHalf && next?.do === 'halfHitch' && next.held === step.held && next.tying === step.tying;
  const flip = (way: 'forward' | 'backward') => (way === 'forward' ? 'backward' : 'forward');
  const made = (changed: Step[], touched: number[]): Mutant => ({
    plan: { ...plan, steps: StepList.from(plan.strings, changed) },
    touched,
    what: `${mutation.sort} at step ${i}: ${JSON.stringify(step)}`,
  });
  const replaced = (...news: Step[]): Mutant =>
    made([...steps.slice(0, i), ...news, ...steps.slice(i + news.length)], [i]);
  const inserted = (fresh: Step): Mutant =>
    made([...steps.slice(0, i), fresh, ...steps.slice(i)], [i]);

  switch (mutation.sort) {
    case 'delete':
      return made([...steps.slice(0, i), ...steps.slice(i + 1)], [i]);
    case 'deleteKnot':
      return wholeKnot ? made([...steps.slice(0, i), ...steps.slice(i + 2)], [i, i + 1]) : null;
    case 'duplicate':
      return inserted(step);
    case 'duplicateKnot':
      return wholeKnot
        ? made([...steps.slice(0, i), step, next, ...steps.slice(i)], [i, i + 1])
        : null;
    case 'swap':
      return next === undefined
        ? null
        : made([...steps.slice(0, i), next, step, ...steps.slice(i + 2)], [i, i + 1]);
    case 'way':
      return isHalf ? replaced({ ...step, way: flip(step.way) }) : null;
    case 'bothWays':
      return wholeKnot
        ? replaced({ ...step, way: flip(step.way) }, { ...next, way: flip(next.way) })
        : null;
    case 'kind':
      return wholeKnot ? replaced(step, { ...next, way: flip(next.way) }) : null;
    case 'tying':
      return isHalf ? replaced({ ...step, tying: anyId() }) : null;
    case 'tyingBoth':
      return wholeKnot ? replaced({ ...step, tying: anyId() }, { ...next, tying: anyId() }) : null;
    case 'held':
      return isHalf ? replaced({ ...step, held: anyId() }) : null;
    case 'heldBoth':
      return wholeKnot ? replaced({ ...step, held: anyId() }, { ...next, held: anyId() }) : null;
    case 'route':
      return step.do === 'park' ? replaced({ ...step, route: pick(ROUTES) }) : null;
    case 'slot':
      return step.do === 'add' || step.do === 'takeUp'
        ? replaced({ ...step, slot: mutation.other % (plan.columns + 3) })
        : null;
    case 'insertTurn':
      return inserted({ do: 'turn' });
    case 'insertPark':
      return inserted({ do: 'park', string: anyId(), route: pick(ROUTES) });
    case 'insertEnd': {
      // A lead finished too soon shows where it is next wanted.
      const string = anyId();
      const wanted = steps.findIndex((s, j) => j >= i && s.do === 'takeUp' && s.string === string);
      const mutant = inserted({ do: 'end', string });
      return wanted < 0 ? mutant : { ...mutant, touched: [i, wanted] };
    }
    case 'insertTakeUp':
      return inserted({
        do: mutation.other % 2 === 0 ? 'takeUp' : 'add',
        string: anyId(),
        slot: mutation.other % (plan.columns + 2),
      });
    case 'insertLay':
      return inserted({ do: 'layThrough', string: anyId() });
  }
}
