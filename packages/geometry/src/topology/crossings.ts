/** One crossing of the tying string with the held one, seen from the front. */
export interface HeldCrossing {
  readonly with: 'held';
  readonly level: 'over' | 'under';
  /** Which way the tying string goes there. */
  readonly direction: 'LR' | 'RL';
  /** Position along the tying string: segment index and fraction. */
  readonly at: number;
  readonly y: number;
}

/** A crossing of the tying string with an earlier part of itself. */
export interface OwnCrossing {
  readonly with: 'own';
  /** How the later part passes the earlier one. */
  readonly level: 'over' | 'under';
  /** Positions of the later and the earlier part along the tying string. */
  readonly at: number;
  readonly earlier: number;
  readonly y: number;
}

export type Crossing = HeldCrossing | OwnCrossing;

/** Where two segments of a projection meet: fractions along each. */
interface Meeting {
  readonly s: number;
  readonly t: number;
}

/** The proper intersection of projected segments a-b and c-d, if there is one. */
export function meet(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): Meeting | undefined {
  const rx = bx - ax;
  const ry = by - ay;
  const qx = dx - cx;
  const qy = dy - cy;
  const det = rx * qy - ry * qx;
  if (det === 0) return undefined;
  const s = ((cx - ax) * qy - (cy - ay) * qx) / det;
  const t = ((cx - ax) * ry - (cy - ay) * rx) / det;
  return s >= 0 && s < 1 && t >= 0 && t < 1 ? { s, t } : undefined;
}

/**
 * The crossings of a tying string with a held one and with itself, projected along z, in the order
 * in which the tying string comes to them. A crossing of the string with itself is listed where
 * its later part comes to it.
 *
 * @param tying xyz triplets, in the frame of `frame.ts`
 * @param held xyz triplets
 */
export function crossingsOf(tying: ArrayLike<number>, held: ArrayLike<number>): Crossing[] {
  return [...heldCrossings(tying, held), ...ownCrossings(tying)].sort((a, b) => a.at - b.at);
}

/** Only the crossings with the held string. */
export function heldCrossings(tying: ArrayLike<number>, held: ArrayLike<number>): HeldCrossing[] {
  const found: HeldCrossing[] = [];
  forMeetings(tying, held, false, (i, j, m) => {
    const z = level(tying, i, m.s) - level(held, j, m.t);
    // The held string may lean, so right and left are taken from its own downward direction.
    const x = tying[i * 3 + 3]! - tying[i * 3]!;
    const y = tying[i * 3 + 4]! - tying[i * 3 + 1]!;
    const hx = held[j * 3 + 3]! - held[j * 3]!;
    const hy = held[j * 3 + 4]! - held[j * 3 + 1]!;
    found.push({
      with: 'held',
      level: z > 0 ? 'over' : 'under',
      direction: x * hy - y * hx > 0 ? 'LR' : 'RL',
      at: i + m.s,
      y: tying[i * 3 + 1]! + y * m.s,
    });
  });
  return found.sort((a, b) => a.at - b.at);
}

/** Only the crossings of the tying string with itself. */
export function ownCrossings(tying: ArrayLike<number>): OwnCrossing[] {
  const found: OwnCrossing[] = [];
  forMeetings(tying, tying, true, (i, j, m) => {
    const z = level(tying, i, m.s) - level(tying, j, m.t);
    found.push({
      with: 'own',
      level: z > 0 ? 'over' : 'under',
      at: i + m.s,
      earlier: j + m.t,
      y: tying[i * 3 + 1]! + (tying[i * 3 + 4]! - tying[i * 3 + 1]!) * m.s,
    });
  });
  return found.sort((a, b) => a.at - b.at);
}

function level(points: ArrayLike<number>, segment: number, f: number): number {
  const z = points[segment * 3 + 2]!;
  return z + (points[segment * 3 + 5]! - z) * f;
}

function forMeetings(
  a: ArrayLike<number>,
  b: ArrayLike<number>,
  own: boolean,
  report: (i: number, j: number, meeting: Meeting) => void,
): void {
  const n = a.length / 3 - 1;
  const m = b.length / 3 - 1;
  for (let i = 0; i < n; i++) {
    const ax = a[i * 3]!;
    const ay = a[i * 3 + 1]!;
    const bx = a[i * 3 + 3]!;
    const by = a[i * 3 + 4]!;
    const limit = own ? i - 1 : m;
    for (let j = 0; j < limit; j++) {
      const cx = b[j * 3]!;
      const dx = b[j * 3 + 3]!;
      if (Math.max(cx, dx) < Math.min(ax, bx) || Math.min(cx, dx) > Math.max(ax, bx)) continue;
      const found = meet(ax, ay, bx, by, cx, b[j * 3 + 1]!, dx, b[j * 3 + 4]!);
      if (found) report(i, j, found);
    }
  }
}
