import { FILE_LIMITS, sizeInWords } from '../document/limits.js';
import { InputError } from '../errors.js';
import type { ChartReading } from './chart.js';
import { readChunks } from './png/chunks.js';
import { collectColours } from './png/colours.js';
import { type Pixels, unpackPixels } from './png/pixels.js';

/**
 * Reads a picture in which each pixel is one knot: every colour type, bit depth and interlacing
 * of PNG (W3C, third edition). Colour profiles are ignored: values count as sRGB.
 *
 * Changes nothing without saying so: see-through pixels are laid on white with a notice, 16-bit
 * samples are rounded to 8 bits with one, and of an animation the still picture is read with one.
 *
 * @param bytes at most 16 MiB of them
 * @throws InputError when it is no such picture, is damaged, or exceeds the limits of a chart
 */
export function readPngChart(bytes: Uint8Array): ChartReading {
  const { width, height, rgb, notices } = readPng(bytes);
  const { colours, cells } = collectColours(rgb, width);
  return { chart: { name: '', rows: height, columns: width, colours, cells }, notices };
}

interface Picture extends Pixels {
  readonly width: number;
  readonly height: number;
}

/**
 * The pixels of a picture, and what was done to them.
 *
 * @param bytes at most 16 MiB of them
 * @throws InputError when it is no such picture, is damaged, or exceeds the limits of a chart
 */
export function readPng(bytes: Uint8Array): Picture {
  if (bytes.length > FILE_LIMITS.png) {
    throw new InputError(
      'file-too-large',
      `The picture's file has ${sizeInWords(bytes.length)}.`,
      {},
      `A PNG can have at most ${sizeInWords(FILE_LIMITS.png)}; save it without extras such as previews.`,
    );
  }
  const chunks = readChunks(bytes);
  const { width, height } = chunks.header;
  const pixels = unpackPixels(chunks);
  const notices = [...pixels.notices];
  if (chunks.animated) {
    notices.push({
      code: 'animation-ignored',
      message: 'The picture is animated; its still picture was read.',
    });
  }
  return { ...pixels, width, height, notices };
}
