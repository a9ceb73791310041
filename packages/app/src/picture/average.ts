import { LIGHT_OF_BYTE, lightOf } from '../colour/light.js';
import type { KnotSize } from './size.js';

/** Colours of knots as linear light: red, green and blue, 0 to 1, row by row. */
export interface KnotLight extends KnotSize {
  readonly light: Float32Array;
  /** Pixels that can be seen through at least in part. */
  readonly seeThrough: number;
}

/**
 * Averages a picture's pixels over the area of each knot, in linear light, which is how colours
 * mix when small things are seen from afar. A pixel on the border of two knots counts for each by
 * the part that lies in it, so any size can become any other.
 *
 * The picture is handed over in strips, so that it need not be unpacked as a whole.
 */
export class Averager {
  private readonly light: Float32Array;
  private readonly line: Float64Array;
  private readonly ground: readonly [number, number, number];
  private seeThrough = 0;

  /**
   * @param width,height of the picture, px
   * @param ground `#rrggbb` behind what can be seen through
   */
  constructor(
    private readonly width: number,
    private readonly height: number,
    private readonly size: KnotSize,
    ground: string,
  ) {
    this.light = new Float32Array(3 * size.rows * size.columns);
    this.line = new Float64Array(3 * size.columns);
    this.ground = lightOf(ground);
  }

  /**
   * @param pixels red, green, blue and opacity of each, 8-bit sRGB, not multiplied together
   * @param top the first line of them; each line is handed over once
   */
  add(pixels: Uint8ClampedArray, top: number): void {
    const lines = pixels.length / (4 * this.width);
    for (let at = 3; at < pixels.length; at += 4) if (pixels[at] !== 255) this.seeThrough++;
    for (let line = 0; line < lines; line++) {
      this.averageLine(pixels, 4 * line * this.width);
      this.addLine(top + line);
    }
  }

  finish(): KnotLight {
    return { ...this.size, light: this.light, seeThrough: this.seeThrough };
  }

  private averageLine(pixels: Uint8ClampedArray, from: number): void {
    const { width, line } = this;
    const [groundR, groundG, groundB] = this.ground;
    const { columns } = this.size;
    const scale = columns / width;
    for (let column = 0; column < columns; column++) {
      const start = (column * width) / columns;
      const end = ((column + 1) * width) / columns;
      const last = Math.min(width, Math.ceil(end)) - 1;
      let r = 0;
      let g = 0;
      let b = 0;
      for (let x = Math.floor(start); x <= last; x++) {
        const weight = Math.min(x + 1, end) - Math.max(x, start);
        const at = from + 4 * x;
        const opacity = pixels[at + 3] as number;
        if (opacity === 255) {
          r += weight * (LIGHT_OF_BYTE[pixels[at] as number] as number);
          g += weight * (LIGHT_OF_BYTE[pixels[at + 1] as number] as number);
          b += weight * (LIGHT_OF_BYTE[pixels[at + 2] as number] as number);
        } else {
          const over = (weight * opacity) / 255;
          const under = weight - over;
          r += over * (LIGHT_OF_BYTE[pixels[at] as number] as number) + under * groundR;
          g += over * (LIGHT_OF_BYTE[pixels[at + 1] as number] as number) + under * groundG;
          b += over * (LIGHT_OF_BYTE[pixels[at + 2] as number] as number) + under * groundB;
        }
      }
      line[3 * column] = r * scale;
      line[3 * column + 1] = g * scale;
      line[3 * column + 2] = b * scale;
    }
  }

  private addLine(y: number): void {
    const { height, line, light } = this;
    const { rows } = this.size;
    const first = Math.floor((y * rows) / height);
    for (let row = first; row < rows && (row * height) / rows < y + 1; row++) {
      const start = Math.max(y, (row * height) / rows);
      const end = Math.min(y + 1, ((row + 1) * height) / rows);
      const weight = ((end - start) * rows) / height;
      if (weight <= 0) continue;
      const from = row * line.length;
      for (let i = 0; i < line.length; i++) {
        light[from + i] = (light[from + i] as number) + weight * (line[i] as number);
      }
    }
  }
}
