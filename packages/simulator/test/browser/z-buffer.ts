import type { KnotPose } from '@halfhitch/geometry/knot';

/**
 * A picture of a knot made apart from the elements' own drawing: balls along the centre-lines, kept
 * by their depth. It knows no tubes, no lights, no three.js, and projects by itself.
 */
export interface ExpectedPicture {
  readonly width: number;
  readonly height: number;
  /** What is nearest at each pixel: 0 nothing, 1 the held string, 2 the tying one. */
  readonly strings: Uint8Array;
  /** Length along the nearest string there, in diameters. */
  readonly along: Float32Array;
}

/** Where the picture is taken from; mm, y up. */
export interface Eye {
  readonly target: readonly [number, number, number];
  readonly distance: number;
  /** Full opening angle upwards, radians. */
  readonly opening: number;
  readonly from: 'front' | 'back';
}

export const GROUND = 0;
export const HELD = 1;
export const TYING = 2;

/** A place in the picture: pixels, distance from the eye in mm, and pixels for a mm there. */
interface Projected {
  readonly x: number;
  readonly y: number;
  readonly depth: number;
  readonly scale: number;
}

/** Projects a point of the geometry's frame, whose y points down the page. */
export function pixelOf(eye: Eye, width: number, height: number, p: readonly number[]): Projected {
  const side = eye.from === 'front' ? 1 : -1;
  const [tx, ty, tz] = eye.target;
  const depth = eye.distance - side * ((p[2] as number) - tz);
  const scale = height / 2 / Math.tan(eye.opening / 2) / depth;
  return {
    x: width / 2 + side * ((p[0] as number) - tx) * scale,
    y: height / 2 + ((p[1] as number) + ty) * scale,
    depth,
    scale,
  };
}

/** What is seen of the two strings of a pose. */
export function expectedPicture(
  pose: Pick<KnotPose, 'tying' | 'held' | 'tyingRadius' | 'heldRadius'>,
  eye: Eye,
  width: number,
  height: number,
): ExpectedPicture {
  const strings = new Uint8Array(width * height);
  const along = new Float32Array(width * height);
  const nearest = new Float32Array(width * height).fill(Number.POSITIVE_INFINITY);
  for (const [string, points, radius] of [
    [HELD, pose.held, pose.heldRadius],
    [TYING, pose.tying, pose.tyingRadius],
  ] as const) {
    let length = 0;
    for (let i = 0; i + 5 < points.length; i += 3) {
      const a = [...points.subarray(i, i + 3)];
      const b = [...points.subarray(i + 3, i + 6)];
      const long = Math.hypot(...a.map((x, k) => x - (b[k] as number)));
      // Close enough together that their outline is smooth to a small part of a pixel.
      const balls = Math.max(1, Math.ceil(long / (0.15 * radius)));
      for (let ball = 0; ball < balls; ball++) {
        const f = ball / balls;
        const at = a.map((x, k) => x + ((b[k] as number) - x) * f);
        drawBall(
          pixelOf(eye, width, height, at),
          radius,
          string,
          (length + f * long) / (2 * radius),
        );
      }
      length += long;
    }
  }
  return { width, height, strings, along };

  function drawBall(at: Projected, radius: number, string: number, where: number): void {
    const reach = radius * at.scale;
    for (let y = Math.ceil(at.y - reach); y <= at.y + reach; y++) {
      if (y < 0 || y >= height) continue;
      for (let x = Math.ceil(at.x - reach); x <= at.x + reach; x++) {
        if (x < 0 || x >= width) continue;
        const off = ((x - at.x) ** 2 + (y - at.y) ** 2) / at.scale ** 2;
        if (off > radius * radius) continue;
        const depth = at.depth - Math.sqrt(radius * radius - off);
        const pixel = y * width + x;
        if (depth >= (nearest[pixel] as number)) continue;
        nearest[pixel] = depth;
        strings[pixel] = string;
        along[pixel] = where;
      }
    }
  }
}
