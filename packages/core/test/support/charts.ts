import fc from 'fast-check';
import {
  type Chart,
  EDGE_TECHNIQUES,
  type EdgeTechnique,
  type StartSide,
} from '../../src/index.js';

const KEYS = 'abcdefghijklmnopqrstuvwxyz';

/** A chart from rows of letters; every letter that occurs is a colour. */
export function drawn(...rows: string[]): Chart {
  const keys = [...new Set(rows.join(''))].sort();
  const columns = (rows[0] as string).length;
  return {
    name: '',
    rows: rows.length,
    columns,
    colours: keys.map((key) => ({ key, hex: hexOf(KEYS.indexOf(key)), name: `colour ${key}` })),
    cells: Uint8Array.from([...rows.join('')].map((key) => keys.indexOf(key))),
  };
}

function hexOf(number: number): string {
  return `#${((number + 1) * 0x0a0b0d).toString(16).padStart(6, '0')}`;
}

export interface ChartSize {
  readonly columns?: number;
  readonly rows?: number;
  readonly colours?: number;
}

/** Random charts, half of them with runs of a colour as drawn charts have. */
export function anyChart(max: ChartSize = {}): fc.Arbitrary<Chart> {
  return fc
    .record({
      columns: fc.integer({ min: 1, max: max.columns ?? 40 }),
      rows: fc.integer({ min: 1, max: max.rows ?? 60 }),
      colours: fc.integer({ min: 1, max: max.colours ?? 8 }),
      run: fc.integer({ min: 1, max: 12 }),
      seed: fc.integer(),
    })
    .map(drawnAtRandom);
}

/** A chart that a seed stands for, with runs of a colour about so long. */
export function drawnAtRandom(size: {
  readonly columns: number;
  readonly rows: number;
  readonly colours: number;
  readonly run: number;
  readonly seed: number;
}): Chart {
  const { columns, rows, colours, run } = size;
  const next = generator(size.seed);
  const cells = new Uint8Array(rows * columns);
  let colour = 0;
  for (let i = 0; i < cells.length; i++) {
    if (next() * run < 1) colour = Math.floor(next() * colours);
    cells[i] = colour;
  }
  return {
    name: '',
    rows,
    columns,
    colours: Array.from({ length: colours }, (_, i) => ({
      key: KEYS[i] as string,
      hex: hexOf(i),
      name: '',
    })),
    cells,
  };
}

/** A small generator, so that one number of fast-check's stands for a whole chart. */
export function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export const anyEdge: fc.Arbitrary<EdgeTechnique> = fc.constantFrom(...EDGE_TECHNIQUES);
export const anyStart: fc.Arbitrary<StartSide> = fc.constantFrom('left', 'right');
