import { BESIDE, type Flat } from './routes.js';
import type { Seating } from './seating.js';

/** Radius at which a float bends where it comes through to the back or goes aside. */
const CORNER = 0.55;
const CORNER_STEPS = 4;

/**
 * The centre-line of a stretch behind the work, in tying diameters: out to its layer, along its
 * way, and back to the work; a loose end stays in its layer.
 *
 * @param depth where it comes out of the work
 */
export function stretchLine(
  flat: Flat,
  layer: number,
  depth: number,
  seating: Seating,
  loose: { readonly start: boolean; readonly end: boolean },
): Float64Array {
  const z = seating.back - (layer + 1) * BESIDE;
  const corners: number[] = [];
  if (!loose.start) corners.push(flat[0]!, flat[1]!, depth);
  for (let i = 0; i < flat.length; i += 2) corners.push(flat[i]!, flat[i + 1]!, z);
  if (!loose.end) corners.push(flat[flat.length - 2]!, flat[flat.length - 1]!, depth);
  return rounded(corners);
}

/** A polyline with its corners rounded off. */
function rounded(p: readonly number[]): Float64Array {
  const n = p.length / 3;
  const out: number[] = [p[0]!, p[1]!, p[2]!];
  for (let i = 1; i < n - 1; i++) {
    const before = Math.min(CORNER, 0.49 * gap(p, i - 1, i));
    const after = Math.min(CORNER, 0.49 * gap(p, i, i + 1));
    const a = toward(p, i, i - 1, before);
    const b = toward(p, i, i + 1, after);
    for (let k = 0; k <= CORNER_STEPS; k++) {
      const f = k / CORNER_STEPS;
      for (let c = 0; c < 3; c++) {
        out.push(a[c]! * (1 - f) ** 2 + 2 * p[i * 3 + c]! * f * (1 - f) + b[c]! * f * f);
      }
    }
  }
  out.push(p[n * 3 - 3]!, p[n * 3 - 2]!, p[n * 3 - 1]!);
  return Float64Array.from(out);
}

const gap = (p: readonly number[], i: number, j: number): number =>
  Math.hypot(p[j * 3]! - p[i * 3]!, p[j * 3 + 1]! - p[i * 3 + 1]!, p[j * 3 + 2]! - p[i * 3 + 2]!);

function toward(p: readonly number[], i: number, j: number, distance: number): number[] {
  const f = distance / Math.max(gap(p, i, j), 1e-9);
  return [0, 1, 2].map((c) => p[i * 3 + c]! + (p[j * 3 + c]! - p[i * 3 + c]!) * f);
}

/**
 * The part of a line between two heights, cut exactly there.
 *
 * @param visit is told each run of points, and whether it was cut at the top and at the bottom
 */
export function cutLine(
  line: Float64Array,
  top: number,
  bottom: number,
  visit: (points: readonly number[], cutTop: boolean, cutBottom: boolean) => void,
): void {
  let run: number[] = [];
  let cutTop = false;
  let cutBottom = false;
  const close = () => {
    if (run.length > 3) visit(run, cutTop, cutBottom);
    run = [];
    cutTop = false;
    cutBottom = false;
  };
  const inside = (y: number) => y >= top && y < bottom;
  for (let i = 0; i < line.length; i += 3) {
    const y = line[i + 1]!;
    if (i > 0) {
      for (const height of crossings(line[i - 2]!, y, top, bottom)) {
        const f = (height - line[i - 2]!) / (y - line[i - 2]!);
        const x = line[i - 3]! + (line[i]! - line[i - 3]!) * f;
        const z = line[i - 1]! + (line[i + 2]! - line[i - 1]!) * f;
        const entering = run.length === 0;
        run.push(x, height, z);
        if (height === top) cutTop = true;
        else cutBottom = true;
        if (!entering) close();
      }
    }
    if (inside(y)) run.push(line[i]!, y, line[i + 2]!);
  }
  close();
}

/** The borders between two heights, in the order in which they are met. */
function crossings(y0: number, y1: number, top: number, bottom: number): number[] {
  const met = [top, bottom].filter((h) => (y0 < h && y1 >= h) || (y0 >= h && y1 < h));
  return y1 >= y0 ? met : met.reverse();
}
