import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeUtf8 } from '../../src/index.js';
import { readOrRefusal, refusal } from '../support/refusal.js';

// The platform's decoder, as a second opinion.
function strictly(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

describe('UTF-8', () => {
  it('is decoded as the platform decodes it, and refused where it refuses', () => {
    const pieces = fc.oneof(
      fc.string({ unit: 'binary' }).map((text) => [...new TextEncoder().encode(text)]),
      fc.array(fc.constantFrom(0x80, 0xbf, 0xc0, 0xc2, 0xe0, 0xa0, 0xed, 0x9f, 0xf0, 0x90, 0xf4)),
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 4 }), (parts) => {
        const bytes = Uint8Array.from([0x41, ...parts.flat()]);
        const decoded = readOrRefusal(() => decodeUtf8(bytes));
        const expected = strictly(bytes);
        if (expected === undefined) expect(decoded).toBeInstanceOf(Error);
        else expect(decoded).toBe(expected);
      }),
      { numRuns: 1000 },
    );
  });

  it('is refused with the place of the first bad byte', () => {
    const bytes = Uint8Array.of(0x61, 0x0a, 0xc3, 0xa4, 0x62, 0xff, 0x63);
    expect(refusal(() => decodeUtf8(bytes)).place).toEqual({ line: 2, column: 3 });
  });

  it('is told from UTF-16', () => {
    const error = refusal(() => decodeUtf8(Uint8Array.of(0xff, 0xfe, 0x61, 0)));
    expect(error.message).toContain('UTF-16');
  });
});
