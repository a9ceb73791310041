// Takes Vitest's place while mutants are tried: the same words and Vitest's own `expect`, but the
// tests are only collected, so that the runner beside this can run any of them, as often as it likes.
import {
  ASYMMETRIC_MATCHERS_OBJECT,
  chai,
  GLOBAL_EXPECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from '@vitest/expect';

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const expect = Object.assign(
  (value, message) => chai.expect(value, message),
  chai.expect,
  globalThis[ASYMMETRIC_MATCHERS_OBJECT],
);
globalThis[GLOBAL_EXPECT] = expect;
setState({ assertionCalls: 0, isExpectingAssertions: false, environment: 'node' }, expect);

/** Every test so far: its name, with those of its groups, and what it does. */
export const collected = [];
const groups = [];

export function describe(name, define) {
  groups.push(name);
  define();
  groups.pop();
}

export function it(name, run) {
  collected.push({ name: [...groups, name].join(' › '), run });
}

it.each = (cases) => (name, run) => {
  cases.forEach((given, number) => {
    it(`${name} (${number + 1})`, () => (Array.isArray(given) ? run(...given) : run(given)));
  });
};
