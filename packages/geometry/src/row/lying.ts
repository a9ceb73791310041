/** A place in the plane of the work: x and y. */
export type Place = readonly [number, number];

/** A thread behind the work, seen along z, and how deep it lies. */
export interface Lying {
  readonly layer: number;
  readonly line: readonly Place[];
}

/** The least distance of a line from those that lie at a layer or deeper; lines of one place are points. */
export function roomRound(line: readonly Place[], others: readonly Lying[], layer = 0): number {
  let least = Infinity;
  for (const other of others) {
    if (other.layer >= layer) least = Math.min(least, distance(line, other.line));
  }
  return least;
}

/** The layer behind everything that lies nearer than `margin` to some lines. */
export function layerBehind(
  lines: readonly (readonly Place[])[],
  others: readonly Lying[],
  margin: number,
): number {
  let deepest = -1;
  for (const { layer, line } of others) {
    if (layer > deepest && lines.some((l) => distance(l, line) < margin)) deepest = layer;
  }
  return deepest + 1;
}

export function distance(a: readonly Place[], b: readonly Place[]): number {
  let least = Infinity;
  for (const [p, q] of sections(a)) {
    for (const [r, s] of sections(b)) {
      if (cross(p, q, r, s)) return 0;
      least = Math.min(least, toLine(p, r, s), toLine(q, r, s), toLine(r, p, q), toLine(s, p, q));
    }
  }
  return least;
}

const sections = (line: readonly Place[]): readonly (readonly [Place, Place])[] =>
  line.length === 1
    ? [[line[0]!, line[0]!]]
    : line.slice(1).map((end, i) => [line[i]!, end] as const);

function toLine(p: Place, a: Place, b: Place): number {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const size = ux * ux + uy * uy;
  const t = size > 0 ? ((p[0] - a[0]) * ux + (p[1] - a[1]) * uy) / size : 0;
  const f = Math.min(Math.max(t, 0), 1);
  return Math.hypot(p[0] - a[0] - ux * f, p[1] - a[1] - uy * f);
}

/** Whether two sections cross. */
function cross(p: Place, q: Place, r: Place, s: Place): boolean {
  const side = (a: Place, b: Place, c: Place) =>
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  return side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0;
}
