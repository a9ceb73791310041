import fc from 'fast-check';
import { encode } from 'fast-png';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { type Chart, readPngChart } from '../../src/index.js';
import { refusal } from '../support/refusal.js';
import { pngOf, type RawPng, writePng } from '../support/write-png.js';

/** Red, green and blue of each cell of a chart. */
function rgbOf(chart: Chart): number[] {
  return [...chart.cells].flatMap((cell) => {
    const hex = chart.colours[cell]?.hex ?? '';
    return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
  });
}

const anySize = fc.record({
  width: fc.integer({ min: 1, max: 20 }),
  height: fc.integer({ min: 1, max: 20 }),
});

/** Pictures of up to eight colours, as bytes of red, green, blue. */
const anyPicture = anySize.chain(({ width, height }) =>
  fc
    .record({
      colours: fc.array(fc.tuple(fc.nat(255), fc.nat(255), fc.nat(255)), {
        minLength: 1,
        maxLength: 8,
      }),
      pixels: fc.array(fc.nat(), { minLength: width * height, maxLength: width * height }),
    })
    .map(({ colours, pixels }) => ({
      width,
      height,
      rgb: pixels.flatMap((pixel) => colours[pixel % colours.length] as number[]),
    })),
);

describe('PNG pictures written by other programs', () => {
  // pngjs 7.0.0, a general-purpose library that shares no code with the reader.
  it.each([
    { colorType: 2, bitDepth: 8 },
    { colorType: 6, bitDepth: 8 },
    { colorType: 2, bitDepth: 16 },
    { colorType: 6, bitDepth: 16 },
    { colorType: 0, bitDepth: 8 },
    { colorType: 4, bitDepth: 8 },
  ] as const)('by pngjs, colour type $colorType with $bitDepth bits, are read exactly', (kind) => {
    const grey = kind.colorType === 0 || kind.colorType === 4;
    fc.assert(
      fc.property(anyPicture, fc.integer({ min: -1, max: 4 }), ({ width, height, rgb }, filter) => {
        const shown = grey ? rgb.map((_, i) => rgb[i - (i % 3)] as number) : rgb;
        const samples = shown.flatMap((value, i) => (i % 3 === 2 ? [value, 255] : [value]));
        const data =
          kind.bitDepth === 8
            ? Buffer.from(samples)
            : Buffer.from(Uint16Array.from(samples, (sample) => 257 * sample).buffer);
        const png = Object.assign(new PNG({ width, height }), { data });
        const bytes = PNG.sync.write(png, { ...kind, inputColorType: 6, filterType: filter });
        const { chart, notices } = readPngChart(bytes);
        expect([chart.columns, chart.rows]).toEqual([width, height]);
        expect(rgbOf(chart)).toEqual(shown);
        expect(notices).toEqual([]);
      }),
    );
  });

  it.each(['null', 'Adam7'] as const)(
    'by fast-png, interlaced %s, are read exactly',
    (interlace) => {
      fc.assert(
        fc.property(anyPicture, ({ width, height, rgb }) => {
          const data = Uint8Array.from(rgb);
          const bytes = encode({ width, height, data, channels: 3, depth: 8 }, { interlace });
          expect(rgbOf(readPngChart(bytes).chart)).toEqual(rgb);
        }),
      );
    },
  );

  const kinds = [
    ...[1, 2, 4, 8, 16].map((depth) => ({ colourType: 0, depth })),
    ...[1, 2, 4, 8].map((depth) => ({ colourType: 3, depth })),
    ...[2, 4, 6].flatMap((colourType) => [8, 16].map((depth) => ({ colourType, depth }))),
  ];
  it.each(kinds.flatMap((kind) => [false, true].map((interlaced) => ({ ...kind, interlaced }))))(
    'of type $colourType, $depth bits, interlaced $interlaced, look as pngjs shows them',
    (kind) => {
      fc.assert(
        fc.property(anyRaw(kind), (raw) => {
          const bytes = writePng(raw);
          const seen = PNG.sync.read(Buffer.from(bytes));
          const onWhite: number[] = [];
          for (let i = 0; i < seen.data.length; i += 4) {
            const alpha = seen.data[i + 3] as number;
            for (let c = 0; c < 3; c++) {
              const value = seen.data[i + c] as number;
              onWhite.push(Math.round((value * alpha + 255 * (255 - alpha)) / 255));
            }
          }
          const found = rgbOf(readPngChart(bytes).chart);
          // pngjs cuts 16-bit samples where the reader rounds them.
          const off = raw.depth === 16 ? 2 : 0;
          expect(found).toHaveLength(onWhite.length);
          const furthest = found.reduce(
            (most, value, i) => Math.max(most, Math.abs(value - (onWhite[i] as number))),
            0,
          );
          expect(furthest).toBeLessThanOrEqual(off);
        }),
      );
    },
  );
});

function anyRaw(kind: { colourType: number; depth: number; interlaced: boolean }) {
  const channels = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 }[kind.colourType] as number;
  const most = 2 ** kind.depth - 1;
  const entries = kind.colourType === 3 ? most + 1 : 0;
  return anySize.chain(({ width, height }): fc.Arbitrary<RawPng> => {
    const pixel = fc.array(fc.nat(most), { minLength: channels, maxLength: channels });
    return fc
      .record({
        pixels: fc.array(pixel, { minLength: 1, maxLength: 8 }),
        picks: fc.array(fc.nat(), { minLength: width * height, maxLength: width * height }),
        palette: fc.uint8Array({ minLength: 3 * entries, maxLength: 3 * entries }),
        alphas: fc.array(fc.nat(255), { minLength: 1, maxLength: 256 }),
        clear: fc.boolean(),
      })
      .map(({ pixels, picks, palette, alphas, clear }) => {
        const samples = picks.flatMap((pick) => pixels[pick % pixels.length] as number[]);
        const raw = { ...kind, width, height, samples };
        if (kind.colourType === 3) {
          return {
            ...raw,
            palette: [...palette],
            ...(clear ? { transparency: alphas.slice(0, entries) } : {}),
          };
        }
        if (!clear || kind.colourType > 3) return raw;
        const first = pixels[0] as number[];
        return { ...raw, transparency: first.flatMap((value) => [value >> 8, value & 255]) };
      });
  });
}

describe('a PNG chart', () => {
  const grey = (samples: number[], width: number, height: number, depth = 8): RawPng => ({
    width,
    height,
    depth,
    colourType: 0,
    samples,
  });

  it('gives keys in the order in which colours first appear, and plain names', () => {
    const samples = [31, 111, 178, 255, 255, 255, 217, 119, 6, 31, 111, 178];
    const { chart } = readPngChart(
      writePng({ width: 2, height: 2, depth: 8, colourType: 2, samples }),
    );
    expect(chart.colours).toEqual([
      { key: 'a', hex: '#1f6fb2', name: 'blue' },
      { key: 'b', hex: '#ffffff', name: 'white' },
      { key: 'c', hex: '#d97706', name: 'orange' },
    ]);
    expect(chart.cells).toEqual(Uint8Array.of(0, 1, 2, 0));
  });

  it('may have 64 colours but not 65, and says where the 65th is', () => {
    const shades = (count: number) => Array.from({ length: 70 }, (_, i) => (i % count) * 3);
    expect(readPngChart(writePng(grey(shades(64), 7, 10))).chart.colours).toHaveLength(64);
    const error = refusal(() => readPngChart(writePng(grey(shades(67), 7, 10))));
    expect(error).toMatchObject({ code: 'too-many-colours', place: { row: 10, column: 2 } });
    expect(error.what).toContain('67 colours');
  });

  it('says where see-through pixels were laid on white', () => {
    const samples = [9, 255, 9, 255, 9, 0, 9, 127];
    const { chart, notices } = readPngChart(
      writePng({ width: 2, height: 2, depth: 8, colourType: 4, samples }),
    );
    expect(chart.colours.map((colour) => colour.hex)).toEqual(['#090909', '#ffffff', '#848484']);
    expect(notices).toMatchObject([{ code: 'transparency-flattened' }]);
    expect(notices[0]?.message).toMatch(/^2 pixels.*row 2, column 1\.$/);
  });

  it('says when 16 bits were rounded to 8, and only then', () => {
    const exact = readPngChart(writePng(grey([0, 0x8080, 0xffff], 3, 1, 16)));
    expect(exact.notices).toEqual([]);
    const rounded = readPngChart(writePng(grey([0, 0x8081, 0xffff], 3, 1, 16)));
    expect(rounded.notices).toMatchObject([{ code: 'samples-rounded' }]);
    expect(rounded.chart.colours[1]?.hex).toBe('#808080');
  });

  it.each([
    [301, 5, 'too-many-columns', /301 pixels wide and 5 high.*Turn it/],
    [300, 10_001, 'too-many-rows', /300 columns and 10000 rows/],
    [0, 5, 'png-damaged', /no pixels/],
    [0xffffffff, 0xffffffff, 'too-many-columns', /scale/],
  ])('of %i x %i is refused by its header', (width, height, code, message) => {
    const header = Buffer.alloc(13);
    header.writeUInt32BE(width, 0);
    header.writeUInt32BE(height, 4);
    header.set([8, 0], 8);
    const error = refusal(() => readPngChart(pngOf([['IHDR', header]])));
    expect(error.code).toBe(code);
    expect(error.message).toMatch(message);
  });

  it('of the largest size is read', () => {
    const samples = new Uint8Array(3_000_000).map((_, i) => (i * 7) & 63);
    const { chart } = readPngChart(
      encode({ width: 300, height: 10_000, data: samples, channels: 1, depth: 8 }),
    );
    expect([chart.columns, chart.rows, chart.colours.length]).toEqual([300, 10_000, 64]);
  });
});
