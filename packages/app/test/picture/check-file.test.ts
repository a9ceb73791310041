import { InputError } from '@halfhitch/core';
import fc from 'fast-check';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { checkFileSize, checkPicture } from '../../src/picture/check-file.js';

const png = (width: number, height: number): Uint8Array => {
  const bytes = new Uint8Array(PNG.sync.write(new PNG({ width: 1, height: 1 })));
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  view.setUint32(16, width);
  view.setUint32(20, height);
  return bytes;
};

const refusal = (work: () => unknown): InputError => {
  try {
    work();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('Nothing was refused.');
};

describe('a picture file', () => {
  it('is known by what is in it', () => {
    expect(checkPicture(png(640, 480), 'heron.jpg')).toEqual({
      type: 'png',
      width: 640,
      height: 480,
    });
  });

  it('is refused when it would unpack to more than can be held, however small it is', () => {
    const error = refusal(() => checkPicture(png(30_000, 30_000), 'heron.png'));
    expect(error.code).toBe('picture-too-large');
    expect(error.message).toContain('heron.png');
    expect(error.message).toContain('900.0 megapixels');
    expect(refusal(() => checkPicture(png(20_000, 2), 'a.png')).code).toBe('picture-too-large');
  });

  it('is refused when the file is too large, before it is read', () => {
    expect(refusal(() => checkFileSize(33 * 2 ** 20, 'otter.png')).message).toContain('33.0 MiB');
    expect(() => checkFileSize(32 * 2 ** 20, 'otter.png')).not.toThrow();
  });

  it.each([
    ['nothing', new Uint8Array(), 'empty'],
    ['text', new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"/>'), 'no picture'],
    [
      'a GIF',
      Uint8Array.from(atob('R0lGODlhAQABAAAAACwAAAAAAQABAAA='), (c) => c.charCodeAt(0)),
      'GIF',
    ],
    ['no pixels', png(0, 5), ''],
  ])('is refused with advice when it is %s', (_, bytes, words) => {
    const error = refusal(() => checkPicture(bytes, 'tarn'));
    expect(error.message).toContain(words);
    expect(error.remedy).not.toBe('');
  });

  it('that is anything at all is taken or refused, and nothing else', () => {
    const signatures = [
      [137, 80, 78, 71, 13, 10, 26, 10],
      [255, 216, 255, 224],
      [82, 73, 70, 70],
      [],
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...signatures),
        fc.uint8Array({ maxLength: 80 }),
        (signature, rest) => {
          const bytes = Uint8Array.from([...signature, ...rest]);
          try {
            const { width, height } = checkPicture(bytes, 'x');
            expect(width * height).toBeGreaterThan(0);
          } catch (error) {
            expect(error).toBeInstanceOf(InputError);
          }
        },
      ),
    );
  });
});
