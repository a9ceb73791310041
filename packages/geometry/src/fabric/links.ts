import { lengthOf } from '../curve/polyline.js';
import { Gaps } from './gaps.js';
import { LEVEL_TOLERANCE, thinned } from './levels.js';
import { BLOCK, keyOf, type LinkAsk } from './link-ask.js';
import { guessLink } from './link-guess.js';
import { backDepth, type Seating, seatedShape } from './seating.js';
import { settle } from './settle.js';
import { NO_KNOT } from './shapes.js';

/** A way between knots, settled among the knots beside it. Tying diameters. */
export interface Link {
  /**
   * Points by level of detail, from where it leaves a knot or the back to where it reaches one, ends
   * included, relative to the place of the knot it leads to, as if that were tied to the right.
   */
  readonly levels: readonly Float64Array[];
  readonly length: number;
}

/** Points of a knot at the end of a link that the link need not keep away from. */
const OWN = 14;

/** How far ways keep from what is there, by touching: a little more, for they move aside later. */
const KEEP = 1.01;

/** How far a knot's end reaches where the lead to it comes from the same gap. */
const STUB = 1.3;

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
    return backDepth(this.seating);
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
    const path = settle(guessLink(this.seating, ask, gaps), this.obstacles(ask, gaps));
    for (let i = 0; i < path.length; i += 3) path[i] = gaps.closed(path[i]!);
    this.paths.set(key, path);
    return path;
  }

  private turnsBack(code: number): boolean {
    const shape = seatedShape(this.seating, code);
    return shape.entrySide === shape.exitSide;
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
        const shape = seatedShape(this.seating, code);
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
