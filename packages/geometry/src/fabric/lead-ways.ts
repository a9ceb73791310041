import { type KnotReading, type RowReading, startSide } from '@halfhitch/core';
import { type Around, codesRound, type LinkAsk, type LinkWay, mirroredAround } from './link-ask.js';
import type { Link } from './links.js';
import type { Pass } from './passes.js';
import { endsRight, kindCode, NO_KNOT } from './shapes.js';
import type { Work } from './work.js';

/** Where leads go between the knots of some rows of a plan. */
export class LeadWays {
  private kinds = new Int8Array(0);
  private rows: readonly RowReading[] = [];
  private rowsFrom = 0;

  constructor(private readonly work: Work) {}

  /** Takes rows to answer about: those round what is asked, from the first one on. */
  read(rows: readonly RowReading[], from: number): void {
    const { columns } = this.work.plan;
    this.kinds = new Int8Array(rows.length * columns).fill(NO_KNOT);
    this.rows = rows;
    this.rowsFrom = from;
    for (const { row, knots } of rows) {
      for (const { column, kind } of knots) {
        this.kinds[(row - from) * columns + column] = kindCode(kind);
      }
    }
  }

  /** A lead's way to a knot from the one before it, or away from that when another takes over. */
  link(way: LinkWay, knot: KnotReading, last: KnotReading | null): Link {
    return this.work.links.link(this.sign(way, knot, last), () => this.ask(way, knot, last, DEPTH));
  }

  /** All that a link depends on, in short: the kinds of knots and the ways through gaps near it. */
  private sign(way: LinkWay, knot: KnotReading, last: KnotReading | null): string {
    const { passes } = this.work;
    const side = sideOf(knot);
    const gap = knot.column + (side > 0 ? 0 : 1);
    let sign = `${way}${last === null ? '' : (last.column - knot.column) * side}`;
    const rows = last === null || last.row < knot.row || knot.order < 3 ? 2 : 1;
    sign += last === null ? ':' : knot.row - last.row;
    for (let up = 0; up < rows; up++) {
      for (let right = -2; right <= 2; right++) {
        sign += `.${passes.set(knot.row - up, gap + right * side)}`;
        sign += `/${this.opening(knot.row - up, gap + right * side).toFixed(2)}`;
      }
    }
    return sign + codesRound(this.around(knot)) + (way === 'end' ? '' : Math.min(knot.order, 3));
  }

  private opening(row: number, gap: number): number {
    return this.work.passes.opening(row, gap, this.work.seating);
  }

  private ask(way: LinkWay, knot: KnotReading, last: KnotReading | null, depth: number): LinkAsk {
    const side = sideOf(knot);
    const from =
      last === null
        ? { right: 0, down: 0 }
        : { right: (last.column - knot.column) * side, down: last.row - knot.row };
    const gap = knot.column + (side > 0 ? 0 : 1);
    const { passes, seating } = this.work;
    const pass = passOf(way, knot);
    const place = way === 'behind' || way === 'down' ? last! : knot;
    const at = way === 'up' ? gapOf(knot) : way === 'through' ? farGapOf(knot) : farGapOf(place);
    return {
      way,
      around: this.around(knot),
      from,
      ...(pass === null ? {} : { lane: passes.lane(place.row, at, pass, seating) }),
      open: [-1, 0, 1].map((right) => {
        const here = this.opening(place.row, gap + right * side);
        const there = way === 'on' ? this.opening(last!.row, gap + right * side) : here;
        return Math.min(here, there);
      }),
      // Other rows are too far away, but for the one that a turn comes from.
      lifted: (right, down) =>
        (down === 0 || down === from.down) &&
        passes.isLifted(knot.row + down, knot.column + right * side),
      others:
        depth === 0
          ? []
          : this.before(way, knot, last).map((other) => ({
              ask: this.ask(other.way, other.knot, other.last, depth - 1),
              ...placeFrom(knot, other.knot),
            })),
    };
  }

  /** The ways that a lead finds in a gap when it goes through it. */
  private before(way: LinkWay, knot: KnotReading, last: KnotReading | null): readonly Way[] {
    if (last === null) return [];
    const ways: Way[] = [];
    const gap = farGapOf(last);
    let at: KnotReading = last;
    // As long as knots have come out of this gap and gone back into it.
    for (let steps = 0; steps < DEPTH; steps++) {
      const previous = this.previous(at);
      const inGap = gapOf(at) === gap;
      if (inGap && at.change !== null) ways.push({ way: 'up', knot: at, last: previous });
      if (previous !== null) {
        if (at.change === null) {
          if (inGap) ways.push({ way: 'on', knot: at, last: previous });
        } else if (at.change.oldLead !== null) {
          const leaving = wayOf(at);
          const goes = leaving === 'through' && farGapOf(at) === gap;
          if (inGap || goes) ways.push({ way: leaving, knot: at, last: previous });
        }
      }
      if (!inGap || previous === null || farGapOf(previous) !== gap) break;
      at = previous;
    }
    if (way === 'up' && knot.change?.oldLead != null) ways.push({ way: wayOf(knot), knot, last });
    return ways;
  }

  /** The knot tied before one, if it is among the rows that a chunk reads. */
  private previous(knot: KnotReading): KnotReading | null {
    const row = this.rows[knot.row - this.rowsFrom];
    return row?.knots[knot.order - 1] ?? lastOf(this.rows[knot.row - this.rowsFrom - 1]);
  }

  private around(knot: KnotReading): Around {
    const { columns } = this.work.plan;
    const { kinds, rowsFrom } = this;
    const around: Around = (right, down) => {
      const column = knot.column + right;
      if (column < 0 || column >= columns) return NO_KNOT;
      return kinds[(knot.row + down - rowsFrom) * columns + column] ?? NO_KNOT;
    };
    return knot.direction === 'right' ? around : mirroredAround(around);
  }
}

/** 1 for a knot tied to the right, -1 for one tied to the left. */
export const sideOf = (knot: KnotReading): number => (knot.direction === 'right' ? 1 : -1);

/** How many ways back a link looks for what is before it, and before that. */
const DEPTH = 2;

/** A way that a lead takes, told by the knots that it leads from and to. */
interface Way {
  readonly way: LinkWay;
  readonly knot: KnotReading;
  readonly last: KnotReading | null;
}

const passOf = (way: LinkWay, knot: KnotReading): Pass | null => {
  if (way === 'up') return knot.order === 0 ? 'first' : 'up';
  return way === 'on' || way === 'end' ? null : way;
};

/** Where one knot is as seen from another in its own direction. */
const placeFrom = (knot: KnotReading, other: KnotReading) => ({
  right: (other.column - knot.column) * sideOf(knot),
  down: other.row - knot.row,
  mirrored: sideOf(other) !== sideOf(knot),
});

/** How the old lead leaves; one that a plan leaves in front is drawn as if it were taken down. */
export const wayOf = (knot: KnotReading): LinkWay => knot.change?.oldLeadRoute ?? 'down';

export const lastOf = (row: RowReading | undefined): KnotReading | null =>
  row?.knots[row.knots.length - 1] ?? null;

/** The gap from which a knot's lead comes, and the one to which it goes. */
const gapOf = ({ column, kind }: KnotReading): number =>
  column + (startSide(kind) === 'right' ? 1 : 0);
const farGapOf = ({ column, kind }: KnotReading): number =>
  column + (endsRight(kindCode(kind)) ? 1 : 0);
