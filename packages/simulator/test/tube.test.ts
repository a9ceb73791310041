import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { knotLines } from '../src/knot/knot-lines.js';
import { nearThreads } from '../src/thread/nearness.js';
import { Tube } from '../src/thread/tube.js';

const LOOK = {
  kind: 'forward' as const,
  mirror: false,
  tyingColour: '#2f6f9f',
  heldColour: '#e9e2d0',
};

const xyz = (array: Float32Array, i: number): [number, number, number] => [
  array[3 * i] as number,
  array[3 * i + 1] as number,
  array[3 * i + 2] as number,
];

/** Rings without the rounded ends, which are three on each side. */
function ringsOf(tube: Tube): number[] {
  return Array.from({ length: tube.rings - 6 }, (_, i) => i + 3);
}

describe('Tube', () => {
  const [, line] = knotLines(LOOK, 1.4);
  const points = line?.points ?? new Float32Array();

  it('lies round its centre-line at the radius, with unit normals pointing out', () => {
    const tube = new Tube(12);
    tube.lay(points, 0.5);
    for (const ring of ringsOf(tube)) {
      const [cx, cy, cz] = xyz(points, ring - 3);
      for (let k = 0; k <= 12; k++) {
        const v = ring * 13 + k;
        const [x, y, z] = xyz(tube.position, v);
        const [nx, ny, nz] = xyz(tube.normal, v);
        expect(Math.hypot(x - cx, y - cy, z - cz)).toBeCloseTo(0.5, 3);
        expect(Math.hypot(nx, ny, nz)).toBeCloseTo(1, 4);
        expect((x - cx) * nx + (y - cy) * ny + (z - cz) * nz).toBeCloseTo(0.5, 3);
      }
    }
  });

  it('winds its triangles so that their fronts look outwards', () => {
    const tube = new Tube(12);
    tube.lay(points, 0.5);
    let inward = 0;
    for (let t = 0; t < tube.indexCount; t += 3) {
      const corner = (k: number) => xyz(tube.position, tube.index[t + k] as number);
      const [a, b, c] = [corner(0), corner(1), corner(2)] as const;
      const u = b.map((value, k) => value - (a[k] as number));
      const w = c.map((value, k) => value - (a[k] as number));
      const [n0, n1, n2] = xyz(tube.normal, tube.index[t] as number);
      const face =
        ((u[1] as number) * (w[2] as number) - (u[2] as number) * (w[1] as number)) * n0 +
        ((u[2] as number) * (w[0] as number) - (u[0] as number) * (w[2] as number)) * n1 +
        ((u[0] as number) * (w[1] as number) - (u[1] as number) * (w[0] as number)) * n2;
      if (face < -1e-6) inward++;
    }
    expect(inward).toBe(0);
  });

  it('carries its frame without twist: no ring turns against the one before', () => {
    const tube = new Tube(12);
    tube.lay(points, 0.5);
    const rings = ringsOf(tube);
    for (const ring of rings.slice(1)) {
      const [ax, ay, az] = xyz(tube.normal, (ring - 1) * 13);
      const [bx, by, bz] = xyz(tube.normal, ring * 13);
      expect(ax * bx + ay * by + az * bz).toBeGreaterThan(0.8);
    }
  });

  it('keeps its arrays from pose to pose', () => {
    const tube = new Tube();
    tube.lay(points, 0.5);
    const before = tube.position;
    const { generation } = tube;
    for (let p = 0; p <= 2; p += 0.1) {
      tube.lay(knotLines(LOOK, p)[1]?.points ?? points, 0.5);
    }
    expect(tube.position).toBe(before);
    expect(tube.generation).toBe(generation);
  });

  it('gives finite vertices for any line, also with points that coincide', () => {
    const coordinate = fc.integer({ min: -3, max: 3 });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 2, maxLength: 30 }),
        (corners) => {
          const tube = new Tube(6);
          tube.lay(new Float32Array(corners.flat()), 0.5);
          const used = tube.position.subarray(0, tube.vertexCount * 3);
          expect(used.every(Number.isFinite)).toBe(true);
          expect(tube.normal.subarray(0, tube.vertexCount * 3).every(Number.isFinite)).toBe(true);
        },
      ),
    );
  });
});

describe('nearThreads', () => {
  const straight = (x: number): Float32Array =>
    new Float32Array(Array.from({ length: 21 }, (_, i) => [x, i * 0.25, 0]).flat());

  it('points from each of two touching threads to the other, alike', () => {
    const lines = [0, 1].map((x) => ({ points: straight(x), diameter: 1 }));
    const into = lines.map((line) => new Float32Array(line.points.length));
    nearThreads(lines, into);
    const [left, right] = into as [Float32Array, Float32Array];
    expect(left[30]).toBeGreaterThan(0.1);
    expect(right[30]).toBeCloseTo(-(left[30] as number), 5);
  });

  it('leaves threads alone that are far from each other, and the thread itself', () => {
    const lines = [0, 3].map((x) => ({ points: straight(x), diameter: 1 }));
    const into = lines.map((line) => new Float32Array(line.points.length).fill(9));
    nearThreads(lines, into);
    expect(into.every((array) => array.every((value) => value === 0))).toBe(true);
  });
});
