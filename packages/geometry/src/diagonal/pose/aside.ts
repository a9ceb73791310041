import { lengthOf, resample } from '../../curve/polyline.js';
import type { KnotSequence } from '../sequence.js';
import { spacing } from '../spacing.js';
import { ease, settledAt, togetherAt } from './moment.js';

/** How far strings beside the knot being tied are held aside and back, and over what height. */
const ASIDE = { by: 0.7, back: 1.3, from: 1.4, to: 4.4 } as const;

/** What hangs beside the two strings of a knot is held out of their way while it is tied. */
export function heldAside(
  sequence: KnotSequence,
  string: number,
  knot: number,
  hanging: Float64Array,
  time: number,
): Float64Array {
  const { order, strings } = sequence.work;
  const cell = sequence.cells[knot]!;
  const row = sequence.rowOf(cell);
  const tying = sequence.work.tying[cell]!;
  const slots = order.subarray(row * strings.length, (row + 1) * strings.length);
  const side = slots.indexOf(string) < slots.indexOf(tying) ? -1 : 1;
  const share = togetherAt(time) * (1 - settledAt(time));
  if (share === 0) return hanging;
  const even = resample(hanging, Math.ceil(lengthOf(hanging) / 0.2) + 1);
  const start = row * spacing().row;
  for (let i = 0; i < even.length; i += 3) {
    const f = (even[i + 1]! - start - ASIDE.from) / (ASIDE.to - ASIDE.from);
    if (f <= 0) continue;
    const much = share * ease(Math.min(f, 1));
    even[i] = even[i]! + side * ASIDE.by * much;
    even[i + 2] = even[i + 2]! - ASIDE.back * much;
  }
  return even;
}
