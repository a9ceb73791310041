import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestWay, effortOf, MIRRORINGS, mirroredChart } from '../../src/index.js';
import { anyChart, anyEdge, anyStart, drawn } from '../support/charts.js';

describe('the best way to knot a chart', () => {
  it('is the best of all that are tried, each costing what planning and verifying it gives', () => {
    fc.assert(
      fc.property(
        anyChart({ columns: 8, rows: 9, colours: 4 }),
        anyEdge,
        anyStart,
        fc.boolean(),
        (chart, edge, start, mayMirror) => {
          const { current, best, ways } = bestWay(chart, { edge, start, mayMirror });
          expect(ways).toHaveLength(mayMirror ? 8 : 2);
          expect(new Set(ways.map((way) => `${way.mirroring} ${way.start}`)).size).toBe(
            ways.length,
          );
          expect(current).toMatchObject({ mirroring: 'as-drawn', start });
          for (const way of ways) {
            const drawing = mirroredChart(chart, way.mirroring);
            const proven = effortOf(drawing, { edge, start: way.start });
            expect(way.state).toBe('proven');
            expect(way.effort).toEqual(proven.effort);
            expect(best.effort.changes).toBeLessThanOrEqual(way.effort.changes);
            if (way.effort.changes === best.effort.changes) {
              expect(best.effort.floatKnots).toBeLessThanOrEqual(way.effort.floatKnots + 1e-5);
            }
          }
        },
      ),
    );
  });

  it('leaves all as it is where nothing is better', () => {
    const { best, current } = bestWay(drawn('aaa', 'aaa'), { start: 'right', mayMirror: true });
    expect(best).toBe(current);
    expect(best).toMatchObject({ start: 'right', mirroring: 'as-drawn' });
  });

  it('finds the side that saves a change', () => {
    const chart = drawn('aab', 'aaa', 'aaa');
    expect(bestWay(chart)).toMatchObject({
      current: { start: 'left', effort: { changes: 2 } },
      best: { start: 'right', mirroring: 'as-drawn', effort: { changes: 1 } },
    });
  });

  it('costs the same when drawing and side are both mirrored from left to right', () => {
    fc.assert(
      fc.property(anyChart({ columns: 8, rows: 9, colours: 4 }), anyEdge, (chart, edge) => {
        const mirrored = mirroredChart(chart, 'left-right');
        const one = effortOf(chart, { edge, start: 'left' }).effort;
        const other = effortOf(mirrored, { edge, start: 'right' }).effort;
        expect(other).toEqual({ ...one, floatKnots: other.floatKnots });
        expect(other.floatKnots).toBeCloseTo(one.floatKnots, 6);
      }),
    );
  });

  it('mirrors drawings so that twice is not at all, and half a turn is both', () => {
    fc.assert(
      fc.property(anyChart({ columns: 8, rows: 9 }), (chart) => {
        for (const mirroring of MIRRORINGS) {
          const twice = mirroredChart(mirroredChart(chart, mirroring), mirroring);
          expect(twice.cells).toEqual(chart.cells);
        }
        const both = mirroredChart(mirroredChart(chart, 'left-right'), 'upside-down');
        expect(both.cells).toEqual(mirroredChart(chart, 'half-turn').cells);
      }),
    );
  });

  it('of a large chart proves the current way and the best, and only counts the others', () => {
    fc.assert(
      fc.property(anyChart({ columns: 8, rows: 9, colours: 4 }), anyEdge, (chart, edge) => {
        const options = { edge, mayMirror: true } as const;
        const quick = bestWay(chart, { ...options, work: 0 });
        const whole = bestWay(chart, options);
        const plain = ({ ways, best }: typeof whole) =>
          [best, ...ways].map(({ start, mirroring, effort }) => [
            start,
            mirroring,
            { ...effort, floatKnots: effort.floatKnots.toFixed(4) },
          ]);
        expect(plain(quick)).toEqual(plain(whole));
        expect(quick.best.state).toBe('proven');
        expect(quick.current.state).toBe('proven');
        const proven = quick.ways.filter(({ state }) => state === 'proven');
        expect(proven.length).toBeLessThanOrEqual(2);
      }),
    );
  });

  it('never takes a way that does not knot out for the best', () => {
    const chart = drawn('aba', 'aaa', 'aab');
    const kinds = { ...chart, knots: new Uint8Array(9) };
    const { best } = bestWay(kinds, { mayMirror: true });
    expect(best.state).toBe('proven');
    expect(best.mirroring).not.toBe('as-drawn');
    expect(bestWay(kinds).best.state).toBe('wrong');
  });
});
