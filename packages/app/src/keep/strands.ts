import type { Fabric, FabricChunk, FabricStrand, Level } from '@halfhitch/geometry';

/** One thread, or a stretch of one, from end to end. */
export interface WholeStrand {
  readonly string: string;
  /** mm */
  readonly radius: number;
  /** xyz triplets, mm, y down the page. */
  readonly points: Float32Array;
}

/**
 * The threads of a whole piece, joined where its chunks cut them: the points there are the same,
 * so that a strand is known by its ends.
 */
export function wholeStrands(fabric: Fabric, level: Level): WholeStrand[] {
  const done: WholeStrand[] = [];
  /** By string and end: strands that go on in a chunk still to come. */
  let open = new Map<string, Joining>();
  for (let index = 0; index < fabric.chunks; index++) {
    const chunk = fabric.chunk(index, level);
    const here = new Set(open.values());
    const goingOn = new Set<Joining>();
    for (const strand of chunk.strands) {
      const joining: Joining = { strand, points: Array.from(pointsOf(chunk, strand)) };
      const [start, end] = [keyOf(joining, true), keyOf(joining, false)];
      here.add(joining);
      if (strand.toBelow) goingOn.add(joining);
      if (!strand.fromAbove) continue;
      // A float may dip into a chunk and come back: both its ends go on.
      for (const key of new Set([start, end])) {
        const above = open.get(key);
        if (above === undefined || above === joining) continue;
        open.delete(key);
        join(joining, above, key);
        here.delete(above);
        if (goingOn.delete(above)) goingOn.add(joining);
        for (const [other, held] of open) if (held === above) open.set(other, joining);
      }
    }
    open = new Map();
    for (const joining of here) {
      if (goingOn.has(joining)) put(open, joining);
      else done.push(finished(joining));
    }
  }
  for (const joining of new Set(open.values())) done.push(finished(joining));
  return done;
}

interface Joining {
  readonly strand: FabricStrand;
  points: number[];
}

function pointsOf({ points }: FabricChunk, { first, count }: FabricStrand): Float32Array {
  return points.subarray(3 * first, 3 * (first + count));
}

/** Makes one of two strands that have an end in common. */
function join(one: Joining, other: Joining, key: string): void {
  const before = keyOf(other, false) === key ? other.points : turned(other.points);
  const after = keyOf(one, true) === key ? one.points : turned(one.points);
  one.points = before.concat(after.slice(3));
}

function put(open: Map<string, Joining>, joining: Joining): void {
  for (const end of [true, false]) open.set(keyOf(joining, end), joining);
}

function keyOf({ strand: { string, part }, points }: Joining, atStart: boolean): string {
  const at = atStart ? 0 : points.length - 3;
  const [x, y, z] = points.slice(at, at + 3).map((mm) => Math.round(mm * 1000));
  return `${string} ${part === 'base'} ${x} ${y} ${z}`;
}

function turned(points: readonly number[]): number[] {
  const back: number[] = [];
  for (let i = points.length - 3; i >= 0; i -= 3) {
    back.push(points[i] as number, points[i + 1] as number, points[i + 2] as number);
  }
  return back;
}

function finished({ strand, points }: Joining): WholeStrand {
  return { string: strand.string, radius: strand.radius, points: Float32Array.from(points) };
}
