import { KNOT_KINDS, type KnotKind } from '@halfhitch/core';
import { type Crossing, crossingsOf } from '@halfhitch/geometry';
import { type KnotPose, knotPose } from '@halfhitch/geometry/knot';
import type { Locator } from 'playwright-core';
import { PNG } from 'pngjs';
import { describe } from 'vitest';
import { knotBox } from '../../src/knot/knot-lines.js';
import { FIELD_OF_VIEW, frameBox } from '../../src/thread/camera.js';
import { expect, test } from './bundle-page.js';
import { type Pixels, settled } from './stage.js';
import {
  type ExpectedPicture,
  type Eye,
  expectedPicture,
  GROUND,
  HELD,
  pixelOf,
  TYING,
} from './z-buffer.js';

// Each knot as Chromium shows it, against a picture that the test draws itself from the geometry's
// centre-lines. Stored pictures would differ with every graphics driver; these are compared by what
// lies on top at each pixel.

/**
 * Least share of the pixels with thread on them, in either picture, at which both have the same
 * string on top. The rest is the relief of the twisted yarns, the softened outline and rounding.
 */
const LEAST_AGREEMENT = 0.93;
/** The same within half a thread's thickness round a crossing. */
const LEAST_AT_CROSSING = 0.8;
/** Most for a picture that is wrong as a whole: from the other side, or with nothing on it. */
const MOST_WHEN_WRONG = 0.8;
/**
 * Where a string crosses itself, colour cannot tell which part is on top, but the outline of that
 * part is darker than the place where the outline would be the other way round: brightness of the
 * one over that of the other, at all crossings of a picture together and at one of them alone. Yarn
 * marks are dark too, so one alone tells less; turned round, all but two would be noticed.
 */
const MOST_OF_EDGES = 0.92;
const MOST_OF_ONE_EDGE = 1.1;

/** Neither yarn marks nor shades bring one of these near the other or to the ground's grey. */
const TYING_COLOUR = '#35d07f';
const HELD_COLOUR = '#d9642a';
const LEAST_SATURATION = 18;

type Side = 'front' | 'back';

function stringAt({ data }: Pixels, pixel: number): number {
  const i = 4 * pixel;
  const red = data[i] as number;
  const green = data[i + 1] as number;
  const blue = data[i + 2] as number;
  if ((data[i + 3] as number) < 128) return GROUND;
  if (Math.max(red, green, blue) - Math.min(red, green, blue) < LEAST_SATURATION) return GROUND;
  return green > red ? TYING : HELD;
}

/** A disc in a picture, in pixels. */
interface Disc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Share of the pixels looked at that have the same on top, of those with thread in either. */
function agreement(shown: Pixels, expected: ExpectedPicture, within?: Disc): number {
  const { width, height } = expected;
  const { x: cx, y: cy, radius } = within ?? { x: 0, y: 0, radius: width + height };
  let same = 0;
  let all = 0;
  for (let y = Math.max(0, Math.ceil(cy - radius)); y < height && y <= cy + radius; y++) {
    for (let x = Math.max(0, Math.ceil(cx - radius)); x < width && x <= cx + radius; x++) {
      if (Math.hypot(x - cx, y - cy) > radius) continue;
      const pixel = y * width + x;
      const [a, b] = [stringAt(shown, pixel), expected.strings[pixel]];
      if (a === GROUND && b === GROUND) continue;
      all++;
      if (a === b) same++;
    }
  }
  return all === 0 ? 0 : same / all;
}

/** The canvas itself, without what stands over it. */
async function canvasPixels(canvas: Locator): Promise<Pixels> {
  const url = await canvas.evaluate((element) => (element as HTMLCanvasElement).toDataURL());
  return PNG.sync.read(Buffer.from(url.slice(url.indexOf(',') + 1), 'base64'));
}

function eyeAt(position: number, side: Side, width: number, height: number): Eye {
  const yaw = side === 'front' ? 0 : Math.PI;
  const { target, distance } = frameBox(knotBox(position), {
    yaw,
    pitch: 0,
    aspect: width / height,
  });
  return { target, distance, opening: FIELD_OF_VIEW, from: side };
}

/** The point of the tying string at a place of `crossingsOf`. */
function pointAt({ tying }: KnotPose, at: number): number[] {
  const i = Math.floor(at);
  const f = at - i;
  return [0, 1, 2].map((k) => {
    const a = tying[3 * i + k] as number;
    return a + ((tying[3 * i + 3 + k] ?? a) - a) * f;
  });
}

/** Whether what passes over at a crossing is not itself covered, seen from a side. */
function uncovered(
  crossing: Crossing,
  pose: KnotPose,
  expected: ExpectedPicture,
  at: { readonly x: number; readonly y: number },
  side: Side,
): boolean {
  const pixel = Math.round(at.y) * expected.width + Math.round(at.x);
  const over = (crossing.level === 'over') === (side === 'front');
  if (crossing.with === 'held') return expected.strings[pixel] === (over ? TYING : HELD);
  const place = lengthTo(pose, over ? crossing.at : crossing.earlier);
  return Math.abs((expected.along[pixel] as number) - place) < 1;
}

/** Length of the tying string up to a place, in diameters. */
function lengthTo({ tying, tyingRadius }: KnotPose, at: number): number {
  let length = 0;
  for (let i = 0; i < at; i++) {
    const f = Math.min(1, at - i);
    length +=
      f *
      Math.hypot(
        ...[0, 1, 2].map((k) => (tying[3 * i + 3 + k] as number) - (tying[3 * i + k] as number)),
      );
  }
  return length / (2 * tyingRadius);
}

/** Brightness of the pixels, added up, at which, in a picture, one part of the string covers another. */
function brightnessOfEdges(
  shown: Pixels,
  { width, strings, along }: ExpectedPicture,
  not: ExpectedPicture,
  at: Disc,
): { readonly sum: number; readonly pixels: number } {
  const isEdge = (picture: { strings: Uint8Array; along: Float32Array }, pixel: number): boolean =>
    [1, width].some(
      (step) =>
        picture.strings[pixel] === TYING &&
        picture.strings[pixel + step] === TYING &&
        Math.abs((picture.along[pixel] as number) - (picture.along[pixel + step] as number)) > 2,
    );
  let sum = 0;
  let pixels = 0;
  for (let y = Math.round(at.y - at.radius); y <= at.y + at.radius; y++) {
    for (let x = Math.round(at.x - at.radius); x <= at.x + at.radius; x++) {
      const pixel = y * width + x;
      if (!isEdge({ strings, along }, pixel)) continue;
      // A rim is a few pixels wide: only edges well away from the other picture's are told apart.
      let near = false;
      for (let dy = -3; dy <= 3; dy++) {
        for (let dx = -3; dx <= 3; dx++) near ||= isEdge(not, pixel + dy * width + dx);
      }
      if (near) continue;
      // The outline may be drawn a pixel beside where it is reckoned.
      let darkest = 765;
      for (let dy = -1; dy <= 1; dy++) {
        for (let dx = -1; dx <= 1; dx++) {
          const i = 4 * (pixel + dy * width + dx);
          const [r, g, b] = shown.data.subarray(i, i + 3) as unknown as number[];
          darkest = Math.min(darkest, (r ?? 0) + (g ?? 0) + (b ?? 0));
        }
      }
      sum += darkest;
      pixels++;
    }
  }
  return { sum, pixels };
}

type Edges = ReturnType<typeof brightnessOfEdges>;

/** Mean brightness of the edges that should be there over that of those that should not. */
function ratioOf(edges: readonly (readonly [Edges, Edges])[]): number {
  const mean = (which: 0 | 1): number =>
    edges.reduce((sum, pair) => sum + pair[which].sum, 0) /
    edges.reduce((sum, pair) => sum + pair[which].pixels, 0);
  return mean(0) / mean(1);
}

/** What would be seen if one string lay over the other where it lies under it. */
function exchanged(picture: ExpectedPicture): ExpectedPicture {
  const strings = picture.strings.map((one) => (one === GROUND ? GROUND : HELD + TYING - one));
  return { ...picture, strings };
}

/** Seen from the front as it is from the back: every crossing is the other way round. */
function throughAndThrough(pose: KnotPose): KnotPose {
  const turned = (points: Float64Array): Float64Array =>
    points.map((value, i) => (i % 3 === 2 ? -value : value));
  return { ...pose, tying: turned(pose.tying), held: turned(pose.held) };
}

describe('what Chromium shows of each knot, against a picture made apart from it', () => {
  test('string by string, crossing by crossing, from the front and from the back', async ({
    fill,
  }) => {
    const page = await fill(
      `<halfhitch-knot tying-colour="${TYING_COLOUR}" held-colour="${HELD_COLOUR}" controls="none" style="inline-size:360px"></halfhitch-knot>`,
    );
    const knot = page.locator('halfhitch-knot');
    const canvas = knot.locator('canvas.threads');
    await canvas.waitFor();
    const show = async (kind: KnotKind, view: Side, position: number): Promise<Pixels> => {
      await knot.evaluate(
        (element, given) => {
          Object.assign(element, { kind: given.kind, view: given.view });
          Object.assign(element, { position: given.position });
        },
        { kind, view, position },
      );
      await settled(page);
      return canvasPixels(canvas);
    };
    for (const kind of KNOT_KINDS) {
      const seen = { held: 0, own: 0 };
      for (const position of [1.2, 2]) {
        const pose = knotPose(kind, position, { points: 640 });
        for (const side of ['front', 'back'] as const) {
          const what = `${kind} at ${position} from the ${side}`;
          const shown = await show(kind, side, position);
          const { width, height } = shown;
          const eye = eyeAt(position, side, width, height);
          const expected = expectedPicture(pose, eye, width, height);
          expect(agreement(shown, expected), what).toBeGreaterThan(LEAST_AGREEMENT);
          // The measure itself must tell a wrong picture, or it would prove nothing.
          const other = eyeAt(position, side === 'front' ? 'back' : 'front', width, height);
          const swapped = expectedPicture(pose, other, width, height);
          expect(agreement(shown, swapped), `${what}, swapped`).toBeLessThan(MOST_WHEN_WRONG);
          const blank = { width, height, data: new Uint8Array(4 * width * height) };
          expect(agreement(blank, expected), `${what}, blank`).toBeLessThan(0.01);
          const edges: (readonly [Edges, Edges])[] = [];
          const flipped = expectedPicture(throughAndThrough(pose), eye, width, height);
          for (const crossing of crossingsOf(pose.tying, pose.held)) {
            const at = pixelOf(eye, width, height, pointAt(pose, crossing.at));
            const radius = pose.tyingRadius * at.scale;
            if (at.x < radius || at.x > width - radius) continue;
            if (at.y < radius || at.y > height - radius) continue;
            if (!uncovered(crossing, pose, expected, at, side)) continue;
            const name = `${what}, crossing ${crossing.with} ${crossing.level} at ${crossing.at.toFixed(0)}`;
            seen[crossing.with]++;
            const near = { x: at.x, y: at.y, radius: radius / 2 };
            if (crossing.with === 'held') {
              expect(agreement(shown, expected, near), name).toBeGreaterThan(LEAST_AT_CROSSING);
              expect(agreement(shown, exchanged(expected), near), name).toBeLessThan(
                1 - LEAST_AT_CROSSING,
              );
              continue;
            }
            const place = { ...near, radius: 2 * radius };
            const right = brightnessOfEdges(shown, expected, flipped, place);
            const wrong = brightnessOfEdges(shown, flipped, expected, place);
            if (right.pixels < 6 || wrong.pixels < 6) continue;
            edges.push([right, wrong]);
            expect(ratioOf([[right, wrong]]), name).toBeLessThan(MOST_OF_ONE_EDGE);
          }
          if (edges.length > 0) expect(ratioOf(edges), what).toBeLessThan(MOST_OF_EDGES);
        }
      }
      // Two bars and two turns behind at least, or the loops above have looked at nothing.
      expect(seen.held, kind).toBeGreaterThanOrEqual(8);
      expect(seen.own, kind).toBeGreaterThanOrEqual(4);
    }
  });
});
