import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerOrRefusal } from '../../../../testing/hostile/answer.js';
import { roomTaken } from '../../../../testing/hostile/room.js';
import { fuzzRuns } from '../../../../testing/hostile/runs.js';
import {
  InputError,
  readDiagonalSeen,
  readPatternOrPicture,
  readPictureFile,
} from '../../src/index.js';
import { pngOf } from '../support/write-png.js';

type Part = readonly [type: string, data: Uint8Array];

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

function header(width: number, height: number, depth = 8, type = 0, interlace = 0): Part {
  const data = new Uint8Array(13);
  const view = new DataView(data.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  data.set([depth, type, 0, 0, interlace], 8);
  return ['IHDR', data];
}

const lines = (bytes: number): Uint8Array => deflateSync(new Uint8Array(bytes));
const END: Part = ['IEND', new Uint8Array(0)];

/** Every way in which the project reads a PNG. */
const READERS: Record<string, (bytes: Uint8Array) => unknown> = {
  'as a chart': (bytes) => readPatternOrPicture(bytes, 'hostile'),
  'as a wanted picture': (bytes) => readPictureFile(bytes, 'hostile'),
  'as a piece that was seen': (bytes) => readDiagonalSeen(bytes, 'hostile'),
};

const anySide = fc.oneof(
  fc.integer({ min: 0, max: 12 }),
  fc.constantFrom(299, 300, 301, 10_000, 10_001, 65_536, 0x7fff_ffff, 0x8000_0000, 0xffff_ffff),
);

const anyHeader: fc.Arbitrary<Part> = fc
  .tuple(
    anySide,
    anySide,
    fc.constantFrom(1, 2, 4, 8, 16, 0, 3, 255),
    fc.constantFrom(0, 2, 3, 4, 6, 1, 255),
    fc.constantFrom(0, 1, 2),
  )
  .map((parts) => header(...parts));

const anyPart: fc.Arbitrary<Part> = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: 0, max: 400 }).map((n): Part => ['IDAT', lines(n)]) },
  { weight: 1, arbitrary: fc.constant<Part>(['IDAT', lines(2_000_000)]) },
  {
    weight: 2,
    arbitrary: fc.uint8Array({ maxLength: 40 }).map((data): Part => ['PLTE', data]),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(
        fc.constantFrom('tRNS', 'acTL', 'iCCP', 'zTXt', 'IDAT', 'XXXX', 'IHDR'),
        fc.uint8Array(),
      )
      .map(([type, data]): Part => [type, data]),
  },
);

describe.each(Object.entries(READERS))('a PNG made to harm, read %s', (_, read) => {
  it('is read, or refused in plain words, and takes no more room than its kind may', () => {
    fc.assert(
      fc.property(
        anyHeader,
        fc.array(anyPart, { maxLength: 5 }),
        fc.nat(),
        fc.boolean(),
        (first, parts, cut, whole) => {
          const png = pngOf([first, ...parts, END]);
          const bytes = whole ? png : png.slice(0, cut % png.length);
          const before = bytes.slice();
          const room = roomTaken(() => answerOrRefusal(InputError, () => read(bytes)));
          // The pixels of the largest picture allowed, several times over.
          expect(room).toBeLessThan(200 * 1024 * 1024);
          expect(Buffer.compare(bytes, before)).toBe(0);
        },
      ),
      fuzzRuns(60),
    );
  });

  it.each([
    ['a giant size', header(0xffff_ffff, 0xffff_ffff)],
    ['one giant side', header(1, 0xffff_ffff)],
    ['a giant interlaced size', header(0x7fff_ffff, 0x7fff_ffff, 16, 6, 1)],
    ['more rows than a pattern has', header(10, 10_001)],
    ['more columns than a pattern has', header(301, 10)],
  ])('is refused before anything is made of it when it states %s', (_name, first) => {
    const bytes = pngOf([first, ['IDAT', lines(1_000_000)], END]);
    const room = roomTaken(() => {
      expect(() => read(bytes)).toThrow(InputError);
    });
    expect(room).toBeLessThan(100_000);
  });

  it('is refused where its texts and pixels unpack to far more than it states', () => {
    const bomb = lines(30_000_000);
    const text = Buffer.concat([utf8('Comment\0\0'), bomb]);
    const bytes = pngOf([header(9, 9), ['zTXt', text], ['iCCP', text], ['IDAT', bomb], END]);
    const room = roomTaken(() => {
      expect(() => read(bytes)).toThrow(/more pixels/);
    });
    expect(room).toBeLessThan(400_000);
  });

  it('is refused where the length of a part reaches beyond the file', () => {
    for (const length of [0x7fff_ffff, 0x8000_0000, 0xffff_ffff, 0xffff_fff4]) {
      const bytes = pngOf([header(9, 9), ['IDAT', lines(90)], END]);
      new DataView(bytes.buffer).setUint32(33, length);
      expect(() => read(bytes)).toThrow(/ends before/);
    }
  });
});
