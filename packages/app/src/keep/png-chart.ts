import type { Chart } from '@halfhitch/core';
import { encode } from 'fast-png';

/** A chart as a PNG of one pixel for each knot, as it is read back. */
export function pngOfChart({ rows, columns, colours, cells }: Chart): Uint8Array {
  const palette = colours.map(({ hex }) => Number.parseInt(hex.slice(1), 16));
  const data = new Uint8Array(3 * cells.length);
  cells.forEach((cell, i) => {
    const rgb = palette[cell] ?? 0;
    data[3 * i] = rgb >> 16;
    data[3 * i + 1] = (rgb >> 8) & 0xff;
    data[3 * i + 2] = rgb & 0xff;
  });
  return encode({ width: columns, height: rows, data, channels: 3, depth: 8 });
}
