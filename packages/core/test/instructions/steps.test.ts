import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Chart,
  halvesOf,
  KNOT_KINDS,
  type KnotKind,
  PlanReader,
  planAlpha,
  planStepInWords,
  startState,
  stepInWords,
} from '../../src/index.js';
import { anyChart, anyEdge, anyStart, drawn } from '../support/charts.js';
import { anyStep, STRINGS } from '../support/steps.js';

/** A plan of one knot of a kind, on one base string. */
function single(kind: KnotKind) {
  const chart: Chart = { ...drawn('a'), knots: Uint8Array.of(KNOT_KINDS.indexOf(kind)) };
  return planAlpha(chart);
}

describe('a half hitch in words', () => {
  // Half by half as Ashley 1944 describes the turns of a clove hitch (nos 1178-1180) and of a
  // cow hitch (no. 1184): over, round behind, up through. Read from the words, not from a picture.
  it.each([
    [
      'forward',
      /from left to right, .*back to the left above the bar/,
      /down over its own bar/,
      /once more, below the first half/,
      /has passed base string 1 and hangs on its right/,
    ],
    [
      'backward',
      /from right to left, .*back to the right above the bar/,
      /down over its own bar/,
      /once more, below the first half/,
      /has passed base string 1 and hangs on its left/,
    ],
    [
      'forward-backward',
      /from left to right, .*back to the left above the bar/,
      /over base string 1 to the right: the second half starts/,
      /from right to left, .*back to the right above the bar/,
      /on the left of base string 1, where this knot began/,
    ],
    [
      'backward-forward',
      /from right to left, .*back to the right above the bar/,
      /over base string 1 to the left: the second half starts/,
      /from left to right, .*back to the left above the bar/,
      /on the right of base string 1, where this knot began/,
    ],
  ] as const)('%s', (kind, first, between, second, end) => {
    const plan = single(kind);
    const halves = [...plan.steps].flatMap((step, i) =>
      step.do === 'halfHitch' ? [planStepInWords(plan, i)] : [],
    );
    expect(halves).toHaveLength(2);
    expect(halves[0]).toMatch(first);
    expect(halves[0]).toMatch(between);
    expect(halves[1]).toMatch(second);
    expect(halves[1]).toMatch(end);
  });
});

describe('the steps of a plan', () => {
  it('know which half of which knot they are, as the reader of plans does', () => {
    fc.assert(
      fc.property(
        anyChart({ rows: 6, columns: 6, colours: 3 }),
        anyEdge,
        anyStart,
        (chart, edge, start) => {
          const plan = planAlpha(chart, { edge, start });
          for (const { knots } of new PlanReader(plan)) {
            for (const knot of knots) {
              const halves: string[] = [];
              for (let i = knot.steps.first; i < knot.steps.end; i++) {
                const step = plan.steps.at(i);
                if (step.do === 'halfHitch') halves.push(planStepInWords(plan, i));
              }
              const places = (['first', 'second'] as const).map((half, i) =>
                stepInWords(
                  {
                    do: 'halfHitch',
                    way: halvesOf(knot.kind)[i] as 'forward' | 'backward',
                    tying: knot.tying.id,
                    held: knot.held.id,
                  },
                  plan,
                  { kind: knot.kind, half },
                ),
              );
              expect(halves).toEqual(places);
            }
          }
        },
      ),
    );
  });

  it('say something for any step at all, strings unknown to the piece among them', () => {
    const plan = {
      ...planAlpha(drawn('aaaaa')),
      strings: STRINGS,
      hung: startState(STRINGS, []).hung,
    };
    fc.assert(
      fc.property(anyStep, (step) => {
        expect(stepInWords(step, plan)).toMatch(/^[A-Z].*\.$/);
      }),
    );
  });
});
