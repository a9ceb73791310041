import { short } from './markup.js';

/** Threads that hang straight: the ends of base strings, and a lead at the end. */

const THICKNESS = 9.6;

/** Slanting lines between the plies, repeated down a hanging thread. */
export function plyPattern(prefix: string): string {
  return `<pattern id="${prefix}plies" width="40" height="5" patternUnits="userSpaceOnUse" patternTransform="skewY(-24)"><path d="M0 2.5H40" stroke="#000" stroke-opacity=".2" stroke-width=".9"/></pattern>`;
}

export function hangingThread(
  x: number,
  from: number,
  to: number,
  colour: string,
  prefix: string,
): string {
  const line = (shift: number, paint: string, width: number): string =>
    `<path d="M${short(x + shift)} ${short(from)}V${short(to)}" ${paint} stroke-width="${short(width)}"/>`;
  return [
    line(0, 'stroke="#000" stroke-opacity=".55"', THICKNESS + 1.2),
    line(0, `stroke="${colour}"`, THICKNESS),
    line(2.3, 'stroke="#000" stroke-opacity=".12"', 4.4),
    line(-1.6, 'stroke="#fff" stroke-opacity=".22"', 3),
    line(0, `stroke="url(#${prefix}plies)"`, THICKNESS),
  ].join('');
}
