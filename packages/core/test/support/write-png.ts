import { deflateSync } from 'node:zlib';
// Its checksums are looked at by pngjs too.
import { crc32 } from '../../src/chart/png/crc.js';

export interface RawPng {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly colourType: number;
  readonly interlaced?: boolean;
  /** Samples, pixel by pixel. */
  readonly samples: ArrayLike<number>;
  readonly palette?: readonly number[];
  readonly transparency?: readonly number[];
}

const CHANNELS: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };
const PASSES = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;

/** Writes a PNG of any kind, with every line unfiltered. */
export function writePng(raw: RawPng): Uint8Array {
  const { width, height, depth, colourType, interlaced = false } = raw;
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([depth, colourType, 0, 0, interlaced ? 1 : 0], 8);
  return pngOf([
    ['IHDR', header],
    ...(raw.palette ? [['PLTE', Uint8Array.from(raw.palette)] as const] : []),
    ...(raw.transparency ? [['tRNS', Uint8Array.from(raw.transparency)] as const] : []),
    ['IDAT', deflateSync(linesOf(raw))],
    ['IEND', new Uint8Array(0)],
  ]);
}

/** Puts chunks together into a PNG, with right lengths and checksums. */
export function pngOf(chunks: readonly (readonly [type: string, data: Uint8Array])[]): Uint8Array {
  const parts = chunks.map(([type, data]) => {
    const part = Buffer.alloc(12 + data.length);
    part.writeUInt32BE(data.length, 0);
    part.write(type, 4, 'latin1');
    part.set(data, 8);
    part.writeUInt32BE(crc32(part.subarray(4, 8 + data.length)), 8 + data.length);
    return part;
  });
  return Uint8Array.from(Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), ...parts]));
}

function linesOf({ width, height, depth, colourType, interlaced, samples }: RawPng): Uint8Array {
  const channels = CHANNELS[colourType] as number;
  const lines: number[] = [];
  for (const [left, top, right, down] of interlaced ? PASSES : [[0, 0, 1, 1] as const]) {
    for (let y = top; y < height; y += down) {
      const bits: string[] = [];
      for (let x = left; x < width; x += right) {
        for (let c = 0; c < channels; c++) {
          const sample = samples[(y * width + x) * channels + c] as number;
          bits.push(sample.toString(2).padStart(depth, '0'));
        }
      }
      if (bits.length === 0) continue;
      lines.push(0);
      for (const byte of bits.join('').match(/.{1,8}/g) ?? []) {
        lines.push(Number.parseInt(byte.padEnd(8, '0'), 2));
      }
    }
  }
  return Uint8Array.from(lines);
}
