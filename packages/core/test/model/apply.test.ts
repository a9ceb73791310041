import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  apply,
  Cursor,
  changesPlaces,
  halvesOf,
  KNOT_KINDS,
  kindOf,
  mirrorKnot,
  type State,
  type Step,
  StepList,
  startSide,
} from '../../src/index.js';
import { anyStep, HUNG, possibleNext, STRINGS, start } from '../support/steps.js';

function run(state: State, steps: readonly Step[]): State {
  return steps.reduce((now, step) => {
    const result = apply(now, step);
    return result.ok ? result.state : now;
  }, state);
}

/** Walks where the numbers lead, taking only steps that can be done. */
function walk(choices: readonly number[]): { steps: Step[]; states: State[] } {
  const steps: Step[] = [];
  const states = [start()];
  for (const choice of choices) {
    const now = states[states.length - 1] as State;
    const options = possibleNext(now).filter((step) => apply(now, step).ok);
    const step = options[choice % options.length] as Step;
    const result = apply(now, step);
    if (!result.ok) continue;
    steps.push(step);
    states.push(result.state);
  }
  return { steps, states };
}

const anyWalk = fc.array(fc.nat(), { maxLength: 60 }).map(walk);

describe('apply', () => {
  it('is total: any steps give a state or a located fault, and leave the state given alone', () => {
    fc.assert(
      fc.property(fc.array(anyStep, { maxLength: 80 }), (steps) => {
        let state = start();
        for (const step of steps) {
          const before = JSON.stringify(state);
          const result = apply(state, step);
          expect(JSON.stringify(state)).toBe(before);
          if (result.ok) {
            state = result.state;
          } else {
            expect(result.fault.message).toMatch(/\.$/);
            expect(result.fault.at).toEqual(state.at);
            expect(result.fault.code).not.toBe('none');
          }
        }
      }),
    );
  });

  it('loses no string and makes none up', () => {
    fc.assert(
      fc.property(fc.array(anyStep, { maxLength: 120 }), (steps) => {
        const added = new Set<string>(HUNG);
        let state = start();
        for (const step of steps) {
          const result = apply(state, step);
          if (!result.ok) continue;
          if (step.do === 'add') added.add(step.string);
          state = result.state;
          const everywhere = [
            ...state.front,
            ...state.parked.map((parked) => parked.string),
            ...state.ended,
          ];
          expect([...everywhere].sort()).toEqual([...added].sort());
        }
      }),
    );
  });

  it('keeps the front as long as the last add, end, park or take-up left it', () => {
    fc.assert(
      fc.property(anyWalk, ({ steps, states }) => {
        steps.forEach((step, i) => {
          const before = states[i] as State;
          const after = states[i + 1] as State;
          const wasInFront = 'string' in step && before.front.includes(step.string);
          const change =
            step.do === 'add' || step.do === 'takeUp'
              ? 1
              : step.do === 'park' || (step.do === 'end' && wasInFront)
                ? -1
                : 0;
          expect(after.front.length - before.front.length).toBe(change);
        });
      }),
    );
  });

  it('moves only the two strings of a knot, and only by a forward or backward knot', () => {
    fc.assert(
      fc.property(anyWalk, ({ steps, states }) => {
        steps.forEach((step, i) => {
          if (step.do !== 'halfHitch') return;
          const before = states[i] as State;
          const after = states[i + 1] as State;
          const second = before.halfMade;
          const swapped = second !== null && changesPlaces(kindOf(second.first, step.way));
          const expected = before.front.map((id) =>
            !swapped ? id : id === step.tying ? step.held : id === step.held ? step.tying : id,
          );
          expect(after.front).toEqual(expected);
        });
      }),
    );
  });

  it('mirrors every state when the plan is mirrored', () => {
    const mirrorStep = (step: Step, front: number): Step => {
      if (step.do === 'halfHitch') {
        return { ...step, way: step.way === 'forward' ? 'backward' : 'forward' };
      }
      if (step.do === 'add' || step.do === 'takeUp') return { ...step, slot: front - step.slot };
      return step;
    };
    fc.assert(
      fc.property(anyWalk, ({ steps, states }) => {
        let mirrored = run({ ...start(), front: [...HUNG].reverse() }, []);
        steps.forEach((step, i) => {
          const result = apply(mirrored, mirrorStep(step, (states[i] as State).front.length));
          expect(result.ok).toBe(true);
          if (!result.ok) return;
          mirrored = result.state;
          const original = states[i + 1] as State;
          expect([...mirrored.front].reverse()).toEqual(original.front);
          expect(mirrored.parked.map((p) => p.string)).toEqual(
            original.parked.map((p) => p.string),
          );
        });
      }),
    );
  });

  it('names the rule a step breaks', () => {
    const withLead = run(start(), [{ do: 'add', string: 'L1', slot: 1 }]);
    const half: Step = { do: 'halfHitch', way: 'forward', tying: 'L1', held: 'B2' };
    const faultOf = (state: State, step: Step): string => {
      const result = apply(state, step);
      return result.ok ? 'none' : result.fault.code;
    };
    const begun = run(withLead, [half]);
    expect(faultOf(withLead, { ...half, held: 'B3' })).toBe('notSideBySide');
    expect(faultOf(withLead, { ...half, held: 'B1' })).toBe('wrongSide');
    expect(faultOf(withLead, { ...half, held: 'L1' })).toBe('sameString');
    expect(faultOf(withLead, { ...half, tying: 'L2' })).toBe('tyingNotInFront');
    expect(faultOf(withLead, { ...half, held: 'L2' })).toBe('heldNotInFront');
    expect(faultOf(withLead, { ...half, held: 'nobody' })).toBe('unknownString');
    expect(faultOf(begun, { do: 'turn' })).toBe('halfMadeKnot');
    expect(faultOf(begun, { do: 'park', string: 'L1', route: 'down' })).toBe('partOfKnot');
    expect(faultOf(begun, { do: 'layThrough', string: 'B4' })).toBe('notBesideKnot');
    expect(faultOf(withLead, { do: 'layThrough', string: 'B1' })).toBe('noHalfMadeKnot');
    expect(faultOf(withLead, { do: 'park', string: 'L1', route: 'through' })).toBe('notLocked');
    expect(faultOf(withLead, { do: 'add', string: 'L1', slot: 0 })).toBe('alreadyInFront');
    expect(faultOf(withLead, { do: 'takeUp', string: 'L2', slot: 0 })).toBe('neverAdded');
    expect(faultOf(withLead, { do: 'add', string: 'L2', slot: 99 })).toBe('noSuchSlot');
    const laid = run(begun, [{ do: 'layThrough', string: 'B1' }]);
    expect(faultOf(laid, { do: 'park', string: 'B1', route: 'behind' })).toBe('laidNotLocked');
    expect(faultOf(laid, { do: 'layThrough', string: 'B1' })).toBe('alreadyLaid');
    const locked = run(laid, [half]);
    expect(faultOf(locked, { do: 'park', string: 'B1', route: 'down' })).toBe('lockedGoesThrough');
    const ended = run(withLead, [{ do: 'end', string: 'L1' }]);
    expect(faultOf(ended, { do: 'takeUp', string: 'L1', slot: 0 })).toBe('ended');
    const parked = run(withLead, [{ do: 'park', string: 'L1', route: 'down' }]);
    expect(faultOf(parked, { do: 'add', string: 'L1', slot: 0 })).toBe('addedBefore');
  });
});

describe('the four knots', () => {
  // Design of the knots; clove and cow hitch as in Ashley 1944, nos 1662-1671 and 1184.
  it.each([
    ['forward', 'left', true, 'backward'],
    ['backward', 'right', true, 'forward'],
    ['forward-backward', 'left', false, 'backward-forward'],
    ['backward-forward', 'right', false, 'forward-backward'],
  ] as const)('%s starts on the %s; changes places: %s', (kind, side, swaps, mirror) => {
    expect(startSide(kind)).toBe(side);
    expect(changesPlaces(kind)).toBe(swaps);
    expect(mirrorKnot(kind)).toBe(mirror);
    const [first, second] = halvesOf(kind);
    expect(kindOf(first, second)).toBe(kind);
    const slot = side === 'left' ? 2 : 3;
    const after = run(start(), [
      { do: 'add', string: 'L1', slot },
      { do: 'halfHitch', way: first, tying: 'L1', held: 'B3' },
      { do: 'halfHitch', way: second, tying: 'L1', held: 'B3' },
    ]);
    const leadSlot = after.front.indexOf('L1');
    expect(leadSlot).toBe(swaps ? (side === 'left' ? 3 : 2) : slot);
    expect(after.halfMade).toBeNull();
  });

  it('lists each once', () => {
    expect(new Set(KNOT_KINDS).size).toBe(4);
  });
});

describe('cursor', () => {
  it('undoes a step to the very state before it, wherever it is sent', () => {
    fc.assert(
      fc.property(anyWalk, fc.array(fc.nat({ max: 70 }), { maxLength: 12 }), (walked, visits) => {
        const cursor = new Cursor(StepList.from(STRINGS, walked.steps), HUNG);
        for (const visit of visits) {
          const at = cursor.seek(visit);
          expect(at).toBe(Math.min(visit, walked.steps.length));
          expect(cursor.state).toEqual(walked.states[at]);
          if (at === 0) continue;
          cursor.seek(at - 1);
          expect(cursor.state).toEqual(walked.states[at - 1]);
        }
      }),
    );
  });

  it('goes back over the states it keeps in a long list', () => {
    const steps: Step[] = [{ do: 'add', string: 'L1', slot: 1 }];
    for (let i = 0; i < 3000; i++) {
      const way = i % 2 === 0 ? 'forward' : 'backward';
      const half: Step = { do: 'halfHitch', way, tying: 'L1', held: 'B2' };
      steps.push(half, half);
    }
    const cursor = new Cursor(StepList.from(STRINGS, steps), HUNG);
    expect(cursor.seek(6001)).toBe(6001);
    const last = cursor.state;
    for (const visit of [0, 1, 1023, 1024, 1025, 5000, 2, 4096, 6001]) {
      cursor.seek(visit);
      expect(cursor.state).toEqual(run(start(), steps.slice(0, visit)));
    }
    expect(cursor.state).toEqual(last);
  });

  it('stops at the first step that cannot be done', () => {
    const steps: Step[] = [{ do: 'turn' }, { do: 'end', string: 'nobody' }, { do: 'turn' }];
    const cursor = new Cursor(StepList.from(STRINGS, steps), HUNG);
    expect(cursor.seek(3)).toBe(1);
    expect(cursor.state.at.row).toBe(1);
  });
});

describe('step list', () => {
  it('gives back the steps it was made from', () => {
    fc.assert(
      fc.property(anyWalk, ({ steps }) => {
        expect([...StepList.from(STRINGS, steps)]).toEqual(steps);
      }),
    );
  });
});
