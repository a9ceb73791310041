import { lengthOf } from '../curve/polyline.js';
import { LEVEL_TOLERANCE, thinned } from './levels.js';
import { outsideOf } from './passes.js';
import type { Seating } from './seating.js';
import { BEAD_STEP, settle } from './settle.js';
import { type KnotShape, mirrorCode, NO_KNOT } from './shapes.js';

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
  /** Kinds of the knots round the one it leads to. */
  readonly around: Around;
  /** Where the knot that the lead comes from is, as seen from the other one. */
  readonly from: { readonly right: number; readonly down: number };
  /** Height at which a way to or from the back passes, from the middle of that knot. */
  readonly lane?: number;
  /** How far the gaps right of the knots -2, -1, 0 are open. Default: closed. */
  readonly open?: readonly number[];
  /** Whether an old lead lies under the riding turn of a knot near it. Default: nowhere. */
  readonly lifted?: (right: number, down: number) => boolean;
  /** What is there before it and comes near it. */
  readonly others?: readonly Other[];
}

/** Another way, and where the knot it leads to is as seen from the knot that the link leads to. */
export interface Other {
  readonly ask: LinkAsk;
  readonly right: number;
  readonly down: number;
  /** Whether its row goes the other way. */
  readonly mirrored: boolean;
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
  private readonly bySign = new Map<string, Link>();
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

  /**
   * A link for a knot tied to the right, or for one tied to the left if `around` is mirrored, as it
   * lies when every gap is closed.
   *
   * @param sign stands for all that `ask` tells; what is asked is worked out only when it is new
   */
  link(sign: string, ask: () => LinkAsk): Link {
    let link = this.bySign.get(sign);
    if (!link) {
      link = this.linkFor(ask());
      this.bySign.set(sign, link);
    }
    return link;
  }

  linkFor(ask: LinkAsk): Link {
    const key = keyOf(ask);
    const found = this.known.get(key);
    if (found) return found;
    const path = this.path(ask, key);
    const last = path.length / 3 - 2;
    const open = new Gaps(this.seating, ask);
    const spread = path.map((v, i) => (i % 3 === 0 ? open.spread(v) : v));
    const link: Link = {
      levels: LEVEL_TOLERANCE.map((tolerance) => thinned(path, tolerance, 1, last)),
      length: lengthOf(spread.subarray(3, path.length - 3)),
    };
    this.known.set(key, link);
    return link;
  }

  private path(ask: LinkAsk, key: string): Float64Array {
    const found = this.paths.get(key);
    if (found) return found;
    const gaps = new Gaps(this.seating, ask);
    const path = settle(this.guess(ask, gaps), this.obstacles(ask, gaps));
    for (let i = 0; i < path.length; i += 3) path[i] = gaps.closed(path[i]!);
    this.paths.set(key, path);
    return path;
  }

  private turnsBack(code: number): boolean {
    const shape = this.shape(code);
    return shape.entrySide === shape.exitSide;
  }

  private shape(code: number): KnotShape {
    const { shapes } = this.seating;
    return shapes[code] ?? shapes[0]!;
  }

  /** A rough way with the right strands over and under it. */
  private guess(ask: LinkAsk, gaps: Gaps): number[] {
    const { rowHeight } = this.seating;
    const { way, from, around, others = [] } = ask;
    const to = this.shape(around(0, 0));
    const entry = attach(to, 'entry', 0, 0);
    const lane = ask.lane ?? 0;
    if (way === 'up') {
      const x = gaps.post(0, to.entrySide);
      return [...this.post(x, lane, 'up'), x, lane, 0, x, lane * 0.6, 0.9, ...entry];
    }
    const before = this.shape(around(from.right, from.down));
    const ax = gaps.column(from.right);
    const ay = from.down * rowHeight;
    const exit = attach(before, 'exit', ax, ay);
    const gapOfExit = gaps.middle(from.right, before.exitSide);
    const exitHeight = exit[4]!;
    const { passing } = this;
    // Where another lead has gone through the gap before, the turn passes in front of it.
    const past = others.length > 0;
    const turning = gapOfExit - (past ? 0.6 * before.exitSide : 0);
    const outer = past ? passing + 1 : passing;
    const away = gaps.post(from.right, before.exitSide);
    const height = ay + lane;
    switch (way) {
      case 'on': {
        const gapOfEntry = gaps.middle(0, to.entrySide);
        const join = [turning, exitHeight, outer];
        const there = from.down === 0 && Math.abs(gapOfEntry - gapOfExit) < 1e-6;
        const more = there
          ? []
          : [
              ...(past ? [turning, exitHeight + 1.2, outer] : []),
              ...[gapOfEntry, entry[1]!, passing],
            ];
        return [...exit, ...join, ...more, ...entry];
      }
      case 'through': {
        const side = to.entrySide;
        const under = this.seating.front + 0.02;
        const far = gaps.post(0, -side);
        return [
          ...exit,
          ...[side * 1.1, 0.2, passing + 0.5],
          ...[side * 0.6, 0.2, under],
          ...[0, 0, under],
          ...[-side * 0.6, -0.3, under],
          ...[far + side * 0.2, -1, passing],
          ...[far, Math.min(lane, -0.9), 0],
          ...this.post(far, lane, 'down'),
        ];
      }
      case 'behind':
        return [
          ...exit,
          ...[away - before.exitSide * 0.2, height, 0.8],
          ...[away, height, 0],
          ...this.post(away, height, 'down'),
        ];
      case 'down':
        return [
          ...exit,
          ...[turning, exitHeight + 0.4, outer],
          ...[away, height, 0.8],
          ...[away, height, 0],
          ...this.post(away, height, 'down'),
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

  private obstacles(ask: LinkAsk, gaps: Gaps): number[] {
    const { rowHeight, ratio } = this.seating;
    const { way, from, around, lifted, others = [] } = ask;
    const out: number[] = [];
    for (let right = BLOCK.left; right <= BLOCK.right; right++) {
      let any = false;
      for (let down = BLOCK.up; down <= BLOCK.down; down++) {
        const code = around(right, down);
        if (code === NO_KNOT) continue;
        any = true;
        const shape = this.shape(code);
        const isTo = right === 0 && down === 0;
        const isFrom = right === from.right && down === from.down && !(isTo && way === 'up');
        const points = lifted?.(right, down) ? shape.lifted : shape.points;
        // Where other ways into and out of knots are given, they stand for the knots' own ends.
        const comesIn = isTo && way !== 'end';
        const isNext = right === 1 && (down === 0 || (down === from.down && others.length > 0));
        const isBefore = right === -1 && down === 0 && others.length > 0;
        const turnsBack = shape.entrySide === shape.exitSide;
        const cutIn = isTo || isNext || (isFrom && (turnsBack || others.length > 0));
        const cutOut = isFrom || isBefore || (isNext && down !== 0);
        const first = cutIn ? shape.from + (comesIn && way !== 'through' ? OWN : 0) : 0;
        const last = cutOut ? shape.to - (isFrom && way !== 'up' ? OWN : 0) : points.length / 3 - 1;
        const narrow =
          isTo && turnsBack && from.down === 0 && this.turnsBack(around(from.right, 0));
        for (let i = first; i <= last; i += 2) {
          const at = i * 3;
          if (narrow && i > shape.to && Math.abs(points[at]!) > STUB) break;
          out.push(
            points[at]! + gaps.column(right),
            points[at + 1]! + down * rowHeight,
            points[at + 2]!,
            KEEP,
          );
        }
      }
      if (any) {
        const x = gaps.column(right);
        for (let y = -8; y <= 8; y += 0.25) out.push(x, y, 0, (KEEP * (1 + ratio)) / 2);
      }
    }
    for (const other of others) {
      const path = this.path(other.ask, keyOf(other.ask));
      const side = other.mirrored ? -1 : 1;
      for (let i = 3; i < path.length - 3; i += 3) {
        const x = gaps.spread(path[i]! * side + other.right * this.seating.pitch);
        out.push(x, path[i + 1]! + other.down * rowHeight, path[i + 2]!, KEEP);
      }
    }
    return out;
  }
}

/** Columns round a knot with the gaps between them open; 0 is the knot's own. */
class Gaps {
  private readonly columns: readonly number[];
  private readonly hasKnot: readonly boolean[];

  constructor(
    private readonly seating: Seating,
    { around, open = [] }: LinkAsk,
  ) {
    const { pitch } = seating;
    const [a = 0, b = 0, c = 0] = open;
    this.columns = [-2 * pitch - a - b, -pitch - b, 0, pitch + c];
    this.hasKnot = [-2, -1, 0, 1].map((right) =>
      [-1, 0, 1].some((down) => around(right, down) !== NO_KNOT),
    );
  }

  column(right: number): number {
    const { pitch } = this.seating;
    if (right < -2) return this.columns[0]! + (right + 2) * pitch;
    return right > 1 ? this.columns[3]! + (right - 1) * pitch : this.columns[right + 2]!;
  }

  /** Middle of the gap beside a column. */
  middle(right: number, side: number): number {
    return (this.column(right) + this.column(right + side)) / 2;
  }

  /** Where leads pass to the back beside a column: in its gap, or beside the piece. */
  post(right: number, side: number): number {
    const inside = this.hasKnot[right + side + 2] ?? false;
    return inside ? this.middle(right, side) : this.column(right) + side * outsideOf(this.seating);
  }

  /** From a closed piece to this one. */
  spread(x: number): number {
    const { pitch, halfWidth } = this.seating;
    const right = Math.round(x / pitch);
    const beyond = x - right * pitch;
    const side = Math.sign(beyond);
    const more = Math.abs(beyond) - halfWidth;
    const at = this.column(right);
    if (more <= 0) return at + beyond;
    const opening = side * (this.column(right + side) - at) - pitch;
    return at + beyond + (side * opening * more) / (pitch - 2 * halfWidth);
  }

  /** And back. */
  closed(x: number): number {
    const { pitch, halfWidth } = this.seating;
    let right = -2;
    while (right < 1 && x > this.middle(right, 1)) right++;
    const beyond = x - this.column(right);
    const side = Math.sign(beyond);
    const more = Math.abs(beyond) - halfWidth;
    if (more <= 0) return right * pitch + beyond;
    const opening = side * (this.column(right + side) - this.column(right)) - pitch;
    if (opening <= 0) return right * pitch + beyond;
    const free = pitch - 2 * halfWidth;
    return right * pitch + side * (halfWidth + (more * free) / (free + opening));
  }
}

/** Points of a knot at the end of a link that the link need not keep away from. */
const OWN = 14;

/** How far ways keep from what is there, by touching: a little more, for they move aside later. */
const KEEP = 1.01;

/** How far a knot's end reaches where the lead to it comes from the same gap. */
const STUB = 1.3;

/** Two points of a knot, in the lead's direction, where it is held when a link is settled. */
function attach(shape: KnotShape, end: 'entry' | 'exit', x: number, y: number): number[] {
  const { points, from, to } = shape;
  // Steps of a knot's points are about half a bead's.
  const picks = end === 'exit' ? [to - 2, to] : [from, from + 2];
  return picks.flatMap((i) => [points[i * 3]! + x, points[i * 3 + 1]! + y, points[i * 3 + 2]!]);
}

function keyOf(ask: LinkAsk): string {
  const { way, from, around, lane, open = [], lifted, others = [] } = ask;
  let key = `${way} ${from.right} ${from.down} ${lane?.toFixed(3) ?? ''}`;
  key += ` ${open.map((v) => v.toFixed(3)).join()}:`;
  key += codesRound(around) + liftedRound(lifted);
  for (const { ask: other, right, down, mirrored } of others) {
    key += `[${right} ${down} ${mirrored ? 1 : 0} ${keyOf(other)}]`;
  }
  return key;
}

/** The kinds that a link looks at. */
export function codesRound(around: Around): string {
  let codes = '';
  for (let down = BLOCK.up; down <= BLOCK.down; down++) {
    for (let right = BLOCK.left; right <= BLOCK.right; right++) codes += around(right, down) + 1;
  }
  return codes;
}

function liftedRound(lifted: LinkAsk['lifted']): string {
  if (!lifted) return '';
  let marks = '';
  for (let down = BLOCK.up; down <= BLOCK.down; down++) {
    for (let right = BLOCK.left; right <= BLOCK.right; right++) {
      if (lifted(right, down)) marks += ` ${right} ${down}`;
    }
  }
  return marks;
}

/** Kinds round a knot seen in a mirror. */
export const mirroredAround =
  (around: Around): Around =>
  (right, down) =>
    mirrorCode(around(-right, down));
