import { describe, expect, it } from 'vitest';
import {
  heldCrossings,
  leastClearance,
  lengthOf,
  type RowScene,
  rowPhases,
  rowPose,
  sharpestBend,
} from '../../src/index.js';
import { afterFirstKnot, atLastKnot, atTurn, straight, withinRow, wrapped } from './scenes.js';

/**
 * As for one knot, in tying diameters; a joint between knots is bent by hand, not by the solver of
 * whole knots, and is allowed a little sharper a bend.
 */
const LIMITS = { clearance: 0.95, bend: 0.46, stretch: 0.01 };

/** Moments per phase at equal diameters, and at the extreme ones. */
const SAMPLES = 60;
const FEWER = 20;

interface Findings {
  clearance: number;
  where: string;
  bend: number;
  stretch: number;
}

function watch(scene: RowScene, index: number, samples: number): Findings {
  const found: Findings = { clearance: Infinity, where: '', bend: Infinity, stretch: 0 };
  rowPhases(scene, index).forEach((_, phase) => {
    const lengths = new Map<string, [number, number]>();
    for (let s = 0; s <= samples; s++) {
      const pose = rowPose(scene, index, Math.min(phase + s / samples, phase + 1 - 1e-9));
      const least = leastClearance(pose.strands);
      if (least && least.ratio < found.clearance) {
        found.clearance = least.ratio;
        found.where = `knot ${index} t ${pose.t} ${least.between} ${least.at}`;
      }
      for (const strand of pose.strands) {
        if (strand.role === 'base' || strand.role === 'held') continue;
        found.bend = Math.min(found.bend, sharpestBend(strand.points).radius);
        const length = lengthOf(strand.points);
        const [a, b] = lengths.get(strand.id) ?? [length, length];
        lengths.set(strand.id, [Math.min(a, length), Math.max(b, length)]);
      }
    }
    for (const [a, b] of lengths.values()) found.stretch = Math.max(found.stretch, b / a - 1);
  });
  return found;
}

describe.each([
  ['straight edges', straight],
  ['wrapped edges', wrapped],
] as const)('rows and turns, %s', (_, scene) => {
  it.each([0.5, 1, 2])(
    'keep thread whole, apart and unkinked, ratio %s',
    (heldDiameter) => {
      const sized = { ...scene, tyingDiameter: 1, heldDiameter };
      sized.knots.forEach((_, index) => {
        const found = watch(sized, index, heldDiameter === 1 ? SAMPLES : FEWER);
        expect(found.clearance, found.where).toBeGreaterThanOrEqual(LIMITS.clearance);
        expect(found.bend, `knot ${index}`).toBeGreaterThanOrEqual(LIMITS.bend);
        expect(found.stretch, `knot ${index}`).toBeLessThan(LIMITS.stretch);
      });
    },
    240_000,
  );
});

describe('a row pose', () => {
  const whole = { forward: 5, backward: 5, 'forward-backward': 6, 'backward-forward': 6 } as const;

  it('crosses each held string as often as its knots say', () => {
    for (const scene of [straight, wrapped]) {
      const index = scene.knots.length - 1;
      const pose = rowPose(scene, index, 2);
      const lead = pose.strands.find((s) => s.role === 'tying')!;
      scene.base.forEach((id, column) => {
        const held = pose.strands.find((s) => s.id === id)!;
        const expected = scene.knots
          .filter((k) => k.column === column)
          .reduce((sum, k) => sum + whole[k.kind], 0);
        expect(heldCrossings(lead.points, held.points)).toHaveLength(expected);
      });
    }
  });

  it('says which move is being made, and when', () => {
    const pose = rowPose(straight, 3, 1.9);
    expect(pose.phase).toBe('second-half');
    expect(pose.halfWay).toBe('backward');
    expect(pose.stage).toBe('snug');
    expect(pose.strands.find((s) => s.role === 'held')!.id).toBe('b2');
  });

  it('refuses scenes that cannot be drawn, saying where', () => {
    const wrong = { ...straight, knots: [{ ...straight.knots[0]!, held: 'b9' }] };
    expect(() => rowPose(wrong, 0, 0)).toThrow(/Knot 0 is on base string b9 in column 0/);
    expect(() => rowPose(straight, 99, 0)).toThrow(/Knot 99 asked for; the scene has 8/);
    expect(() => rowPose({ ...straight, heldDiameter: 9 }, 0, 0)).toThrow(/heldDiameter/);
  });
});

/**
 * Changes in which the old lead goes behind the work before the new one ties. (Where the old lead is
 * laid through the knot, the two leads still come too near each other: see docs/geometry.md.)
 */
describe.each([
  ['at the last knot', atLastKnot, 2],
  ['at the turn', atTurn, 3],
] as const)('a colour change %s', (_, scene, first) => {
  it.each([0.5, 1, 2])(
    'keeps thread whole, apart and unkinked, ratio %s',
    (heldDiameter) => {
      const samples = heldDiameter === 1 ? SAMPLES : FEWER;
      for (let index = first; index < scene.knots.length; index++) {
        const found = watch({ ...scene, tyingDiameter: 1, heldDiameter }, index, samples);
        expect(found.clearance, found.where).toBeGreaterThanOrEqual(LIMITS.clearance);
        expect(found.bend, `knot ${index}`).toBeGreaterThanOrEqual(LIMITS.bend);
        expect(found.stretch, `knot ${index}`).toBeLessThan(LIMITS.stretch);
      }
    },
    120_000,
  );

  it('leaves the old lead behind the work and shows the new one in front', () => {
    const pose = rowPose(scene, scene.knots.length - 1, 2);
    const old = pose.strands.find((s) => s.id === 'lake')!;
    const end = old.points.length - 3;
    expect(old.points[end + 2]).toBeLessThan(-2);
    expect(pose.strands.find((s) => s.role === 'tying')!.id).toBe('buoy');
  });
});

describe('a colour change within the row', () => {
  it.each([withinRow, afterFirstKnot])(
    'is made in four moves, the new lead from behind',
    (scene) => {
      const index = scene.knots.findIndex((k) => k.change);
      expect(rowPhases(scene, index)).toEqual([
        'lay-aside',
        'first-half',
        'lay-through',
        'second-half',
      ]);
      const aside = rowPose(scene, index, 1).strands.find((s) => s.id === 'lake')!;
      const n = aside.points.length;
      expect(aside.points[n - 2]).toBeLessThan(-5);
      expect(rowPose(scene, index, 0.5).strands.some((s) => s.id === 'buoy')).toBe(false);
      const lead = rowPose(scene, index, 3.9).strands.find((s) => s.id === 'buoy')!;
      expect(lead.points[2]).toBeLessThan(-2);
    },
  );
});
