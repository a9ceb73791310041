import { strFromU8 } from 'fflate';
import { InputError } from '../errors.js';

/**
 * Text of a UTF-8 file, without the mark some editors put in front.
 *
 * @throws InputError with line and column when the bytes are not UTF-8 (RFC 3629)
 */
export function decodeUtf8(bytes: Uint8Array): string {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
    throw new InputError(
      'not-utf8',
      'The file is saved as UTF-16.',
      {},
      'Save it as UTF-8; text editors offer this as "Encoding".',
    );
  }
  const bad = firstBadByte(bytes);
  if (bad >= 0) {
    throw new InputError(
      'not-utf8',
      'The file is not text in UTF-8.',
      placeOfByte(bytes, bad),
      'Save it as plain text with the encoding UTF-8, or give a PNG picture instead.',
    );
  }
  const marked = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  return strFromU8(marked ? bytes.subarray(3) : bytes);
}

/** Index of the first byte that is no part of a well-formed character; -1 when all are. */
function firstBadByte(bytes: Uint8Array): number {
  const { length } = bytes;
  let i = 0;
  while (i < length) {
    const lead = bytes[i] as number;
    if (lead < 0x80) {
      i++;
      continue;
    }
    const more = lead >= 0xf0 ? 3 : lead >= 0xe0 ? 2 : 1;
    if (lead < 0xc2 || lead > 0xf4) return i;
    // The second byte rules out overlong forms, surrogates and codes above U+10FFFF.
    const second = bytes[i + 1] ?? 0;
    const low = lead === 0xe0 ? 0xa0 : lead === 0xf0 ? 0x90 : 0x80;
    const high = lead === 0xed ? 0x9f : lead === 0xf4 ? 0x8f : 0xbf;
    if (second < low || second > high) return i;
    for (let k = 2; k <= more; k++) {
      if (((bytes[i + k] ?? 0) & 0xc0) !== 0x80) return i;
    }
    i += more + 1;
  }
  return -1;
}

function placeOfByte(bytes: Uint8Array, at: number): { line: number; column: number } {
  let line = 1;
  let column = 1;
  for (let i = 0; i < at; i++) {
    const byte = bytes[i] as number;
    if (byte === 0x0a || (byte === 0x0d && bytes[i + 1] !== 0x0a)) {
      line++;
      column = 1;
    } else if ((byte & 0xc0) !== 0x80 && byte !== 0x0d) column++;
  }
  return { line, column };
}
