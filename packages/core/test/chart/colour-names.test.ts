import { describe, expect, it } from 'vitest';
import { nameColours, oklch } from '../../src/chart/colour-names.js';

describe('plain colour names', () => {
  // Everyday names of colours; no source beyond common usage.
  it.each([
    ['#000000', 'black'],
    ['#ffffff', 'white'],
    ['#808080', 'grey'],
    ['#ff0000', 'red'],
    ['#8b0000', 'dark red'],
    ['#ff8000', 'orange'],
    ['#6b4423', 'brown'],
    ['#ffe000', 'yellow'],
    ['#00a000', 'green'],
    ['#004000', 'dark green'],
    ['#00c8c8', 'turquoise'],
    ['#0040ff', 'blue'],
    ['#000060', 'dark blue'],
    ['#a9c8ff', 'light blue'],
    ['#8020c0', 'violet'],
    ['#ffb0c0', 'pink'],
  ])('%s is %s', (hex, name) => {
    expect(nameColours([hex])).toEqual([name]);
  });

  it('are numbered where two would be the same', () => {
    expect(nameColours(['#0040ff', '#ff0000', '#0044f8'])).toEqual(['blue 1', 'red', 'blue 2']);
  });

  // B. Ottosson, "A perceptual color space for image processing", 2020: white is L = 1, a = b = 0;
  // linear sRGB to OKLab there gives red as L 0.628, a 0.225, b 0.126.
  it('rest on OKLab as published', () => {
    expect(oklch('#ffffff').lightness).toBeCloseTo(1, 4);
    expect(oklch('#ffffff').chroma).toBeCloseTo(0, 4);
    expect(oklch('#ff0000').lightness).toBeCloseTo(0.628, 3);
    expect(oklch('#ff0000').chroma).toBeCloseTo(Math.hypot(0.225, 0.126), 3);
  });
});
