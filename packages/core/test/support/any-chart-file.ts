import fc from 'fast-check';
import { type Chart, EDGE_TECHNIQUES, KNOT_KINDS } from '../../src/index.js';

/** Characters that may stand for a colour, awkward ones among them. */
const KEYS = [...'abzAZ09#=:/\\<>"{}[]+*.,-_é\u{df}\u{4e2d}\u{1f6a3}\u{1f409}'];

const anyName = fc
  .oneof(
    fc.constantFrom('', 'lake blue', '= x', ': :', '#fff', 'a #1f6fb2', 'edge straight', '"\\'),
    fc.string({ unit: 'grapheme', maxLength: 20 }),
  )
  .map((name) => name.replace(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/gu, '').trim());

const anyHex = fc
  .integer({ min: 0, max: 0xffffff })
  .map((value) => `#${value.toString(16).padStart(6, '0')}`);

/** Charts with everything a file can say: names, odd keys, edges, knots worked out by hand. */
export const anyChartOfFile: fc.Arbitrary<Chart> = fc
  .record({
    name: anyName,
    rows: fc.integer({ min: 1, max: 12 }),
    columns: fc.integer({ min: 1, max: 12 }),
    keys: fc.uniqueArray(fc.constantFrom(...KEYS), { minLength: 1, maxLength: 8 }),
    edge: fc.option(fc.constantFrom(...EDGE_TECHNIQUES), { nil: undefined }),
    start: fc.option(fc.constantFrom('left' as const, 'right' as const), { nil: undefined }),
    byHand: fc.boolean(),
  })
  .chain(({ name, rows, columns, keys, edge, start, byHand }) => {
    const cells = (count: number) =>
      fc.uint8Array({ minLength: rows * columns, maxLength: rows * columns, max: count - 1 });
    return fc
      .record({
        hexes: fc.uniqueArray(anyHex, { minLength: keys.length, maxLength: keys.length }),
        names: fc.array(anyName, { minLength: keys.length, maxLength: keys.length }),
        cells: cells(keys.length),
        knots: cells(KNOT_KINDS.length),
      })
      .map((drawn) => ({
        name,
        rows,
        columns,
        colours: keys.map((key, i) => ({
          key,
          hex: drawn.hexes[i] as string,
          name: drawn.names[i] as string,
        })),
        cells: drawn.cells,
        ...(edge === undefined ? {} : { edge }),
        ...(start === undefined ? {} : { start }),
        ...(byHand ? { knots: drawn.knots } : {}),
      }));
  });
