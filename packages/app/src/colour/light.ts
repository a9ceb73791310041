import { converter } from 'culori/fn';
import './spaces.js';

const toLinear = converter('lrgb');

/** Linear light, 0 to 1, of each 8-bit value of sRGB. */
export const LIGHT_OF_BYTE: Float64Array = Float64Array.from(
  { length: 256 },
  (_, byte) => toLinear({ mode: 'rgb', r: byte / 255, g: 0, b: 0 }).r,
);

/** The three channels of `#rrggbb` as linear light, 0 to 1. */
export function lightOf(hex: string): [r: number, g: number, b: number] {
  const value = Number.parseInt(hex.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255].map(
    (byte) => LIGHT_OF_BYTE[byte] as number,
  ) as [number, number, number];
}
