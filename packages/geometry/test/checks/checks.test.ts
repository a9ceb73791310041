import { describe, expect, it } from 'vitest';
import { segmentDistance } from '../../src/checks/segments.js';
import { leastClearance, sharpestBend } from '../../src/index.js';

const line = (...points: number[]) => Float64Array.from(points);

describe('the checker itself', () => {
  it('measures segments that cross, pass, touch at an end and run along each other', () => {
    const x = line(0, 0, 0, 2, 0, 0);
    expect(segmentDistance(x, 0, line(1, -1, 0.5, 1, 1, 0.5), 0)).toBeCloseTo(0.5, 12);
    expect(segmentDistance(x, 0, line(3, 0, 0, 4, 1, 0), 0)).toBeCloseTo(1, 12);
    expect(segmentDistance(x, 0, line(0.5, 3, 4, 1.5, 3, 4), 0)).toBeCloseTo(5, 12);
    expect(segmentDistance(x, 0, line(2, 0, 0, 2, 1, 0), 0)).toBeCloseTo(0, 12);
  });

  it('finds strands that pass through each other', () => {
    const found = leastClearance([
      { id: 'a', points: line(-5, 0, 0, 0, 0.01, 0, 5, 0, 0), radius: 0.5 },
      { id: 'b', points: line(0, -5, 0.2, 0.01, 0, 0.2, 0, 5, 0.2), radius: 0.5 },
    ]);
    expect(found?.ratio).toBeCloseTo(0.19, 1);
    expect(found?.between).toEqual(['b', 'a']);
  });

  it('finds a strand that touches itself, but not its own bend', () => {
    const arc = (turns: number, pitch: number) => {
      const n = Math.round(turns * 60);
      return Float64Array.from(
        Array.from({ length: n }, (_, i) => {
          const a = (i * 2 * Math.PI) / 60;
          return [Math.cos(a), (pitch * i) / 60, Math.sin(a)];
        }).flat(),
      );
    };
    const coil = (pitch: number) =>
      leastClearance([{ id: 'coil', points: arc(2.5, pitch), radius: 0.5 }])?.ratio;
    expect(coil(0.5)).toBeCloseTo(0.5, 1);
    expect(coil(1.2)).toBeGreaterThan(1.1);
    const bend = leastClearance([{ id: 'bend', points: arc(0.5, 0), radius: 0.5 }]);
    expect(bend?.ratio ?? Infinity).toBeGreaterThan(1.5);
  });

  it('finds the sharpest bend', () => {
    const points = line(0, 0, 0, 1, 0, 0, 1 + Math.SQRT1_2, Math.SQRT1_2, 0, 3, 2, 0);
    const found = sharpestBend(points);
    expect(found.point).toBe(1);
    expect(found.radius).toBeCloseTo(1 / (2 * Math.sin(Math.PI / 8)), 9);
  });
});
