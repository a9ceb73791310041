import type { ChartNotice } from '../chart.js';
import type { PngChunks } from './chunks.js';
import { damaged } from './damage.js';
import { ColourType, type PngHeader } from './header.js';
import { bytesPerLine, type Pass, unpackPasses } from './passes.js';

export interface Pixels {
  /** Colour of each pixel as 0xrrggbb, row by row. */
  readonly rgb: Uint32Array;
  /** How solid each pixel is, 0 to 255; null when all are solid. */
  readonly alpha: Uint8Array | null;
  readonly notices: readonly ChartNotice[];
}

/** The pixels of a picture as they look on white. */
export function unpackPixels(chunks: PngChunks): Pixels {
  const { header } = chunks;
  const painter = new Painter(chunks);
  for (const { pass, samples } of unpackPasses(header, chunks.packed)) {
    const perLine =
      header.depth === 16 ? pass.width * header.channels : bytesPerLine(header, pass.width);
    for (let y = 0; y < pass.height; y++) painter.line(pass, y, samples, y * perLine);
  }
  return { rgb: painter.rgb, alpha: painter.alpha, notices: painter.notices() };
}

class Painter {
  readonly rgb: Uint32Array;
  alpha: Uint8Array | null = null;
  private readonly header: PngHeader;
  private readonly palette: Uint8Array;
  private readonly transparency: Uint8Array;
  /** Samples of the one colour that tRNS makes see-through; empty when there is none. */
  private readonly clear: readonly number[];
  private readonly most: number;
  private readonly sample = [0, 0, 0, 0];
  private seeThrough = 0;
  private firstSeeThrough = Number.POSITIVE_INFINITY;
  private rounded = false;

  constructor({ header, palette, transparency }: PngChunks) {
    this.header = header;
    this.palette = palette;
    this.transparency = transparency;
    this.clear = clearColour(header, transparency);
    this.most = 2 ** header.depth - 1;
    this.rgb = new Uint32Array(header.width * header.height);
  }

  /** Paints a line of a pass from its samples, which begin at `from`. */
  line(pass: Pass, y: number, samples: ArrayLike<number>, from: number): void {
    const { channels, depth, width } = this.header;
    const start = (pass.y + y * pass.yStep) * width + pass.x;
    for (let x = 0; x < pass.width; x++) {
      if (depth < 8) {
        const bit = x * depth;
        const byte = samples[from + (bit >> 3)] as number;
        this.sample[0] = (byte >> (8 - depth - (bit & 7))) & this.most;
      } else {
        const first = from + x * channels;
        for (let c = 0; c < channels; c++) this.sample[c] = samples[first + c] as number;
      }
      this.rgb[start + x * pass.xStep] = this.pixel(start + x * pass.xStep);
    }
  }

  notices(): ChartNotice[] {
    const notices: ChartNotice[] = [];
    if (this.seeThrough > 0) {
      const pixels = this.seeThrough === 1 ? '1 pixel is' : `${this.seeThrough} pixels are`;
      const { row, column } = this.placeOf(this.firstSeeThrough);
      notices.push({
        code: 'transparency-flattened',
        message: `${pixels} see-through and became what shows when laid on white; the first in reading order is in row ${row}, column ${column}.`,
      });
    }
    if (this.rounded) {
      notices.push({
        code: 'samples-rounded',
        message: 'The colours of the picture have 16 bits a sample and were rounded to 8 bits.',
      });
    }
    return notices;
  }

  private pixel(at: number): number {
    const { sample } = this;
    switch (this.header.colourType) {
      case ColourType.palette:
        return this.fromPalette(at, sample[0] as number);
      case ColourType.grey: {
        const grey = this.eight(sample[0] as number);
        return this.onWhite(at, grey, grey, grey, sample[0] === this.clear[0] ? 0 : 255);
      }
      case ColourType.greyAlpha: {
        const grey = this.eight(sample[0] as number);
        return this.onWhite(at, grey, grey, grey, this.eight(sample[1] as number));
      }
      default: {
        const [red, green, blue, alpha] = sample as [number, number, number, number];
        return this.onWhite(
          at,
          this.eight(red),
          this.eight(green),
          this.eight(blue),
          this.header.channels === 4 ? this.eight(alpha) : this.isClear() ? 0 : 255,
        );
      }
    }
  }

  private isClear(): boolean {
    return this.clear.length > 0 && this.clear.every((value, c) => this.sample[c] === value);
  }

  private fromPalette(at: number, entry: number): number {
    const { palette } = this;
    if (3 * entry >= palette.length) {
      throw damaged(
        `The pixel asks for colour ${entry + 1} of a palette of ${palette.length / 3}.`,
        this.placeOf(at),
      );
    }
    return this.onWhite(
      at,
      palette[3 * entry] as number,
      palette[3 * entry + 1] as number,
      palette[3 * entry + 2] as number,
      this.transparency[entry] ?? 255,
    );
  }

  /** A sample of any depth as one of 8 bits. */
  private eight(sample: number): number {
    if (this.header.depth === 8) return sample;
    const scaled = Math.round((sample * 255) / this.most);
    if (scaled * this.most !== sample * 255) this.rounded = true;
    return scaled;
  }

  private onWhite(at: number, red: number, green: number, blue: number, alpha: number): number {
    if (alpha === 255) return (red << 16) | (green << 8) | blue;
    this.seeThrough++;
    this.alpha ??= new Uint8Array(this.rgb.length).fill(255);
    this.alpha[at] = alpha;
    if (at < this.firstSeeThrough) this.firstSeeThrough = at;
    const mix = (value: number) => Math.round((value * alpha + 255 * (255 - alpha)) / 255);
    return (mix(red) << 16) | (mix(green) << 8) | mix(blue);
  }

  private placeOf(at: number): { row: number; column: number } {
    const { width } = this.header;
    return { row: Math.floor(at / width) + 1, column: (at % width) + 1 };
  }
}

function clearColour(
  { colourType, channels, depth }: PngHeader,
  transparency: Uint8Array,
): number[] {
  if (transparency.length === 0) return [];
  if (colourType !== ColourType.grey && colourType !== ColourType.rgb) return [];
  if (transparency.length !== 2 * channels) {
    throw damaged('The part tRNS of the picture has a wrong length.');
  }
  const view = new DataView(transparency.buffer, transparency.byteOffset);
  // Of the two bytes only as many bits count as a sample has.
  return Array.from({ length: channels }, (_, c) => view.getUint16(2 * c) & (2 ** depth - 1));
}
