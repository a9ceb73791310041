import type { DiagonalPattern } from '@halfhitch/core';
import type { CheckedStrand } from '../../src/checks/clearance.js';
import { DiagonalFabric } from '../../src/diagonal/index.js';
import type { Level } from '../../src/fabric/levels.js';

/** Each string of a pattern as one thread, its chunks joined where they meet. */
export function wholeThreads(
  pattern: DiagonalPattern,
  rowsPerChunk = 10,
  levelOf: (chunk: number) => Level = () => 0,
): CheckedStrand[] {
  const fabric = new DiagonalFabric(pattern, { rowsPerChunk });
  const threads = new Map<string, number[]>();
  for (let k = 0; k < fabric.chunks; k++) {
    const { points, strands } = fabric.chunk(k, levelOf(k));
    for (const { string, first, count } of strands) {
      const own = points.subarray(3 * first, 3 * (first + count));
      const before = threads.get(string);
      if (before === undefined) threads.set(string, [...own]);
      else if (before.slice(-3).join() !== own.subarray(0, 3).join()) {
        throw new Error(`String ${string} does not go on where it was left in chunk ${k}.`);
      } else before.push(...own.subarray(3));
    }
  }
  return [...threads].map(([id, points]) => ({
    id,
    points: Float64Array.from(points),
    radius: 0.5,
  }));
}
