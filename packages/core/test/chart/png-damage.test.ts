import { constants, deflateRawSync, deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPngChart } from '../../src/index.js';
import { readOrRefusal, refusal } from '../support/refusal.js';
import { pngOf, writePng } from '../support/write-png.js';

const SIZE = { width: 5, height: 4, depth: 8 };
const SAMPLES = Array.from({ length: 20 }, (_, i) => i % 3);
const PALETTE = [0, 0, 0, 255, 0, 0, 0, 0, 255];
const GOOD = writePng({ ...SIZE, colourType: 3, samples: SAMPLES, palette: PALETTE });

const header = (...rest: number[]) => Uint8Array.of(0, 0, 0, 5, 0, 0, 0, 4, ...rest);
const lines = (size: number) => deflateSync(new Uint8Array(size));
const END = ['IEND', new Uint8Array(0)] as const;
const GREY = ['IHDR', header(8, 0, 0, 0, 0)] as const;

describe('a damaged PNG', () => {
  it('is refused wherever it is cut off', () => {
    for (let length = 0; length < GOOD.length; length++) {
      expect(refusal(() => readPngChart(GOOD.slice(0, length))).code).toBe('png-damaged');
    }
  });

  it('is refused when any one bit is flipped', () => {
    const anyBit = fc.tuple(fc.nat(GOOD.length - 1), fc.nat(7));
    fc.assert(
      fc.property(anyBit, ([at, bit]) => {
        const bytes = GOOD.slice();
        bytes[at] = (bytes[at] as number) ^ (1 << bit);
        expect(readOrRefusal(() => readPngChart(bytes))).toBeInstanceOf(Error);
      }),
      { numRuns: 500 },
    );
  });

  it.each([
    ['no header first', pngOf([['IDAT', lines(24)], GREY, END]), /begin with its header/],
    ['two headers', pngOf([GREY, GREY, ['IDAT', lines(24)], END]), /two headers/],
    ['too few pixels', pngOf([GREY, ['IDAT', lines(23)], END]), /fewer pixels/],
    ['too many pixels', pngOf([GREY, ['IDAT', lines(25)], END]), /more pixels/],
    ['no pixels', pngOf([GREY, END]), /cannot be unpacked/],
    ['no zlib', pngOf([GREY, ['IDAT', new Uint8Array(30)], END]), /cannot be unpacked/],
    [
      'no such filter',
      pngOf([GREY, ['IDAT', deflateSync(new Uint8Array(24).fill(9))], END]),
      /filter/,
    ],
    ['no such part', pngOf([GREY, ['ABCD', new Uint8Array(1)], END]), /ABCD/],
    ['no such depth', pngOf([['IHDR', header(3, 0, 0, 0, 0)], END]), /3 bits/],
    ['no such colour type', pngOf([['IHDR', header(8, 5, 0, 0, 0)], END]), /type 5/],
    ['no such interlacing', pngOf([['IHDR', header(8, 0, 0, 0, 2)], END]), /packed/],
    ['no palette', pngOf([['IHDR', header(8, 3, 0, 0, 0)], ['IDAT', lines(24)], END]), /palette/],
    ['sent as text', Uint8Array.of(0x3f, 0x50, 0x4e, 0x47, 0x0a, 0x1a, 0x0a), /sent as text/],
  ])('with %s is refused', (_, bytes, message) => {
    const error = refusal(() => readPngChart(bytes));
    expect(error.code).toBe('png-damaged');
    expect(error.what).toMatch(message);
  });

  it('that asks for a colour outside its palette is refused with the pixel', () => {
    const bytes = writePng({ ...SIZE, colourType: 3, samples: SAMPLES, palette: PALETTE.slice(3) });
    expect(refusal(() => readPngChart(bytes)).place).toEqual({ row: 1, column: 3 });
  });
});

describe('a PNG made to harm', () => {
  it('is not unpacked beyond its size', () => {
    const bomb = pngOf([GREY, ['IDAT', deflateSync(new Uint8Array(100_000_000))], END]);
    expect(refusal(() => readPngChart(bomb)).what).toContain('more pixels');
  });

  it('has its texts and profiles skipped unread', () => {
    const profile = Buffer.concat([Buffer.from('p\0\0'), Buffer.from('no zlib')]);
    const bytes = pngOf([
      GREY,
      ['iCCP', profile],
      ['zTXt', profile],
      ['tEXt', Uint8Array.of(1)],
      ['IDAT', lines(24)],
      END,
    ]);
    expect(readPngChart(bytes).chart.columns).toBe(5);
  });

  it('may come in very many pieces', () => {
    const packed = lines(24);
    const pieces = [...packed].flatMap((byte) => [
      ['IDAT', Uint8Array.of(byte)] as const,
      ...Array.from({ length: 500 }, () => ['IDAT', new Uint8Array(0)] as const),
    ]);
    expect(readPngChart(pngOf([GREY, ...pieces, END])).chart.rows).toBe(4);
  });
});

describe('packed pixels in many blocks', () => {
  /** Lines of one grey pixel, each packed by itself, with empty blocks after it. */
  const column = (rows: number, empty: number) => {
    const line = deflateRawSync(new Uint8Array(2), { finishFlush: constants.Z_FULL_FLUSH });
    const nothing = Buffer.from('000000ffff'.repeat(empty), 'hex');
    const lines = Array.from({ length: rows }, () => Buffer.concat([line, nothing]));
    const sum = 2 * rows;
    const end = Buffer.from([1, 0, 0, 255, 255, sum >> 8, sum & 255, 0, 1]);
    const packed = Buffer.concat([Buffer.from([0x78, 1]), ...lines, end]);
    const size = Uint8Array.of(0, 0, 0, 1, 0, 0, rows >> 8, rows & 255, 8, 0, 0, 0, 0);
    return pngOf([['IHDR', size], ['IDAT', packed], END]);
  };

  it('are read when there are a few for each line', () => {
    expect(readPngChart(column(5000, 1)).chart.rows).toBe(5000);
  });

  it('are refused when there are absurdly many', () => {
    expect(refusal(() => readPngChart(column(5000, 50))).what).toContain('cannot be unpacked');
  });
});

describe('an animated PNG', () => {
  it('is read as its still picture, with a notice', () => {
    const bytes = pngOf([GREY, ['acTL', new Uint8Array(8)], ['IDAT', lines(24)], END]);
    expect(readPngChart(bytes).notices).toMatchObject([{ code: 'animation-ignored' }]);
  });
});
