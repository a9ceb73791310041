import type { Chart } from '../chart/chart.js';
import { Stints } from './stints.js';

/** What a drawing asks for, counted from the drawing alone. */
export interface Count {
  changes: number;
  edgeChanges: number;
  floats: number;
  floatKnots: number;
  longFloats: number;
}

/** Numbers that are equal for legend entries of one colour, whose leads look the same. */
export function looks({ colours }: Chart): Uint8Array {
  return Uint8Array.from(colours, ({ hex }) => colours.findIndex((other) => other.hex === hex));
}

/**
 * Counts changes and floats without planning. Used to look through many ideas; what is told of
 * them is then proven by planning and verifying.
 */
export function countOf(chart: Chart, start: 'left' | 'right', longFloat: number): Count {
  const stints = new Stints(chart, start);
  const look = looks(chart);
  const count: Count = { changes: 0, edgeChanges: 0, floats: 0, floatKnots: 0, longFloats: 0 };
  for (let stint = 1; stint < stints.count; stint++) {
    const knot = stints.start[stint] as number;
    const other = look[stints.colour[stint - 1] as number] !== look[stints.colour[stint] as number];
    if (other) {
      count.changes++;
      if (stints.atEdge(knot)) count.edgeChanges++;
    }
    const before = stints.before[stint] as number;
    if (before < 0) continue;
    const float = stints.float(stints.restAt(stints.start[before + 1] as number), knot);
    count.floats++;
    count.floatKnots += float;
    if (float > longFloat) count.longFloats++;
  }
  return count;
}
