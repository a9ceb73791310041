import { InputError, type Plan, planDiagonal } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import { answerOrRefusal } from '../../../../testing/hostile/answer.js';
import { anySmallChart, anySpoiltPlan } from '../../../../testing/hostile/plans.js';
import { fuzzRuns } from '../../../../testing/hostile/runs.js';
import {
  cutList,
  DiagonalFabric,
  diagonalPose,
  diagonalScene,
  Fabric,
  GeometryError,
  Lengths,
  planPose,
  tightMeasures,
  usageOf,
} from '../../src/index.js';

const OWN = [InputError, GeometryError];

const tell = <T>(work: () => T): T | null => answerOrRefusal(OWN, work);

function expectFinite(points: ArrayLike<number>): void {
  for (let i = 0; i < points.length; i++) {
    if (!Number.isFinite(points[i])) throw new Error(`Coordinate ${i} is ${points[i]}.`);
  }
}

describe('nonsense plans of alpha patterns', () => {
  it('are posed as far as their steps can be done, or refused in plain words', () => {
    fc.assert(
      fc.property(anySpoiltPlan, fc.nat(), fc.double(), ({ plan }, step, fraction) => {
        const at = step % (plan.steps.length + 2);
        const pose = tell(() => planPose(plan, at, fraction));
        for (const { points } of pose?.strands ?? []) expectFinite(points);
      }),
      fuzzRuns(120),
    );
  });

  it('are woven, measured and cut to length, or refused in plain words', () => {
    fc.assert(
      fc.property(anySpoiltPlan, fc.nat(3), ({ plan }, level) => {
        const fabric = tell(() => new Fabric(plan));
        const chunk = fabric === null ? null : tell(() => fabric.chunk(0, level as 0));
        expectFinite(chunk?.points ?? []);
        const used = tell(() => usageOf(plan, new Lengths(tightMeasures(), 1)));
        for (const { travel, floats } of used ?? []) expectFinite([travel, floats]);
      }),
      fuzzRuns(60),
    );
  });

  it('with a size of their own are refused, or posed', () => {
    const size = fc.constantFrom(0, -1, 1, 2, 300, 1e9, 1.5, Number.NaN, Number.POSITIVE_INFINITY);
    fc.assert(
      fc.property(anySpoiltPlan, size, size, ({ plan }, rows, columns) => {
        const odd: Plan = { ...plan, rows, columns };
        tell(() => planPose(odd, 0, 0.5));
        tell(() => new Fabric(odd));
      }),
      fuzzRuns(80),
    );
  });
});

describe('figures that are none', () => {
  const figure = fc.constantFrom(
    ...[Number.NaN, Number.POSITIVE_INFINITY, -1, -0, 0, 1e-300, 1e300, 0.5, 2 ** 31, 1e9],
  );

  it('as diameters, moments and swatches are refused, or taken as they can be', () => {
    fc.assert(
      fc.property(
        anySmallChart,
        fc.array(figure, { minLength: 8, maxLength: 8 }),
        (chart, figures) => {
          const [a, b, c, d, e, f, g, h] = figures as [
            number,
            number,
            number,
            number,
            number,
            number,
            number,
            number,
          ];
          const list = tell(() =>
            cutList(chart, tightMeasures(), {
              thread: { diameter: a },
              tails: b,
              margin: c,
              workable: d,
              putUp: e,
              swatch: { rows: f, columns: g, width: h, length: a },
            }),
          );
          for (const { mm, plusMinus } of (list?.pieces ?? []).map(({ length }) => length)) {
            expectFinite([mm, plusMinus]);
          }
        },
      ),
      fuzzRuns(150),
    );
  });

  it('as moments of diagonal work are refused, or taken as they can be', () => {
    fc.assert(
      fc.property(
        anyDiagonal({ maxStrings: 6, maxRows: 5 }),
        figure,
        figure,
        figure,
        (pattern, diameter, knot, t) => {
          const scene = tell(() => diagonalScene(pattern, { diameter, beside: knot, above: t }));
          if (scene === null) return;
          const pose = tell(() => diagonalPose(scene, knot, t));
          for (const { points } of pose?.strands ?? []) expectFinite(points);
          tell(() => new DiagonalFabric(pattern, { rowsPerChunk: knot, across: t }));
        },
      ),
      fuzzRuns(80),
    );
  });

  it('in a diagonal pattern are refused by its planner', () => {
    const spoil = fc.record(
      {
        strings: figure,
        rows: figure,
        first: figure as fc.Arbitrary<0>,
        start: fc.constantFrom(new Uint8Array(0), new Uint8Array(7).fill(200)),
        knots: fc.constantFrom(new Uint8Array(0), new Uint8Array(3).fill(77)),
        colours: fc.constant([]),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(anyDiagonal({ maxStrings: 6, maxRows: 5 }), spoil, (pattern, changes) => {
        const plan = tell(() => planDiagonal({ ...pattern, ...changes }));
        if (plan !== null) expect(plan.hung).toHaveLength(plan.lattice.strings);
      }),
      fuzzRuns(200),
    );
  });
});
