import type { PieceStrand } from './chunks.js';

/** A strand of alpha work, with what it is there. */
export interface WorkedStrand extends PieceStrand {
  readonly part: 'base' | 'lead' | 'float' | 'tail';
  /** Whether its last point is where a lead is parked, behind the work. */
  readonly parks: boolean;
}

/** In diameters: how far below the work an end bends to hang straight, and how far before it. */
const BEND = 1.7;
const CLEAR = 1.25;

/** Points of the bend. */
const BEND_POINTS = 8;

/**
 * What hangs loose of the leads at a time: each goes on from where it is knotted up to then. Only of
 * leads that are in the given strands; where an end is drawn already, as those of the finished piece
 * are, there is nothing to add.
 *
 * @param bottom how far down the ends hang, mm, y up
 */
export function looseEnds(
  strands: readonly WorkedStrand[],
  time: number,
  bottom: number,
): PieceStrand[] {
  const latest = new Map<number, Cut>();
  for (const strand of strands) {
    if (strand.part === 'base' || strand.part === 'tail') continue;
    const cut = cutOf(strand, time);
    if (cut === null) continue;
    const known = latest.get(strand.string);
    if (known === undefined || cut.when >= known.when) latest.set(strand.string, cut);
  }
  const ends: PieceStrand[] = [];
  for (const { strand, point } of latest.values()) {
    if (!goesOn(strands, strand, point, time)) ends.push(hangingFrom(strand, point, bottom));
  }
  return ends;
}

interface Cut {
  readonly strand: WorkedStrand;
  /** Its last point that is knotted, and when that was. */
  readonly point: number;
  readonly when: number;
}

function cutOf(strand: WorkedStrand, time: number): Cut | null {
  // Times never fall along a strand, and there are many points to a frame.
  let [point, after] = [-1, strand.when.length];
  while (after - point > 1) {
    const middle = (point + after) >> 1;
    if ((strand.when[middle] as number) <= time) point = middle;
    else after = middle;
  }
  return point < 1 ? null : { strand, point, when: strand.when[point] as number };
}

/** Whether something of the same string that is seen already begins or ends where this one is cut. */
function goesOn(
  strands: readonly WorkedStrand[],
  of: WorkedStrand,
  point: number,
  time: number,
): boolean {
  const near = (one: WorkedStrand, at: number): boolean =>
    Math.hypot(
      ...[0, 1, 2].map(
        (axis) => (one.points[3 * at + axis] as number) - (of.points[3 * point + axis] as number),
      ),
    ) <
    0.6 * of.radius;
  return strands.some(
    (one) =>
      one !== of &&
      one.string === of.string &&
      (one.when[0] as number) <= time &&
      (near(one, 0) || near(one, one.when.length - 1)),
  );
}

/** Out of the work the way it goes, then down, before the base strings or behind them. */
function hangingFrom(strand: WorkedStrand, point: number, bottom: number): PieceStrand {
  const { points, radius, string, colour } = strand;
  const at = (i: number): readonly [number, number, number] => [
    points[3 * i] as number,
    points[3 * i + 1] as number,
    points[3 * i + 2] as number,
  ];
  const [x, y, z] = at(point);
  const [fromX, fromY, fromZ] = at(point - 1);
  const step = Math.hypot(x - fromX, y - fromY, z - fromZ) || 1;
  const out = (2 * radius) / step;
  const diameter = 2 * radius;
  const inFront = !(strand.parks && point === strand.when.length - 1);
  const deep = inFront ? Math.max(z, CLEAR * diameter) : Math.min(z, -CLEAR * diameter);
  const below = y - BEND * diameter;
  const sideways = x + 0.5 * (x - fromX) * out;
  const line: number[] = [];
  for (let i = 0; i < BEND_POINTS; i++) {
    // A cubic curve that leaves along the thread and arrives straight down.
    const t = i / BEND_POINTS;
    const [a, b, c, d] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
    line.push(
      a * x + b * (x + 0.6 * (x - fromX) * out) + (c + d) * sideways,
      a * y + b * (y + 0.6 * (y - fromY) * out) + c * (below + 0.8 * diameter) + d * below,
      a * z + b * (z + 0.6 * (z - fromZ) * out) + (c + d) * deep,
    );
  }
  line.push(sideways, below, deep, sideways, Math.min(bottom, below - diameter), deep);
  return {
    string,
    colour,
    radius,
    points: Float32Array.from(line),
    when: new Float32Array(line.length / 3).fill(-1),
  };
}
