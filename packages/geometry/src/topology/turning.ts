/**
 * How many times a curve turns round a line x = x0, z = z0 that runs down the page. Positive in the
 * sense of a forward knot: seen along the held string from above, over the front from left to
 * right and back behind from right to left.
 *
 * The ends are taken to be where they stand; a clove hitch that comes in from the left and leaves
 * to the right is 2.5 turns when its ends lie in one plane with the line.
 */
export function turningNumber(points: ArrayLike<number>, x0 = 0, z0 = 0): number {
  let sum = 0;
  for (let i = 3; i + 2 < points.length; i += 3) {
    const ax = points[i - 3]! - x0;
    const az = points[i - 1]! - z0;
    const bx = points[i]! - x0;
    const bz = points[i + 2]! - z0;
    sum += Math.atan2(az * bx - ax * bz, ax * bx + az * bz);
  }
  return sum / (2 * Math.PI);
}
