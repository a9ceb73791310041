import type { Track, Vec3 } from '../curve/track.js';

const LEFT: Vec3 = [-1, 0, 0];
const RIGHT: Vec3 = [1, 0, 0];
const UP: Vec3 = [0, -1, 0];
const DOWN: Vec3 = [0, 1, 0];
const BACK: Vec3 = [0, 0, -1];
const FRONT: Vec3 = [0, 0, 1];

/**
 * Where a forward half hitch is being tied, in tying diameters, the held string on x = z = 0. A
 * backward half is worked out as a forward one in a mirror.
 */
export interface Reach {
  /** Where the lead's fixed part ends, and whether it comes out there to the right or downwards. */
  readonly start: Vec3;
  readonly heading: 'right' | 'down';
  /** Height of the bar. */
  readonly bar: number;
  /** How far above the bar the lead passes under the held string. */
  readonly gap: number;
  /** How far the lead first hangs straight down, before the standing part leans aside. */
  readonly stem: number;
  /** Depth of the layer behind the held string, and half-width of the loop. */
  readonly layer: number;
  /** Radius of free bends. */
  readonly bend: number;
  /** Distance of the standing part from the lead that comes up between it and the held string. */
  readonly clear: number;
}

/** Turning angles of the bar: heading at each corner (0 = down, + = to the right), and runs. */
interface BarShape {
  readonly lean: number;
  readonly run: number;
  readonly across: number;
}

const RIGHT_ANGLE = Math.PI / 2;

/** Height of the standing part's run and its place at the height where the lead comes up. */
function barFor(reach: Reach, lean: number): BarShape & { readonly standing: number } {
  const { start, bar, bend: r, layer } = reach;
  const sin = Math.sin(lean);
  const cos = Math.cos(lean);
  const beside = reach.heading === 'right';
  const x0 = start[0] + (beside ? r : 0) + r * (cos - 1);
  const y0 = (beside ? r : 0) + reach.stem + r * sin;
  const run = (bar - start[1] - y0 - r * (1 + sin)) / cos;
  const xEnd = x0 - run * sin;
  const yEnd = bar - r * (1 + sin);
  const standing = xEnd + Math.max(0, yEnd - (bar - reach.gap)) * Math.tan(lean);
  return { lean, run, across: layer - r - (xEnd + r * cos), standing };
}

/** Whether a leaning standing part passes the place where the lead comes up at a diameter or more. */
const keepsClear = (reach: Reach, shape: { lean: number; standing: number }): boolean =>
  shape.standing <= -(reach.layer + reach.clear / Math.cos(shape.lean));

/** The least lean at which the standing part keeps clear of the place where the lead comes up. */
function shapeBar(reach: Reach): BarShape {
  let low = 0;
  let high = (80 * Math.PI) / 180;
  if (keepsClear(reach, barFor(reach, low))) return barFor(reach, low);
  for (let i = 0; i < 40; i++) {
    const lean = (low + high) / 2;
    const shape = barFor(reach, lean);
    if (shape.run >= 0 && !keepsClear(reach, shape)) low = lean;
    else high = lean;
  }
  return barFor(reach, high);
}

/** Pairs of length and turn; the sum of turns is the heading. */
interface Profile {
  readonly cuts: readonly number[];
  readonly headings: readonly number[];
}

function profile(start: number, steps: readonly (readonly [number, number])[]): Profile {
  const cuts = [0];
  const headings = [start];
  for (const [length, turn] of steps) {
    if (length <= 0) continue;
    cuts.push(cuts[cuts.length - 1]! + length);
    headings.push(headings[headings.length - 1]! + turn);
  }
  return { cuts, headings };
}

function headingAt(p: Profile, s: number): number {
  const last = p.cuts.length - 1;
  for (let i = 1; i <= last; i++) {
    if (s <= p.cuts[i]!) {
      const f = (s - p.cuts[i - 1]!) / (p.cuts[i]! - p.cuts[i - 1]!);
      return p.headings[i - 1]! + (p.headings[i]! - p.headings[i - 1]!) * f;
    }
  }
  return p.headings[last]!;
}

function barProfile(reach: Reach): Profile {
  const { lean, run, across } = shapeBar(reach);
  const r = reach.bend;
  const from = reach.heading === 'right' ? RIGHT_ANGLE : 0;
  return profile(from, [
    [r * from, -from],
    [reach.stem, 0],
    [r * lean, -lean],
    [run, 0],
    [r * (RIGHT_ANGLE + lean), RIGHT_ANGLE + lean],
    [across, 0],
    [r * RIGHT_ANGLE, -RIGHT_ANGLE],
  ]);
}

function hangingProfile(reach: Reach): Profile {
  return reach.heading === 'right'
    ? profile(RIGHT_ANGLE, [[reach.bend * RIGHT_ANGLE, -RIGHT_ANGLE]])
    : profile(0, []);
}

/**
 * Extends a track that ends at the reach's start by the lead swung over the held string: from hanging (`laid` = 0) to the bar (1), then straight
 * down for `tail`. Both shapes are given by their headings along the thread; a mean of headings
 * keeps every length.
 */
export function swing(track: Track, reach: Reach, laid: number, tail: number): Track {
  const a = hangingProfile(reach);
  const b = barProfile(reach);
  const cuts = [...new Set([...a.cuts, ...b.cuts])].sort((p, q) => p - q);
  const heading = (s: number) => headingAt(a, s) * (1 - laid) + headingAt(b, s) * laid;
  for (let i = 1; i < cuts.length; i++) {
    const from = heading(cuts[i - 1]!);
    const turn = heading(cuts[i]!) - from;
    const length = cuts[i]! - cuts[i - 1]!;
    if (length < 1e-12) continue;
    if (Math.abs(turn) < 1e-9) track.line(length);
    else {
      const side = Math.sign(turn);
      const toward: Vec3 = [Math.cos(from) * side, -Math.sin(from) * side, 0];
      track.turn(toward, length / Math.abs(turn), Math.abs(turn));
    }
  }
  return track.line(tail);
}

/** How the lead leaves a half hitch: hanging on the side it came from, or over to the other. */
export type Leaving =
  | { readonly way: 'down-over-bar'; readonly bottom: number }
  | { readonly way: 'across-and-down'; readonly x: number; readonly bottom: number }
  | { readonly way: 'across'; readonly x: number };

export interface ThreadedLoop {
  readonly track: Track;
  /** Arc length at the lowest point of the loop, at the left end of the under-pass, at the end. */
  readonly turned: number;
  readonly under: number;
  readonly length: number;
}

/**
 * Extends a track by the lead's way through a forward half hitch whose loop hangs `slack` below its bar: bar, round
 * the held string from the front to the back, up, under the held string above the bar, up to the
 * front between the standing part and the held string, and out.
 */
export function threaded(
  track: Track,
  reach: Reach,
  slack: number,
  leaving: Leaving,
): ThreadedLoop {
  const { layer, bend: r, gap } = reach;
  const front = reach.start[2];
  swing(track, reach, 1, slack);
  const u = (front + layer) / 2;
  track.turn(BACK, u).turn(UP, u);
  const turned = track.length;
  track
    .line(slack + gap)
    .turn(LEFT, r)
    .line(2 * layer - 2 * r);
  const under = track.length;
  // One diameter and a little in front of the bar, which is then crossed over.
  const over = front + 1.05;
  track.turn(FRONT, r).line(over + layer - 2 * r);
  if (leaving.way === 'down-over-bar') {
    track.turn(DOWN, r);
    track.line(leaving.bottom - track.end[1]);
  } else {
    track.turn(RIGHT, r);
    const bend = leaving.way === 'across-and-down' ? r : 0;
    track.line(leaving.x - bend - track.end[0]);
    if (leaving.way === 'across-and-down') {
      track.turn(DOWN, r);
      track.line(leaving.bottom - track.end[1]);
    }
  }
  return { track, turned, under, length: track.length };
}
