import { upright } from './diagram.js';

/** Where the lead's closing arc passes the held string's level. */
export type ClosureSide = 'front' | 'behind';

/** How far away curves are closed, in multiples of the hitch's own extent. */
const FAR = 4;

/**
 * A hitch closed to a two-component link: the held string by a wide loop behind the work, the lead
 * by an arc from its exit back to its entry that passes in front of the held string, or behind it
 * (inside the held string's loop). When both ends are on one side the arc stays there and `side`
 * makes no difference. In a right-handed frame, as `diagramOf` wants it.
 *
 * @param tying from entry to exit, in this package's frame, the held string on x = z = 0; its ends
 *   outside the hitch, left or right of it
 */
export function closedHitch(
  tying: ArrayLike<number>,
  side: ClosureSide,
): readonly [Float64Array, Float64Array] {
  let extent = 1;
  for (const v of Array.from(tying)) extent = Math.max(extent, Math.abs(v));
  const far = FAR * extent;
  const n = tying.length;
  const first = [tying[0]!, tying[1]!, tying[2]!] as const;
  const last = [tying[n - 3]!, tying[n - 2]!, tying[n - 1]!] as const;
  const entry = Math.sign(first[0]) * far;
  const exit = Math.sign(last[0]) * far;
  const z = side === 'front' ? far : -far;
  const back: number[] =
    entry === exit
      ? [exit, last[1], last[2], exit, first[1], first[2]]
      : [exit, last[1], last[2], exit, last[1], z, entry, first[1], z, entry, first[1], first[2]];
  const lead = [...Array.from(tying), ...back];
  const held = [0, -far * 2, 0, 0, far * 2, 0, 0, far * 2, -far * 3, 0, -far * 2, -far * 3];
  return [upright(lead), upright(held)];
}
