import {
  type ChartColour,
  chevrons,
  type DiagonalPattern,
  diagonalGeometry,
  diagonalStripes,
  drawDiagonal,
  knotIndex,
  knotsInRow,
  mirrorDiagonal,
  simulateDiagonal,
  slotOfPlace,
} from '@halfhitch/core';
import { type LatticeKnotting, LatticeOrder } from '../piece/lattice-order.js';
import type { FabricShow, LatticeShow } from './lesson.js';
import { COLOURS, type Teaching } from './work.js';

/** A diagonal pattern to be taught from. */
export interface LatticeWork extends Teaching {
  readonly pattern: DiagonalPattern;
  readonly order: LatticeOrder;
}

const KINDS = { stripes: diagonalStripes, chevrons } as const;

/** A small pattern in our colours; for the left hand all of it is mirrored. */
export function latticeOf(
  teaching: Teaching,
  kind: keyof typeof KINDS,
  strings: number,
  rows: number,
): LatticeWork {
  const drawn = KINDS[kind]({ strings, rows, colours: coloursOf(teaching).slice(0, 2), name: '' });
  const pattern = teaching.hand === 'left' ? mirrorDiagonal(drawn) : drawn;
  return { ...teaching, pattern, order: new LatticeOrder(pattern) };
}

export function coloursOf({ say }: Teaching): ChartColour[] {
  return COLOURS.map(({ key, hex, name }) => ({ key, hex, name: say(name) }));
}

export function latticeKnot(work: LatticeWork, row: number, order: number): LatticeKnotting {
  const knot = work.order.knot(work.order.before(row, 0) + order);
  if (knot === undefined) throw new RangeError(`Row ${row + 1} has no knot ${order + 1}.`);
  return knot;
}

/** A row of the work from one of its knots on. */
export function latticeShow(
  { say, pattern }: Pick<LatticeWork, 'say' | 'pattern'>,
  row: number,
  knot: number,
  caption = say('lesson.watch'),
): LatticeShow {
  return { what: 'lattice', pattern, row, knot, done: false, still: false, caption };
}

/** How things are before a knot, to be looked at for the answer. */
export function latticeSituation(work: LatticeWork, row: number, knot: number): LatticeShow {
  return { ...latticeShow(work, row, knot, work.say('lesson.situation')), still: true };
}

let pictures = 0;

/** A pattern as it is knotted; where it differs from another, places have dashed frames. */
export function latticeFabric(
  pattern: DiagonalPattern,
  caption: string,
  from: DiagonalPattern = pattern,
): FabricShow {
  const reading = simulateDiagonal(pattern);
  const geometry = diagonalGeometry(pattern);
  const frames = differing(pattern, from).map(({ row, place }) => {
    const { x, y } = geometry.centreOf(row, slotOfPlace(pattern, row, place));
    const [w, h] = [geometry.slotWidth - 1, geometry.rowHeight - 1];
    const path = `d="M${x - w} ${y}L${x} ${y - h}L${x + w} ${y}L${x} ${y + h}Z" fill="none"`;
    // A light line under the dashes, so that they show on any colour.
    return `<path ${path} stroke="#ffffff" stroke-width="3"/><path ${path} stroke="#8a1010" stroke-width="1.7" stroke-dasharray="4 3"/>`;
  });
  const markup = drawDiagonal(reading, { title: caption, idPrefix: `hh-lattice-${pictures++}-` });
  return { what: 'fabric', caption, markup: markup.replace('</svg>', `${frames.join('')}</svg>`) };
}

/** Places at which two patterns of one lattice show different colours. */
export function differing(
  one: DiagonalPattern,
  other: DiagonalPattern,
): { readonly row: number; readonly place: number }[] {
  if (one === other) return [];
  const [a, b] = [one, other].map((pattern) => simulateDiagonal(pattern).picture.cells);
  const found: { row: number; place: number }[] = [];
  for (let row = 0; row < one.rows; row++) {
    for (let place = 0; place < knotsInRow(one, row); place++) {
      const cell = knotIndex(one, row, place);
      if (a?.[cell] !== b?.[cell]) found.push({ row, place });
    }
  }
  return found;
}

/** A pattern with one knot of another kind. */
export function otherwise(
  pattern: DiagonalPattern,
  row: number,
  place: number,
  code: number,
): DiagonalPattern {
  const knots = pattern.knots.slice();
  knots[knotIndex(pattern, row, place)] = code;
  return { ...pattern, knots };
}
