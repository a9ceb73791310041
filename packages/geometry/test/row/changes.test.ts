import { EDGE_TECHNIQUES } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  furthestStep,
  heldCrossings,
  type RowScene,
  resample,
  rowPhases,
  rowPose,
} from '../../src/index.js';
import { isClearing } from '../../src/row/scene.js';
import { withinRow } from './scenes.js';
import { plannedRow, watch } from './watch.js';

/** Moments a move, as everywhere, and where many knots are watched. */
const SAMPLES = 60;
const FEWER = 8;

function expectHonest(scene: RowScene, index: number, samples: number, shift = 0): void {
  const found = watch(scene, index, samples, shift);
  expect(found.clearance, found.where).toBeGreaterThanOrEqual(0.949);
  expect(found.bend, `knot ${index}`).toBeGreaterThanOrEqual(0.46);
  expect(found.stretch, `knot ${index}`).toBeLessThan(0.01);
}

const changesOf = ({ scene, first }: { scene: RowScene; first: number }): number[] =>
  scene.knots.flatMap((knot, i) => (i >= first && knot.change ? [i] : []));

/** Colour changes as the planner asks for them, after others or together: the last of each row. */
describe.each([
  ['within the row and at its last knot, the lead returning', ['aabba'], 0, 'straight'],
  ['returning over a float of three knots', ['aabbbaaa'], 0, 'straight'],
  ['after the first knot, the lead returning at the turn', ['abbbb', 'aaaaa'], 1, 'straight'],
  ['at the last knot and at the turn', ['aaab', 'aaaa'], 1, 'straight'],
  ['one knot wide, at every row', ['a', 'b', 'a'], 2, 'straight'],
  ['two knots wide, at the last knot', ['ab', 'ba'], 0, 'straight'],
  ['within the row and at its last knot', ['aabba'], 0, 'wrapped'],
  ['at the turn', ['aaab', 'aaaa'], 1, 'wrapped'],
] as const)('a change %s', (_, rows, row, edge) => {
  it(`keeps thread whole, apart and unkinked, ${edge} edges`, () => {
    const planned = plannedRow(rows, row, { edge });
    const index = changesOf(planned).at(-1)!;
    expectHonest(planned.scene, index, SAMPLES);
  }, 240_000);
});

it.each([0.5, 0.7, 1.4, 2])(
  'a change within the row keeps thread whole, apart and unkinked at ratio %s',
  (heldDiameter) => {
    const planned = plannedRow(['aabba'], 0);
    const scene = { ...planned.scene, tyingDiameter: 1, heldDiameter };
    // The move in which the second half is pulled tight over the old lead is short and the sharpest.
    expectHonest(scene, changesOf(planned)[1]!, SAMPLES);
  },
  120_000,
);

/** Changes whose leads go through one gap between two base strings, or hang behind each other. */
const crowded: readonly (readonly [string, readonly string[], number])[] = [
  ['at neighbouring knots', ['aabcc'], 0],
  ['at every knot', ['abab'], 0],
  ['at every knot and at the turn', ['abab', 'baba'], 1],
  ['two knots wide, at every knot', ['ab', 'ba'], 1],
  ['a lead that hangs beneath the floats of others', ['bacab', 'cbaac'], 1],
];

describe.each(
  crowded.flatMap(([what, rows, row]) =>
    EDGE_TECHNIQUES.map((edge) => [what, edge, rows, row] as const),
  ),
)('crowded changes, %s, %s edges', (_, edge, rows, row) => {
  it.each([
    [1, FEWER],
    [0.5, FEWER / 4],
    [2, FEWER / 4],
  ])(
    'keep thread whole, apart and unkinked, ratio %s',
    (heldDiameter, samples) => {
      const { scene, first } = plannedRow(rows, row, { edge });
      const sized = { ...scene, tyingDiameter: 1, heldDiameter };
      for (let index = first; index < scene.knots.length; index++) {
        expectHonest(sized, index, samples);
      }
    },
    120_000,
  );
});

/** Small charts in few colours change leads in every way there is, and often at once. */
it('any small chart keeps thread whole, apart and unkinked', () => {
  const rowsOf = (columns: number) =>
    fc.tuple(
      ...Array.from({ length: 2 }, () =>
        fc.string({
          unit: fc.constantFrom('a', 'b', 'c'),
          minLength: columns,
          maxLength: columns,
        }),
      ),
    );
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 5 }).chain(rowsOf),
      fc.constantFrom(...EDGE_TECHNIQUES),
      fc.constantFrom(0, 1),
      // Other moments each time.
      fc.double({ min: 0, max: 1, noNaN: true }),
      (rows, edge, row, shift) => {
        const { scene, first } = plannedRow(rows, row, { edge });
        for (let index = first; index < scene.knots.length; index++) {
          expectHonest(scene, index, FEWER / 2, shift);
        }
      },
    ),
    { numRuns: 5 },
  );
}, 120_000);

/** The furthest that a point of a lead goes from moment to moment, at 240 moments a move. */
function jumps(scene: RowScene, index: number, moves: number): Map<string, number> {
  const out = new Map<string, number>();
  rowPhases(scene, index)
    .slice(0, moves)
    .forEach((phase, at) => {
      let before: Map<string, Float64Array> | undefined;
      let most = 0;
      for (let s = 0; s < 240; s++) {
        const { strands } = rowPose(scene, index, at + s / 240);
        const leads = strands.filter(({ role }) => role !== 'base' && role !== 'held');
        const now = new Map(leads.map(({ id, points }) => [id, resample(points, 300)]));
        if (before) expect([...now.keys()]).toEqual([...before.keys()]);
        for (const [id, points] of before ?? []) {
          most = Math.max(most, furthestStep(points, now.get(id)!));
        }
        before = now;
      }
      out.set(phase, most);
    });
  return out;
}

describe('a lead that takes over', () => {
  const cases: readonly (readonly [string, RowScene, number, number])[] = [
    ['for the first time', withinRow, 2, 4],
    ['after a float', ...sceneAt(['aabba'], 0, 4), 1],
    ['in the gap that it left by', ...sceneAt(['aaab', 'aaaa'], 1, 0), 1],
  ];
  it.each(cases)(
    '%s does not jump',
    (_, scene, index, moves) => {
      for (const [phase, most] of jumps(scene, index, moves)) {
        // Two moves share the time in which one lead goes and another comes: 1.76 was found.
        expect(most, phase).toBeLessThan(isClearing(phase as 'lay-aside') ? 1.8 : 0.9);
      }
    },
    120_000,
  );

  it('comes from below the work, out of sight, when it has not tied before', () => {
    const { strands } = rowPose(withinRow, 2, 0);
    const fresh = strands.find(({ id }) => id === 'buoy')!;
    const ends = strands.filter(({ role }) => role === 'base').map(({ points }) => points.at(-2)!);
    for (let i = 1; i < fresh.points.length; i += 3) {
      expect(fresh.points[i]).toBeGreaterThan(Math.max(...ends) - 1);
    }
  });

  it('of the same colour, after one that has run out, comes as any other', () => {
    const { scene, first } = plannedRow(['aaaa', 'aaaa'], 1, { joins: [{ row: 1, column: 1 }] });
    const index = scene.knots.findIndex((knot, i) => i >= first && knot.change);
    expect(rowPhases(scene, index)).toHaveLength(4);
    expectHonest(scene, index, 20);
  });

  it('is one thread over its float, behind every base string on the way', () => {
    const { scene, first } = plannedRow(['aabbbaaa'], 0);
    const { strands } = rowPose(scene, first + 7, 2);
    const lead = strands.find(({ role }) => role === 'tying')!;
    // Columns 2 to 4 are tied by the other lead; column 2 catches this one, in front of its string.
    for (const column of [3, 4]) {
      const held = strands.find(({ id }) => id === scene.base[column])!;
      const levels = heldCrossings(lead.points, held.points).map(({ level }) => level);
      expect(levels, `column ${column}`).toEqual(['under']);
    }
  });
});

function sceneAt(rows: readonly string[], row: number, knot: number): [RowScene, number] {
  const { scene, first } = plannedRow(rows, row);
  return [scene, first + knot];
}

describe('an old lead laid through an edge knot, as no plan asks for', () => {
  const { scene, first } = plannedRow(['aaab'], 0);
  const index = first + 3;
  const edge = scene.knots[index]!;
  const furthestRight = (how: 'laid-through' | 'passed-behind'): number => {
    const change = { ...edge.change!, how };
    const knots = scene.knots.map((knot, i) => (i === index ? { ...knot, change } : knot));
    const caught = { ...scene, knots };
    const { strands } = rowPose(caught, index, rowPhases(caught, index).length);
    const old = strands.find(({ id }) => id === change.oldLead)!;
    return Math.max(...old.points.filter((_, i) => i % 3 === 0));
  };

  it('is seen to stick out at the side, where one passed behind it does not', () => {
    const { strands } = rowPose(scene, index, rowPhases(scene, index).length);
    const knot = strands.find(({ role }) => role === 'tying')!;
    const outermost = Math.max(...knot.points.filter((_, i) => i % 3 === 0));
    expect(furthestRight('laid-through')).toBeGreaterThan(outermost + 0.9);
    expect(furthestRight('passed-behind')).toBeLessThan(outermost);
  });
});
