import type { LinkDiagram } from './diagram.js';

/**
 * The determinant of a link: the order of the colouring group of its diagram (R. H. Fox), 0 when
 * that is infinite. Worked out exactly in whole numbers.
 */
export function determinantOf(diagram: LinkDiagram): number {
  const n = diagram.crossings.length;
  const arcs = arcsOf(diagram);
  const columns = arcs.count + diagram.freeCircles;
  if (columns <= 1) return 1;
  if (n < columns - 1) return 0;
  const rows: bigint[][] = [];
  // One relation follows from the others when there are as many as arcs; one arc is coloured 0.
  for (const crossing of diagram.crossings.slice(0, columns - 1)) {
    const row = new Array<bigint>(columns).fill(0n);
    const over = arcs.of.get(crossing.overIn)!;
    row[over]! += 2n;
    row[arcs.of.get(crossing.underIn)!]! -= 1n;
    row[arcs.of.get(crossing.underOut)!]! -= 1n;
    rows.push(row.slice(1));
  }
  const value = bareiss(rows);
  return Number(value < 0n ? -value : value);
}

/** Arcs run from one under-passage to the next: edges joined at their over-passages. */
function arcsOf(diagram: LinkDiagram): {
  readonly of: Map<number, number>;
  readonly count: number;
} {
  const parent = new Map<number, number>();
  const find = (edge: number): number => {
    let e = edge;
    while (parent.get(e)! !== e) e = parent.get(e)!;
    return e;
  };
  for (const c of diagram.crossings) {
    for (const edge of [c.underIn, c.underOut, c.overIn, c.overOut]) {
      if (!parent.has(edge)) parent.set(edge, edge);
    }
  }
  for (const c of diagram.crossings) parent.set(find(c.overIn), find(c.overOut));
  const ids = new Map<number, number>();
  const of = new Map<number, number>();
  for (const edge of parent.keys()) {
    const root = find(edge);
    if (!ids.has(root)) ids.set(root, ids.size);
    of.set(edge, ids.get(root)!);
  }
  return { of, count: ids.size };
}

/** Determinant of a square matrix by fraction-free elimination (E. H. Bareiss, 1968). */
function bareiss(m: bigint[][]): bigint {
  const n = m.length;
  let sign = 1n;
  let previous = 1n;
  for (let k = 0; k < n - 1; k++) {
    if (m[k]![k] === 0n) {
      const swap = m.findIndex((row, i) => i > k && row[k] !== 0n);
      if (swap < 0) return 0n;
      [m[k], m[swap]] = [m[swap]!, m[k]!];
      sign = -sign;
    }
    const pivot = m[k]!;
    for (let i = k + 1; i < n; i++) {
      const row = m[i]!;
      for (let j = k + 1; j < n; j++) {
        row[j] = (row[j]! * pivot[k]! - row[k]! * pivot[j]!) / previous;
      }
    }
    previous = pivot[k]!;
  }
  return n === 0 ? 1n : sign * m[n - 1]![n - 1]!;
}
