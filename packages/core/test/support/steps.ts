import fc from 'fast-check';
import type { State, Step, ThreadString } from '../../src/index.js';
import { startState } from '../../src/index.js';

export const STRINGS: readonly ThreadString[] = [
  ...Array.from({ length: 5 }, (_, i) => ({
    id: `B${i + 1}`,
    role: 'base' as const,
    colour: '#eeeeee',
    name: '',
  })),
  ...Array.from({ length: 4 }, (_, i) => ({
    id: `L${i + 1}`,
    role: 'lead' as const,
    colour: `#00000${i}`,
    name: '',
  })),
];

export const HUNG = ['B1', 'B2', 'B3', 'B4', 'B5'];

export const start = (): State => startState(STRINGS, HUNG);

const anyString = fc.constantFrom(...STRINGS.map((string) => string.id), 'nobody');

/** Steps of every sort, most of which cannot be done where they come. */
export const anyStep: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.record({
      do: fc.constant('halfHitch' as const),
      way: fc.constantFrom('forward' as const, 'backward' as const),
      tying: anyString,
      held: anyString,
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant('layThrough' as const), string: anyString }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant('park' as const),
      string: anyString,
      route: fc.constantFrom('through' as const, 'behind' as const, 'down' as const),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constantFrom('takeUp' as const, 'add' as const),
      string: anyString,
      slot: fc.oneof(fc.integer({ min: -2, max: 11 }), fc.constant(0.5)),
    }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('end' as const), string: anyString }) },
  { weight: 1, arbitrary: fc.constant({ do: 'turn' as const }) },
);

/** Steps that can be done one after another: from any steps, those that the state allows. */
export function possibleNext(state: State): Step[] {
  const steps: Step[] = [{ do: 'turn' }];
  const { front, halfMade } = state;
  if (halfMade !== null) {
    for (const way of ['forward', 'backward'] as const) {
      steps.push({ do: 'halfHitch', way, tying: halfMade.tying, held: halfMade.held });
    }
    for (const string of front) steps.push({ do: 'layThrough', string });
  }
  for (let slot = 0; slot + 1 < front.length; slot++) {
    const left = front[slot] as string;
    const right = front[slot + 1] as string;
    steps.push({ do: 'halfHitch', way: 'forward', tying: left, held: right });
    steps.push({ do: 'halfHitch', way: 'backward', tying: right, held: left });
  }
  for (const string of front) {
    for (const route of ['through', 'behind', 'down'] as const) {
      steps.push({ do: 'park', string, route });
    }
  }
  for (const { id } of STRINGS) {
    for (const slot of [0, 2, front.length]) {
      steps.push({ do: 'add', string: id, slot }, { do: 'takeUp', string: id, slot });
    }
  }
  return steps;
}
