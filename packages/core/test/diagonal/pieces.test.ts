import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ChartColour,
  chevrons,
  type DiagonalPattern,
  diagonalStripes,
  diamonds,
  NO_KNOT,
  type PieceOptions,
  simulateDiagonal,
  slotOfPlace,
  wave,
  zigzag,
} from '../../src/index.js';
import { refusal } from '../support/refusal.js';

const colours = (count: number): ChartColour[] =>
  Array.from({ length: count }, (_, i) => ({
    key: String.fromCodePoint(0x4e00 + i),
    hex: `#${(i + 1).toString(16).padStart(6, '0')}`,
    name: '',
  }));

/** Any width and any number of colours that the halves of a piece can show. */
const anyOptions = fc.integer({ min: 3, max: 25 }).chain((strings) =>
  fc.record({
    strings: fc.constant(strings),
    colours: fc.integer({ min: 1, max: Math.floor(strings / 2) }).map(colours),
  }),
);

/** The same with no more colours than diamonds have rings. */
const fewer = (options: PieceOptions): PieceOptions => ({
  ...options,
  colours: options.colours.slice(0, Math.ceil(Math.floor(options.strings / 2) / 2)),
});

/** Colour of each knot, by row and slot of its left string. */
function seen(pattern: DiagonalPattern): Map<string, number> {
  const { picture } = simulateDiagonal(pattern);
  const found = new Map<string, number>();
  const across = Math.floor(pattern.strings / 2);
  picture.cells.forEach((colour, cell) => {
    const row = Math.floor(cell / across);
    const slot = slotOfPlace(pattern, row, cell % across);
    if (slot + 1 < pattern.strings) found.set(`${row} ${slot}`, colour);
  });
  return found;
}

const at = (found: Map<string, number>, row: number, slot: number) => found.get(`${row} ${slot}`);

function closes(pattern: DiagonalPattern): boolean {
  const { order } = simulateDiagonal(pattern);
  return order.slice(-pattern.strings).every((string, slot) => string === slot);
}

describe('known pieces by rule', () => {
  const pieces = { diagonalStripes, chevrons, diamonds, zigzag, wave };

  it.each(Object.entries(pieces))('%s: any width, all colours, a repeat that closes', (_, make) => {
    fc.assert(
      fc.property(anyOptions, (any) => {
        const options = make === diamonds ? fewer(any) : any;
        const pattern = make(options);
        expect(pattern.knots.filter((kind) => kind !== NO_KNOT)).toHaveLength(seen(pattern).size);
        expect(pattern.rows % 2).toBe(0);
        expect(closes(pattern)).toBe(true);
        expect(new Set(seen(pattern).values()).size).toBe(options.colours.length);
        expect(pattern.name).not.toBe('');
        expect(make({ ...options, rows: 7, name: 'Heron' })).toMatchObject({
          rows: 7,
          name: 'Heron',
        });
      }),
      { numRuns: 25 },
    );
  });

  it.each(Object.entries(pieces))('%s: is refused where it cannot be made', (_, make) => {
    const code = (change: Partial<PieceOptions>) =>
      refusal(() => make({ strings: 8, colours: colours(2), ...change })).code;
    expect(code({ strings: 2 })).toBe('bad-strings');
    expect(code({ strings: 301 })).toBe('bad-strings');
    expect(code({ strings: 4.5 })).toBe('bad-strings');
    expect(code({ colours: [] })).toBe('bad-colours');
    expect(code({ colours: colours(9) })).toBe('bad-colours');
    expect(code({ rows: 0 })).toBe('bad-rows');
    expect(code({ rows: 10_001 })).toBe('bad-rows');
  });

  it('stripes go a slot to the side in every row, and are evenly wide', () => {
    fc.assert(
      fc.property(anyOptions, fc.constantFrom('left', 'right'), (options, lean) => {
        const pattern = diagonalStripes({ ...options, lean });
        const found = seen(pattern);
        const step = lean === 'right' ? 1 : -1;
        for (const [place, colour] of found) {
          const [row, slot] = place.split(' ').map(Number) as [number, number];
          const next = at(found, row + 1, slot + step);
          if (next !== undefined) expect(next).toBe(colour);
        }
        const counts = options.colours.map(
          (_, colour) => pattern.start.filter((given) => given === colour).length,
        );
        expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 40 },
    );
  });

  it('chevrons are their own mirror image, or a row later where strings are odd', () => {
    fc.assert(
      fc.property(anyOptions, (options) => {
        const pattern = chevrons(options);
        const found = seen(pattern);
        const { strings } = options;
        const late = strings % 2;
        for (const [place, colour] of found) {
          const [row, slot] = place.split(' ').map(Number) as [number, number];
          const other = at(found, row + late, strings - 2 - slot);
          const onLeft = slot < Math.floor(strings / 2);
          if (onLeft && other !== undefined) expect(other).toBe(colour);
          // The left side of an arrowhead runs down to the right.
          const next = at(found, row + 1, slot + 1);
          if (slot + 1 < strings / 2 - 1 && next !== undefined) expect(next).toBe(colour);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('diamonds are rings round their middle, first colour innermost', () => {
    fc.assert(
      fc.property(anyOptions.map(fewer), (options) => {
        const { strings } = options;
        const half = Math.floor(strings / 2);
        const rings = Math.ceil(half / 2);
        const found = seen(diamonds(options));
        for (const [place, colour] of found) {
          const [row, slot] = place.split(' ').map(Number) as [number, number];
          if (slot >= half || row >= 2 * half) continue;
          // Steps sideways and down from the middle, and from the half diamonds at the edges.
          const away = half - 1 - slot + Math.abs(row - half);
          const ring = (Math.min(away, 2 * half - away) - 1) / 2;
          expect(colour).toBe(Math.floor((ring * options.colours.length) / rings));
          const other = at(found, row + (strings % 2), strings - 2 - slot);
          if (other !== undefined) expect(other).toBe(colour);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('a zigzag looks the same up and down from each turn', () => {
    fc.assert(
      fc.property(anyOptions, fc.integer({ min: 2, max: 12 }), (options, height) => {
        const pattern = zigzag({ ...options, height, rows: 4 * height });
        const found = seen(pattern);
        for (const turn of [height, 2 * height, 3 * height]) {
          for (let up = 1; up <= height; up++) {
            for (let slot = 0; slot < options.strings - 1; slot++) {
              const below = at(found, turn + up, slot);
              if (turn + up < pattern.rows) expect(below).toBe(at(found, turn - up, slot));
            }
          }
        }
        expect(at(found, 1, 1)).toBe(at(found, 2, 2 > options.strings - 2 ? 0 : 2));
      }),
      { numRuns: 40 },
    );
  });

  it('a wave swings as far as asked to, and stays near a sine', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 0, max: 9 }),
        (swing, longer) => {
          const strings = 40;
          const length = 2 * Math.ceil(Math.PI * swing) + 2 * longer;
          const found = seen(wave({ strings, colours: colours(20), swing, length }));
          // Follow one edge between colours that hangs in the middle at the start.
          const followed = at(found, 0, 20);
          const edge = (row: number) => {
            let slot = row % 2;
            while (slot < strings && at(found, row, slot) !== followed) slot += 2;
            return slot;
          };
          for (let row = 0; row < length; row++) {
            const wanted = swing - swing * Math.cos((2 * Math.PI * row) / length);
            expect(Math.abs(edge(row) - edge(0) - wanted)).toBeLessThanOrEqual(2);
          }
        },
      ),
      { numRuns: 25 },
    );
    for (const length of [18, 25]) {
      const error = refusal(() => wave({ strings: 9, colours: colours(2), length }));
      expect(error.code).toBe('bad-length');
    }
  });
});
