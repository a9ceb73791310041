import { crc32 } from './crc.js';
import { damaged } from './damage.js';
import { ColourType, type PngHeader, readHeader } from './header.js';

/** What of a PNG says how its pixels look; the rest is left unread. */
export interface PngChunks {
  readonly header: PngHeader;
  /** Red, green and blue of each entry of the palette; empty without one. */
  readonly palette: Uint8Array;
  /** Contents of tRNS; empty without one. */
  readonly transparency: Uint8Array;
  /** The packed pixels, in one piece. */
  readonly packed: Uint8Array;
  readonly animated: boolean;
}

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

function hasPngSignature(bytes: Uint8Array): boolean {
  return SIGNATURE.every((byte, i) => bytes[i] === byte);
}

/**
 * Takes a PNG apart and checks the pieces that are used: their order, lengths and checksums. Text,
 * profiles and the like are skipped unread, as they may be bombs and say nothing about knots.
 */
export function readChunks(bytes: Uint8Array): PngChunks {
  if (!hasPngSignature(bytes)) {
    throw damaged('The first bytes are not those of a PNG; the file may have been sent as text.');
  }
  let header: PngHeader | undefined;
  let palette = new Uint8Array(0);
  let transparency = new Uint8Array(0);
  let animated = false;
  const pieces: Uint8Array[] = [];
  for (const { type, data } of chunksOf(bytes)) {
    if (header === undefined) {
      if (type !== 'IHDR') throw damaged('The picture does not begin with its header.');
      header = readHeader(data);
    } else if (type === 'IHDR') throw damaged('The picture has two headers.');
    else if (type === 'PLTE') palette = data.slice();
    else if (type === 'tRNS') transparency = data.slice();
    else if (type === 'acTL') animated = true;
    else if (type === 'IDAT') pieces.push(data);
    else if (isCritical(type) && type !== 'IEND') {
      throw damaged(`The picture has a part ${type}, which PNG does not have.`);
    }
  }
  if (header === undefined) throw damaged('The picture is empty.');
  checkPalette(header, palette);
  return { header, palette, transparency, packed: joined(pieces), animated };
}

interface Chunk {
  readonly type: string;
  readonly data: Uint8Array;
}

/** No program cuts a picture as small as a chart into nearly as many. */
const MOST_PARTS = 200_000;
const USED = new Set(['IHDR', 'PLTE', 'IDAT', 'tRNS', 'acTL', 'IEND']);

/** Chunks up to IEND; what follows that is no part of the picture. */
function* chunksOf(bytes: Uint8Array): Generator<Chunk> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  let at = SIGNATURE.length;
  for (let parts = 0; ; parts++) {
    if (parts === MOST_PARTS) throw damaged(`It is cut into more than ${MOST_PARTS} parts.`);
    if (at + 12 > bytes.length) throw truncated();
    const length = view.getUint32(at);
    const type = typeAt(bytes, at + 4);
    if (type === undefined) throw damaged(`At byte ${at} no part of a picture begins.`);
    const end = at + 8 + length;
    if (end + 4 > bytes.length) throw truncated();
    if (USED.has(type) || isCritical(type)) {
      if (crc32(bytes, at + 4, end) !== view.getUint32(end)) {
        throw damaged(`The checksum of its part ${type} at byte ${at} is wrong.`);
      }
      yield { type, data: bytes.subarray(at + 8, end) };
    }
    if (type === 'IEND') return;
    at = end + 4;
  }
}

/** Four letters; undefined when they are none. */
function typeAt(bytes: Uint8Array, at: number): string | undefined {
  let type = '';
  for (let i = at; i < at + 4; i++) {
    const code = bytes[i] as number;
    const capital = code & ~0x20;
    if (capital < 0x41 || capital > 0x5a) return undefined;
    type += String.fromCharCode(code);
  }
  return type;
}

function truncated() {
  return damaged('The file ends before the picture does.');
}

/** Parts in capitals must be understood to show the picture. */
function isCritical(type: string): boolean {
  return type.charCodeAt(0) < 0x61;
}

function checkPalette(header: PngHeader, palette: Uint8Array): void {
  if (header.colourType !== ColourType.palette) return;
  if (palette.length === 0) throw damaged('The palette of the picture is missing.');
  if (palette.length % 3 !== 0 || palette.length > 3 * 256) {
    throw damaged('The palette of the picture has a wrong length.');
  }
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  if (pieces.length === 1) return pieces[0] as Uint8Array;
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
