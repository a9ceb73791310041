import { InputError } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerOrRefusal } from '../../../../testing/hostile/answer.js';
import { fuzzRuns } from '../../../../testing/hostile/runs.js';
import { checkPicture } from '../../src/picture/check-file.js';
import { PICTURE_LIMITS } from '../../src/picture/limits.js';

const latin = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));
const big = (value: number, bytes: number): number[] =>
  Array.from({ length: bytes }, (_, i) => Math.floor(value / 256 ** (bytes - 1 - i)) % 256);
const little = (value: number, bytes: number): number[] => big(value, bytes).reverse();

/** Sizes of a part: right ones, none, ones that lead back into it, and ones beyond any file. */
const anySize = (right: number) =>
  fc.oneof(
    { weight: 3, arbitrary: fc.constant(right) },
    fc.constantFrom(0, 1, 2, 7, 0x7fff, 0xffff, 0x7fff_ffff, 0x8000_0000, 0xffff_ffff),
  );

const anySide = fc.constantFrom(0, 1, 300, 12_000, 16_384, 65_535, 0x7fff_ffff, 0xffff_ffff);
const anyRest = fc.array(fc.nat(255), { maxLength: 40 });

/** JPEG (ITU-T T.81, annex B): a marker, the length of its segment, and the segment. */
const anyJpeg = fc
  .array(
    fc
      .tuple(fc.constantFrom(0xc0, 0xc2, 0xc4, 0xd8, 0xda, 0xe0, 0xe1, 0xff, 0x00), anyRest)
      .chain(([marker, rest]) =>
        anySize(rest.length + 2).map((size) => [0xff, marker, ...big(size % 65_536, 2), ...rest]),
      ),
    { maxLength: 8 },
  )
  .map((segments) => [0xff, 0xd8, ...segments.flat()]);

/** WebP (RFC 9649): a RIFF container of chunks. */
const anyWebp = fc
  .array(
    fc
      .tuple(fc.constantFrom('VP8 ', 'VP8L', 'VP8X', 'ALPH', 'EXIF', 'XXXX'), anyRest)
      .chain(([name, rest]) =>
        anySize(rest.length).map((size) => [...latin(name), ...little(size, 4), ...rest]),
      ),
    { maxLength: 5 },
  )
  .chain((chunks) => {
    const inside = chunks.flat();
    return anySize(inside.length + 4).map((size) => [
      ...latin('RIFF'),
      ...little(size, 4),
      ...latin('WEBP'),
      ...inside,
    ]);
  });

/** AVIF and HEIC (ISO/IEC 14496-12): boxes within boxes, each with its size before its name. */
const anyBoxes = fc
  .array(
    fc
      .tuple(
        fc.constantFrom('meta', 'iprp', 'ipco', 'ispe', 'ipma', 'pitm', 'iinf', 'mdat', 'free'),
        anySide,
        anySide,
        anyRest,
      )
      .chain(([name, width, height, rest]) =>
        anySize(20 + rest.length).map((size) => [
          ...big(size, 4),
          ...latin(name),
          ...[0, 0, 0, 0],
          ...big(width, 4),
          ...big(height, 4),
          ...rest,
        ]),
      ),
    { maxLength: 8 },
  )
  .chain((boxes) =>
    fc
      .constantFrom('avif', 'avis', 'heic', 'mif1')
      .map((brand) => [
        ...big(20, 4),
        ...latin(`ftyp${brand}`),
        ...[0, 0, 0, 0],
        ...latin('mif1'),
        ...boxes.flat(),
      ]),
  );

const anyPng = fc
  .tuple(anySide, anySide, anyRest)
  .map(([width, height, rest]) => [
    ...[0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    ...big(13, 4),
    ...latin('IHDR'),
    ...big(width, 4),
    ...big(height, 4),
    ...rest,
  ]);

describe('photographs made hostile', () => {
  it.each([
    ['JPEG', anyJpeg],
    ['WebP', anyWebp],
    ['AVIF and HEIC', anyBoxes],
    ['PNG', anyPng],
  ])('are refused before they are unpacked, or within the limits: %s', (_, bytesOf) => {
    fc.assert(
      fc.property(bytesOf, fc.nat(), fc.boolean(), (list, cut, whole) => {
        const bytes = Uint8Array.from(whole ? list : list.slice(0, cut % (list.length + 1)));
        const before = bytes.slice();
        const header = answerOrRefusal(InputError, () => checkPicture(bytes, 'heron\u202e.jpg'));
        expect(Buffer.compare(bytes, before)).toBe(0);
        if (header === null) return;
        expect(header.width * header.height).toBeLessThanOrEqual(PICTURE_LIMITS.maxPixels);
        expect(Math.max(header.width, header.height)).toBeLessThanOrEqual(PICTURE_LIMITS.maxSide);
      }),
      fuzzRuns(250),
    );
  });
});
