import fc from 'fast-check';
import {
  apply,
  BARE,
  type DiagonalPattern,
  type DiagonalPicture,
  type DiagonalPlan,
  knotIndex,
  knotsAcross,
  knotsInRow,
  planDiagonal,
  type Step,
  StepList,
  slotOfPlace,
  startState,
} from '../../src/index.js';

/** One change to the steps of a plan, as a slip of the pen makes it. */
export type Change =
  | 'remove'
  | 'double'
  | 'other-way'
  | 'other-tying'
  | 'other-held'
  | 'swap-next'
  | 'remove-knot'
  | 'double-knot'
  | 'other-kind'
  | 'extra-turn'
  | 'park';

export const CHANGES: readonly Change[] = [
  'remove',
  'double',
  'other-way',
  'other-tying',
  'other-held',
  'swap-next',
  'remove-knot',
  'double-knot',
  'other-kind',
  'extra-turn',
  'park',
];

export interface Mutant {
  readonly pattern: DiagonalPattern;
  readonly plan: DiagonalPlan;
  readonly change: Change;
  /** The row of the changed step, from 0. */
  readonly row: number;
}

export function anyMutant(pattern: fc.Arbitrary<DiagonalPattern>): fc.Arbitrary<Mutant> {
  return fc
    .tuple(pattern, fc.constantFrom(...CHANGES), fc.nat(), fc.nat())
    .filter(([given]) => planDiagonal(given).steps.length > 1)
    .map(([given, change, where, which]) => mutated(given, change, where, which));
}

function mutated(pattern: DiagonalPattern, change: Change, where: number, which: number): Mutant {
  const plan = planDiagonal(pattern);
  const steps = [...plan.steps];
  let i = where % steps.length;
  const wholeKnot = change === 'remove-knot' || change === 'double-knot' || change === 'other-kind';
  if (wholeKnot) {
    const isFirst = (k: number) =>
      steps[k]?.do === 'halfHitch' &&
      steps.slice(0, k).filter((step) => step.do === 'halfHitch').length % 2 === 0;
    for (let tries = 0; !isFirst(i) && tries < steps.length; tries++) i = (i + 1) % steps.length;
    if (!isFirst(i)) i = 0;
  }
  const row = steps.slice(0, i + 1).filter((step) => step.do === 'turn').length;
  const changed = changedSteps(steps, change, i, plan.hung[which % plan.hung.length] as string);
  return {
    pattern,
    change,
    row: steps[i]?.do === 'turn' ? row - 1 : row,
    plan: { ...plan, steps: StepList.from(plan.strings, changed) },
  };
}

function changedSteps(steps: readonly Step[], change: Change, i: number, other: string): Step[] {
  const before = steps.slice(0, i);
  const after = steps.slice(i + 1);
  const step = steps[i] as Step;
  const next = after[0] as Step;
  switch (change) {
    case 'remove':
      return [...before, ...after];
    case 'double':
      return [...before, step, step, ...after];
    case 'other-way':
      return [...before, otherWay(step), ...after];
    case 'other-tying':
      return [...before, step.do === 'halfHitch' ? { ...step, tying: other } : step, ...after];
    case 'other-held':
      return [...before, step.do === 'halfHitch' ? { ...step, held: other } : step, ...after];
    case 'swap-next':
      return after.length === 0 ? [...steps] : [...before, next, step, ...after.slice(1)];
    case 'remove-knot':
      return [...before, ...after.slice(1)];
    case 'double-knot':
      return [...before, step, next, step, next, ...after.slice(1)];
    case 'other-kind':
      return [...before, step, otherWay(next), ...after.slice(1)];
    case 'extra-turn':
      return [...before, step, { do: 'turn' }, ...after];
    case 'park':
      return [...before, step, { do: 'park', string: other, route: 'behind' }, ...after];
  }
}

function otherWay(step: Step): Step {
  if (step.do !== 'halfHitch') return step;
  return { ...step, way: step.way === 'forward' ? 'backward' : 'forward' };
}

/**
 * Whether steps knot a picture, asked in the plainest way: every step can be done, every knot stands
 * in a place of its row that is still free, and shows the colour that is wanted there.
 */
export function knotsPlainly(plan: DiagonalPlan, picture: DiagonalPicture): boolean {
  let state = startState(plan.strings, plan.hung);
  const seen = new Array<string>(picture.rows * knotsAcross(picture)).fill('');
  let row = 0;
  for (const step of plan.steps) {
    if (step.do !== 'turn' && step.do !== 'halfHitch') return false;
    const second = state.halfMade !== null;
    const result = apply(state, step);
    if (!result.ok) return false;
    state = result.state;
    if (step.do === 'turn') {
      row++;
      continue;
    }
    if (!second) continue;
    if (row >= picture.rows) return false;
    const slot = Math.min(state.front.indexOf(step.tying), state.front.indexOf(step.held));
    const place = (slot - slotOfPlace(picture, row, 0)) / 2;
    if (!Number.isInteger(place) || place < 0 || place >= knotsInRow(picture, row)) return false;
    const cell = knotIndex(picture, row, place);
    if (seen[cell] !== '') return false;
    seen[cell] = plan.strings.find(({ id }) => id === step.tying)?.colour ?? '';
  }
  // A turn after the last knot changes nothing.
  if (state.halfMade !== null) return false;
  return [...picture.cells].every((cell, i) =>
    cell === BARE ? seen[i] === '' : seen[i] === picture.colours[cell]?.hex,
  );
}
