import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lightOf } from '../../src/colour/light.js';
import { ciede2000, cielabOf } from '../../src/colour/spaces.js';
import type { KnotLight } from '../../src/picture/average.js';
import { type MadeChart, makeChart, type PaletteWish } from '../../src/picture/make-chart.js';
import { matchThreads } from '../../src/picture/match-threads.js';

const PLAIN: PaletteWish = { colours: 8, threads: [], dither: false, tidy: false };

function knotsOf(columns: number, hexes: readonly string[]): KnotLight {
  return {
    columns,
    rows: hexes.length / columns,
    light: Float32Array.from(hexes.flatMap(lightOf)),
    seeThrough: 0,
  };
}

function made(knots: KnotLight, wish: Partial<PaletteWish> = {}): MadeChart {
  const work = makeChart(knots, { ...PLAIN, ...wish }, 'Heron');
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

const shown = ({ chart }: MadeChart): string[] =>
  [...chart.cells].map((colour) => chart.colours[colour]?.hex as string);

const hex = fc
  .integer({ min: 0, max: 0xffffff })
  .map((value) => `#${value.toString(16).padStart(6, '0')}`);
const anyKnots = fc.integer({ min: 1, max: 8 }).chain((columns) =>
  fc
    .array(fc.array(hex, { minLength: columns, maxLength: columns }), {
      minLength: 1,
      maxLength: 8,
    })
    .map((rows) => knotsOf(columns, rows.flat())),
);

describe('a palette', () => {
  it('of few colours is those colours, commonest first', () => {
    const drawn = ['#d9642a', '#1f6fb2', '#1f6fb2', '#1f6fb2', '#f4f1e8', '#f4f1e8'];
    const result = made(knotsOf(3, drawn));
    expect(shown(result)).toEqual(drawn);
    expect(result.chart.colours.map((colour) => colour.hex)).toEqual([
      '#1f6fb2',
      '#f4f1e8',
      '#d9642a',
    ]);
  });

  it('is reduced to the flat colours of a drawing, not to mixtures with its soft edges', () => {
    const [lake, chalk] = ['#1f6fb2', '#f4f1e8'];
    const edge = ['#5488be', '#89b0d0', '#bfd1dc'];
    const drawn = Array.from({ length: 200 }, (_, i) =>
      i % 20 === 9 ? (edge[i % 3] as string) : i % 20 < 9 ? lake : chalk,
    );
    const result = made(knotsOf(20, drawn), { colours: 2 });
    expect(result.chart.colours.map((colour) => colour.hex).sort()).toEqual([lake, chalk]);
  });

  it('parts colours as eyes do: two greens are merged before a rare orange is', () => {
    const drawn = Array.from({ length: 100 }, (_, i) =>
      i % 10 === 0 ? '#d9642a' : i % 2 === 0 ? '#2f7d4f' : '#33844f',
    );
    const result = made(knotsOf(10, drawn), { colours: 2 });
    expect(result.chart.colours.map((colour) => colour.hex)).toContain('#d9642a');
  });

  it('has no more colours than wanted, all of them used and different, and is the same each time', () => {
    fc.assert(
      fc.property(
        anyKnots,
        fc.integer({ min: 2, max: 64 }),
        fc.boolean(),
        (knots, colours, dither) => {
          const result = made(knots, { colours, dither });
          const { chart } = result;
          expect(chart.colours.length).toBeLessThanOrEqual(colours);
          expect(new Set(chart.cells).size).toBe(chart.colours.length);
          expect(new Set(chart.colours.map((colour) => colour.hex)).size).toBe(
            chart.colours.length,
          );
          expect(new Set(chart.colours.map((colour) => colour.key)).size).toBe(
            chart.colours.length,
          );
          expect(new Set(chart.colours.map((colour) => colour.name)).size).toBe(
            chart.colours.length,
          );
          expect(made(knots, { colours, dither })).toEqual(result);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('a small thing in a colour of its own', () => {
  it('keeps it beside large areas of many shades', () => {
    // A sky and a sea of 40 shades each, and a sun of 4 knots in 4,000.
    const shade = (from: number, i: number): string =>
      `#${(from + i * 0x010101).toString(16).padStart(6, '0')}`;
    const drawn = Array.from({ length: 4000 }, (_, i) =>
      i % 1000 === 500 ? '#f0c23c' : i < 2000 ? shade(0x9cb7c8, i % 40) : shade(0x123a5c, i % 40),
    );
    const found = made(knotsOf(100, drawn), { colours: 6 }).chart.colours.map((one) => one.hex);
    expect(found).toContain('#f0c23c');
  });
});

describe('own threads', () => {
  const threads = [
    { hex: '#1f6fb2', name: 'lake blue' },
    { hex: '#d9642a', name: 'buoy orange' },
    { hex: '#f4f1e8', name: 'chalk' },
  ];

  it('take the place of the nearest colours, and keep their names', () => {
    const result = made(knotsOf(2, ['#2a6aa8', '#ffffff', '#fdfdfb', '#2a6aa8']), { threads });
    expect(shown(result)).toEqual(['#1f6fb2', '#f4f1e8', '#f4f1e8', '#1f6fb2']);
    expect(result.chart.colours.map((colour) => colour.name).sort()).toEqual([
      'chalk',
      'lake blue',
    ]);
    expect(result.matches).toHaveLength(3);
  });

  it('are each the nearest by CIEDE2000', () => {
    fc.assert(
      fc.property(
        fc.array(hex, { minLength: 1, maxLength: 5 }),
        fc.array(hex, { minLength: 1, maxLength: 5 }),
        (colours, own) => {
          const matches = matchThreads(
            colours,
            own.map((thread) => ({ hex: thread, name: '' })),
          );
          matches.forEach(({ hex: colour, thread, difference }) => {
            expect(ciede2000(cielabOf(colour), cielabOf(own[thread] as string))).toBe(difference);
            for (const other of own) {
              expect(ciede2000(cielabOf(colour), cielabOf(other))).toBeGreaterThanOrEqual(
                difference,
              );
            }
          });
        },
      ),
    );
  });

  it('are all that a chart has, dithered or not', () => {
    fc.assert(
      fc.property(anyKnots, fc.boolean(), (knots, dither) => {
        const own = new Set(threads.map((thread) => thread.hex));
        for (const colour of made(knots, { threads, dither }).chart.colours) {
          expect(own).toContain(colour.hex);
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('dithering', () => {
  // 40 x 40 knots of one grey from black and white: the mean light must come out, which it does
  // not where coded values are diffused (there, light 0.216 would become 0.5).
  it.each(['#808080', '#303030', '#d0d0d0'])('keeps the mean light of %s', (grey) => {
    const drawn = [...Array.from({ length: 1600 }, () => grey)];
    drawn[0] = '#000000';
    drawn[1] = '#ffffff';
    const result = made(knotsOf(40, drawn), {
      dither: true,
      threads: [
        { hex: '#000000', name: 'slate' },
        { hex: '#ffffff', name: 'chalk' },
      ],
    });
    const white = shown(result).filter((colour) => colour === '#ffffff').length / 1600;
    expect(white).toBeCloseTo(lightOf(grey)[0], 1);
    expect(Math.abs(white - lightOf(grey)[0])).toBeLessThan(0.02);
  });

  it('leaves knots alone that have a colour of the palette', () => {
    const drawn = ['#1f6fb2', '#f4f1e8', '#d9642a', '#1f6fb2'];
    expect(shown(made(knotsOf(2, drawn), { dither: true }))).toEqual(drawn);
  });
});
