/** Closed polylines of well-known links, in a right-handed frame. */
export function closedCurve(
  count: number,
  at: (angle: number) => readonly [number, number, number],
): Float64Array {
  const out = new Float64Array(count * 3);
  for (let i = 0; i < count; i++) out.set(at((2 * Math.PI * i) / count), i * 3);
  return out;
}

const { cos, sin } = Math;

export const circle = closedCurve(60, (a) => [cos(a), sin(a), 0]);
export const hopf = [circle, closedCurve(61, (a) => [1 + cos(a), 0.02 * sin(a), sin(a)])];
export const apart = [circle, closedCurve(61, (a) => [5 + cos(a), 0.3 * sin(a), sin(a)])];

/** A (2,3) torus knot that winds left-handed; `mirrorImage` makes it right-handed. */
export const trefoil = closedCurve(150, (a) => [
  sin(a) + 2 * sin(2 * a),
  cos(a) - 2 * cos(2 * a),
  -sin(3 * a),
]);

export const figureEight = closedCurve(200, (a) => [
  (2 + cos(2 * a)) * cos(3 * a),
  (2 + cos(2 * a)) * sin(3 * a),
  sin(4 * a),
]);

/** A figure of eight that alternates with a ring over its middle: Whitehead's link. */
export const whitehead = [
  closedCurve(90, (a) => [1.32 * cos(a), 1.32 * sin(a), 0]),
  closedCurve(240, (a) => [2 * cos(a), sin(2 * a), 0.5 * sin(a) * cos(6 * a)]),
];

export const mirrorImage = (points: ArrayLike<number>): Float64Array => {
  const out = Float64Array.from(points);
  for (let i = 2; i < out.length; i += 3) out[i] = -out[i]!;
  return out;
};
