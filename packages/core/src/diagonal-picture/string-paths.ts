import { short } from '../picture/markup.js';
import type { DiagonalDrawn } from './drawn.js';
import { type DiagonalGeometry, ROW, SLOT, STRING_THREAD } from './geometry.js';

/** How far an idle string bows out at an edge, from the middle of its slot. */
const BOW = 2.2;

/**
 * The way of each string through the piece, from end to end: to the middle of every knot it is
 * part of, and down its own slot where it idles. Knots drawn over it leave what really shows.
 */
export function stringPaths(
  drawn: DiagonalDrawn,
  geometry: DiagonalGeometry,
  prefix: string,
): string {
  const { strings, rows } = drawn;
  const { x: left, y: top } = geometry.centreOf(0, -1);
  const end = geometry.height - 6;
  const paths = Array.from({ length: strings }, (_, slot) => {
    const x = left + (slot + 0.5) * SLOT;
    return { x, path: `M${short(x)} 6V${short(top - ROW)}` };
  });
  const knotMiddle = new Float64Array(strings);
  for (let row = 0; row < rows; row++) {
    knotMiddle.fill(Number.NaN);
    for (const { slot } of drawn.knotsOf(row)) {
      knotMiddle[slot] = slot + 1;
      knotMiddle[slot + 1] = slot + 1;
    }
    for (let slot = 0; slot < strings; slot++) {
      const middle = knotMiddle[slot] as number;
      const idle = slot + 0.5 + bow(slot, strings);
      const goal = left + SLOT * (Number.isNaN(middle) ? idle : middle);
      // Of two knots that share a string the later one counts.
      go(paths[drawn.order[row * strings + slot] as number] as Path, goal);
    }
  }
  for (let slot = 0; slot < strings; slot++) {
    const path = paths[drawn.order[rows * strings + slot] as number] as Path;
    go(path, left + (slot + 0.5) * SLOT);
    path.path += `V${short(end)}`;
  }
  return `<g fill="none" stroke-linejoin="round">${paths
    .map(({ path }, string) =>
      stringOf(path, `${prefix}s${string + 1}`, drawn.colourOf(string), prefix),
    )
    .join('')}</g>\n`;
}

interface Path {
  x: number;
  path: string;
}

function bow(slot: number, strings: number): number {
  if (slot === 0) return -BOW / SLOT;
  return slot === strings - 1 ? BOW / SLOT : 0;
}

/** One row further down, bending over to where the string is then. */
function go(path: Path, x: number): void {
  const dx = x - path.x;
  path.path +=
    Math.abs(dx) < 0.005
      ? `v${ROW}`
      : `c0 ${short(ROW / 2)} ${short(dx)} ${short(ROW / 2)} ${short(dx)} ${ROW}`;
  path.x = x;
}

function stringOf(path: string, id: string, colour: string, prefix: string): string {
  const again = (paint: string, width: number, shift = 0): string =>
    `<use href="#${id}" ${paint} stroke-width="${short(width)}"${shift === 0 ? '' : ` x="${shift}"`}/>`;
  return [
    `<defs><path id="${id}" d="${path}"/></defs>`,
    again('stroke="#000" stroke-opacity=".55"', STRING_THREAD + 1.2),
    again(`stroke="${colour}"`, STRING_THREAD),
    again('stroke="#000" stroke-opacity=".12"', STRING_THREAD * 0.45, 2),
    again('stroke="#fff" stroke-opacity=".22"', STRING_THREAD * 0.3, -1.5),
    again(`stroke="url(#${prefix}plies)"`, STRING_THREAD),
  ].join('');
}
