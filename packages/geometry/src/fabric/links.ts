import { lengthOf } from '../curve/polyline.js';
import { LEVEL_TOLERANCE, thinned } from './levels.js';
import type { Seating } from './seating.js';
import { BEAD_STEP, settle } from './settle.js';
import { isClove, type KnotShape, mirrorCode, NO_KNOT } from './shapes.js';

/**
 * What a lead does between its knots:
 * `on` to the next knot, in the row or at a turn; `up` from the back into its first knot; and, when
 * another lead takes over, `through` that lead's first knot, `behind` it, or `down`, to the back.
 * `end` hangs down from the last knot of the piece.
 */
export type LinkWay = 'on' | 'up' | 'through' | 'behind' | 'down' | 'end';

/** A way between knots, settled among the knots beside it. Tying diameters. */
export interface Link {
  /**
   * Points by level of detail, from where it leaves a knot or the back to where it reaches one, ends
   * included, relative to the place of the knot it leads to, as if that were tied to the right.
   */
  readonly levels: readonly Float64Array[];
  readonly length: number;
}

/** Kind codes of the knots round a knot: steps to the right and down from it; NO_KNOT for none. */
export type Around = (right: number, down: number) => number;

export interface LinkAsk {
  readonly way: LinkWay;
  /** Where the knot that the lead comes from is, as seen from the other one. */
  readonly from: { readonly right: number; readonly down: number };
  /** With `up`: how the lead before it leaves. */
  readonly beside?: LinkWay;
  /** Another lead that passes to or from the back in the same gap. */
  readonly past?: Past;
}

/** A way to or from the back beside a link, as seen from the knot that the link leads to. */
export interface Past {
  readonly way: 'through' | 'up';
  readonly beside?: LinkWay;
  readonly from: LinkAsk['from'];
  readonly around: Around;
  readonly right: number;
  readonly down: number;
  /** Whether its row goes the other way. */
  readonly mirrored: boolean;
}

/** How far below the middle of its row a lead passes to the back, in a gap between base strings. */
export const PASSING = 0.51;

/** The same for a lead that goes down to the back at a turn. */
export const PASSING_DOWN = 1.53;

/**
 * A knot's way of having its gap: its kind code, and whether the knot before it in the row turns
 * back too, so that both have their leads from one gap, as in a piece two knots wide.
 */
export const gapUse = (code: number, before: number): number => code + (before >= 2 ? 4 : 0);

/**
 * How far above the middle of its row a lead comes up: for a knot that turns back, higher, since the
 * knot beside it has its lead from the same gap.
 */
export const comingUp = (use: number): number => (use === 2 || use === 3 ? 1.53 : 0.51);

/**
 * How far below the middle a lead passes behind the last knot of a row, where the knot before it may
 * have sent another through, and the last knot's own lead comes up.
 */
export function passingBehind(use: number): number {
  if (use >= 6) return 0.51;
  return isClove(use & 3) ? -1.53 : -0.51;
}

/** How far the last end is led before it hangs straight. */
const END_RUN = 3;

const BLOCK: Readonly<Record<'left' | 'right' | 'up' | 'down', number>> = {
  left: -2,
  right: 1,
  up: -1,
  down: 1,
};

const ofSeating = new WeakMap<Seating, Links>();

/** Ways between knots, worked out once for each surrounding in which they occur. */
export class Links {
  private readonly known = new Map<string, Link>();
  private readonly paths = new Map<string, Float64Array>();

  private constructor(private readonly seating: Seating) {}

  /** The ways of all pieces whose knots sit in one way on each other: they depend on nothing else. */
  static of(seating: Seating): Links {
    let links = ofSeating.get(seating);
    if (!links) {
      links = new Links(seating);
      ofSeating.set(seating, links);
    }
    return links;
  }

  /** Where floats begin and end: behind the hindmost wraps. */
  get backDepth(): number {
    return this.seating.back - 0.5;
  }

  /** A link for a knot tied to the right, or for one tied to the left if `around` is mirrored. */
  link(ask: LinkAsk, around: Around): Link {
    const key = keyOf(ask, around);
    const found = this.known.get(key);
    if (found) return found;
    const path = this.path(ask, around, key);
    const last = path.length / 3 - 2;
    const link: Link = {
      levels: LEVEL_TOLERANCE.map((tolerance) => thinned(path, tolerance, 1, last)),
      length: lengthOf(path.subarray(3, path.length - 3)),
    };
    this.known.set(key, link);
    return link;
  }

  private path(ask: LinkAsk, around: Around, key: string): Float64Array {
    const found = this.paths.get(key);
    if (found) return found;
    const path = settle(this.guess(ask, around), this.obstacles(ask, around));
    this.paths.set(key, path);
    return path;
  }

  private shape(code: number): KnotShape {
    const { shapes } = this.seating;
    return shapes[code] ?? shapes[0]!;
  }

  /** A rough way with the right strands over and under it. */
  private guess(ask: LinkAsk, around: Around): number[] {
    const { pitch, rowHeight } = this.seating;
    const { way, from } = ask;
    const half = pitch / 2;
    const to = this.shape(around(0, 0));
    const entry = attach(to, 'entry', 0, 0);
    if (way === 'up') {
      const x = to.entrySide * half;
      const y = -comingUp(gapUse(around(0, 0), around(-1, 0)));
      return [...this.post(x, y, 'up'), x, y, 0, x, y * 0.6, 0.9, ...entry];
    }
    const before = this.shape(around(from.right, from.down));
    const ax = from.right * pitch;
    const ay = from.down * rowHeight;
    const exit = attach(before, 'exit', ax, ay);
    const gapOfExit = ax + before.exitSide * half;
    const exitHeight = exit[4]!;
    const { passing } = this;
    // Where another lead has gone through the gap before, the turn passes in front of it.
    const turning = gapOfExit - (ask.past ? 0.6 * before.exitSide : 0);
    const outer = ask.past ? passing + 1 : passing;
    const behind = ay + passingBehind(gapUse(around(0, 0), around(-1, 0)));
    switch (way) {
      case 'on': {
        const gapOfEntry = to.entrySide * half;
        const join = [turning, exitHeight, outer];
        const there = from.down === 0 && gapOfEntry === gapOfExit;
        const more = there
          ? []
          : [
              ...(ask.past ? [turning, exitHeight + 1.2, outer] : []),
              ...[gapOfEntry, entry[1]!, passing],
            ];
        return [...exit, ...join, ...more, ...entry];
      }
      case 'through': {
        const side = to.entrySide;
        const under = this.seating.front + 0.02;
        return [
          ...exit,
          ...[side * 1.1, -0.1, passing + 0.5],
          ...[side * 0.6, 0, under],
          ...[0, 0, under],
          ...[-side * 0.6, 0.3, under],
          ...[-side * (half - 0.2), 1, passing],
          ...[-side * half, 0.9, 0],
          ...this.post(-side * half, PASSING, 'down'),
        ];
      }
      case 'behind':
        return [
          ...exit,
          ...[gapOfExit - before.exitSide * 0.2, behind, 0.8],
          ...[gapOfExit, behind, 0],
          ...this.post(gapOfExit, behind, 'down'),
        ];
      case 'down':
        return [
          ...exit,
          ...[turning, exitHeight + 0.4, outer],
          ...(ask.past ? [turning, exitHeight + 1.2, outer] : []),
          ...[turning, ay + PASSING_DOWN, 0.8],
          ...[gapOfExit, ay + PASSING_DOWN, 0],
          ...this.post(gapOfExit, ay + PASSING_DOWN, 'down'),
        ];
      case 'end': {
        const y = exitHeight + END_RUN;
        const hang = [gapOfExit, y, passing, gapOfExit, y + BEAD_STEP, passing];
        return [...exit, turning, exitHeight + 0.4, outer, turning, y - 1.4, outer, ...hang];
      }
    }
  }

  /** Depth at which a lead passes from knot to knot, in front. */
  private get passing(): number {
    const { points } = this.seating.shapes[0]!;
    return points[points.length - 1]!;
  }

  /** Two points of a way straight to or from the back. */
  private post(x: number, y: number, way: 'up' | 'down'): number[] {
    const end = [x, y, this.backDepth];
    const beyond = [x, y, this.backDepth - BEAD_STEP];
    return way === 'up' ? [...beyond, ...end] : [...end, ...beyond];
  }

  private obstacles(ask: LinkAsk, around: Around): number[] {
    const { pitch, rowHeight, ratio } = this.seating;
    const { way, from, beside, past } = ask;
    const out: number[] = [];
    for (let right = BLOCK.left; right <= BLOCK.right; right++) {
      let any = false;
      for (let down = BLOCK.up; down <= BLOCK.down; down++) {
        const code = around(right, down);
        if (code === NO_KNOT) continue;
        any = true;
        const shape = this.shape(code);
        const isTo = right === 0 && down === 0;
        const isFrom = way !== 'up' && right === from.right && down === from.down;
        const changed = isTo && (way === 'through' || beside === 'through');
        // What goes on from a knot is this link itself, or the lead that leaves beside it.
        const leaves =
          isFrom || (beside !== undefined && right === from.right && down === from.down);
        const comesIn = isTo && way !== 'end';
        const points = changed ? shape.lifted : shape.points;
        const first = comesIn ? shape.from + OWN : 0;
        const last = leaves ? shape.to - (isFrom ? OWN : 0) : points.length / 3 - 1;
        for (let i = first; i <= last; i += 2) {
          const at = i * 3;
          out.push(
            points[at]! + right * pitch,
            points[at + 1]! + down * rowHeight,
            points[at + 2]!,
            1,
          );
        }
      }
      if (any) for (let y = -8; y <= 8; y += 0.25) out.push(right * pitch, y, 0, (1 + ratio) / 2);
    }
    if (past !== undefined) {
      const other: LinkAsk = {
        way: past.way,
        from: past.from,
        ...(past.beside ? { beside: past.beside } : {}),
      };
      const path = this.path(other, past.around, keyOf(other, past.around));
      const side = past.mirrored ? -1 : 1;
      for (let i = 3; i < path.length - 3; i += 3) {
        const x = path[i]! * side + past.right * pitch;
        out.push(x, path[i + 1]! + past.down * rowHeight, path[i + 2]!, 1);
      }
    }
    if (beside !== undefined) {
      const other: LinkAsk = { way: beside, from };
      const path = this.path(other, around, keyOf(other, around));
      for (let i = 3; i < path.length - 3; i += 3)
        out.push(path[i]!, path[i + 1]!, path[i + 2]!, 1);
    }
    return out;
  }
}

/** Points of a knot at the end of a link that the link need not keep away from. */
const OWN = 14;

/** Two points of a knot, in the lead's direction, where it is held when a link is settled. */
function attach(shape: KnotShape, end: 'entry' | 'exit', x: number, y: number): number[] {
  const { points, from, to } = shape;
  // Steps of a knot's points are about half a bead's.
  const picks = end === 'exit' ? [to - 2, to] : [from, from + 2];
  return picks.flatMap((i) => [points[i * 3]! + x, points[i * 3 + 1]! + y, points[i * 3 + 2]!]);
}

function keyOf({ way, from, beside, past }: LinkAsk, around: Around): string {
  const other = past
    ? `${past.way} ${past.beside} ${past.right} ${past.down} ${past.from.right} ${past.from.down}`
    : '';
  let key = `${way} ${from.right} ${from.down} ${beside ?? ''} ${other}:`;
  for (let down = BLOCK.up; down <= BLOCK.down; down++) {
    for (let right = BLOCK.left; right <= BLOCK.right; right++) key += around(right, down) + 1;
  }
  return key;
}

/** Kinds round a knot seen in a mirror. */
export const mirroredAround =
  (around: Around): Around =>
  (right, down) =>
    mirrorCode(around(-right, down));
