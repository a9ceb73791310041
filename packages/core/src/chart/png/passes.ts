import { decode } from 'fast-png';
import { zlibSync } from 'fflate';
import { damaged } from './damage.js';
import type { PngHeader } from './header.js';
import { inflateExactly } from './inflate.js';

/** One of the small pictures an interlaced picture is woven from; the whole of a plain one. */
export interface Pass {
  readonly x: number;
  readonly y: number;
  readonly xStep: number;
  readonly yStep: number;
  readonly width: number;
  readonly height: number;
}

// Adam7: where each pass begins and how far its pixels are apart.
const ADAM7 = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;

function passesOf({ width, height, interlaced }: PngHeader): Pass[] {
  if (!interlaced) return [{ x: 0, y: 0, xStep: 1, yStep: 1, width, height }];
  return ADAM7.map(([x, y, xStep, yStep]) => ({
    x,
    y,
    xStep,
    yStep,
    width: Math.max(0, Math.ceil((width - x) / xStep)),
    height: Math.max(0, Math.ceil((height - y) / yStep)),
  })).filter((pass) => pass.width > 0 && pass.height > 0);
}

/**
 * Unpacks the samples of each pass: bytes of whole lines, or 16-bit samples.
 *
 * The passes of an interlaced picture are given to fast-png as pictures of their own, since
 * version 8.0.0 misreads interlaced pictures of fewer than 8 bits.
 */
export function* unpackPasses(
  header: PngHeader,
  packed: Uint8Array,
): Generator<{ pass: Pass; samples: ArrayLike<number> }> {
  const passes = passesOf(header);
  const sizes = passes.map((pass) => pass.height * (1 + bytesPerLine(header, pass.width)));
  const lines = inflateExactly(
    packed,
    sizes.reduce((sum, size) => sum + size, 0),
    passes.reduce((sum, pass) => sum + pass.height, 0),
  );
  let at = 0;
  for (const [i, pass] of passes.entries()) {
    const end = at + (sizes[i] as number);
    yield { pass, samples: unfilter(header, pass, lines.subarray(at, end)) };
    at = end;
  }
}

export function bytesPerLine({ depth, channels }: PngHeader, width: number): number {
  return Math.ceil((width * channels * depth) / 8);
}

function unfilter(header: PngHeader, pass: Pass, lines: Uint8Array): ArrayLike<number> {
  try {
    return decode(plainPng(header, pass, lines)).data;
  } catch {
    throw damaged('The lines of the picture are filtered in a way that PNG does not have.');
  }
}

/** A PNG with nothing in it but these lines; its checksums are not looked at. */
function plainPng(header: PngHeader, pass: Pass, lines: Uint8Array): Uint8Array {
  const data = zlibSync(lines, { level: 0 });
  const bytes = new Uint8Array(8 + 25 + 12 + data.length + 12);
  const view = new DataView(bytes.buffer);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  view.setUint32(8, 13);
  bytes.set([0x49, 0x48, 0x44, 0x52], 12);
  view.setUint32(16, pass.width);
  view.setUint32(20, pass.height);
  bytes.set([header.depth, header.colourType], 24);
  view.setUint32(33, data.length);
  bytes.set([0x49, 0x44, 0x41, 0x54], 37);
  bytes.set(data, 41);
  bytes.set([0x49, 0x45, 0x4e, 0x44], 41 + data.length + 8);
  return bytes;
}
