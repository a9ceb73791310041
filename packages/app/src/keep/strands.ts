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
    const below = new Map<string, Joining>();
    for (const strand of chunk.strands) {
      let joining: Joining = { strand, points: Array.from(pointsOf(chunk, strand)) };
      if (strand.fromAbove) joining = joined(joining, open);
      if (strand.toBelow) put(below, joining);
      else done.push(finished(joining));
    }
    // Whatever found nothing to go on with is whole as it is.
    for (const joining of new Set(open.values())) done.push(finished(joining));
    open = below;
  }
  for (const joining of new Set(open.values())) done.push(finished(joining));
  return done;
}

interface Joining {
  readonly strand: FabricStrand;
  readonly points: number[];
}

function pointsOf({ points }: FabricChunk, { first, count }: FabricStrand): Float32Array {
  return points.subarray(3 * first, 3 * (first + count));
}

function joined(below: Joining, open: Map<string, Joining>): Joining {
  for (const atStart of [true, false]) {
    const key = keyOf(below.strand, below.points, atStart);
    const above = open.get(key);
    if (above === undefined) continue;
    for (const end of [true, false]) {
      const other = keyOf(above.strand, above.points, end);
      if (open.get(other) === above) open.delete(other);
    }
    const upper =
      keyOf(above.strand, above.points, false) === key ? above.points : turned(above.points);
    const lower = atStart ? below.points : turned(below.points);
    return { strand: below.strand, points: upper.concat(lower.slice(3)) };
  }
  return below;
}

function put(open: Map<string, Joining>, joining: Joining): void {
  for (const end of [true, false]) open.set(keyOf(joining.strand, joining.points, end), joining);
}

function keyOf(
  { string, part }: FabricStrand,
  points: readonly number[],
  atStart: boolean,
): string {
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
