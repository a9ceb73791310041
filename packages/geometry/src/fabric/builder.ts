import {
  type KnotReading,
  type Plan,
  PlanReader,
  type RowReading,
  startSide,
  type ThreadString,
} from '@halfhitch/core';
import { cutLine, stretchLine } from './behind.js';
import { ChunkWriter, type FabricChunk, type StrandHead } from './chunk.js';
import type { Lying } from './layers.js';
import { LEVEL_TOLERANCE, type Level, thinned } from './levels.js';
import {
  type Around,
  codesRound,
  type Link,
  type LinkAsk,
  type Links,
  type LinkWay,
  mirroredAround,
} from './links.js';
import type { Pass, Passes } from './passes.js';
import type { Routes } from './routes.js';
import type { Seating } from './seating.js';
import { endsRight, kindCode, NO_KNOT } from './shapes.js';
import type { Spread } from './spread.js';
import type { BackStretches } from './survey.js';

/** Lengths of the loose ends of base strings, in tying diameters. */
const ABOVE = 8;
const BELOW = 12;

/** The last end of all hangs down so far beyond the bend out of its knot. */
const LAST_TAIL = 7;

/** What a chunk is built from, in tying diameters. */
export interface Work {
  readonly plan: Plan;
  readonly seating: Seating;
  readonly links: Links;
  readonly stretches: BackStretches;
  readonly passes: Passes;
  /** Null where no gap opens. */
  readonly spread: Spread | null;
  readonly routes: Routes;
  readonly lying: Lying;
}

/** The rows of a chunk, the ends not included, and the stretches behind it. */
export interface ChunkRows {
  readonly firstRow: number;
  readonly endRow: number;
  readonly behind: Int32Array;
}

/** Builds chunks of a piece, one at a time; reads no more of the plan than a chunk needs. */
export class ChunkBuilder {
  private readonly reader: PlanReader;
  private readonly writer: ChunkWriter;
  private readonly knotCurves: readonly (readonly Float64Array[])[];
  private readonly liftedCurves: readonly (readonly Float64Array[])[];
  private kinds = new Int8Array(0);
  private rows: readonly RowReading[] = [];
  private rowsFrom = 0;

  constructor(
    private readonly work: Work,
    private readonly scale: { readonly x: number; readonly y: number; readonly z: number },
  ) {
    this.reader = new PlanReader(work.plan);
    this.writer = new ChunkWriter(scale.x, scale.y, scale.z, work.spread, work.seating.rowHeight);
    const curves = (of: 'points' | 'lifted') =>
      LEVEL_TOLERANCE.map((tolerance) =>
        work.seating.shapes.map((s) => thinned(s[of], tolerance, s.from, s.to)),
      );
    this.knotCurves = curves('points');
    this.liftedCurves = curves('lifted');
  }

  build({ firstRow, endRow, behind }: ChunkRows, level: Level): FabricChunk {
    const { plan } = this.work;
    const rows: RowReading[] = [];
    const from = Math.max(firstRow - 2, 0);
    const to = Math.min(endRow + 2, plan.rows);
    for (let row = from; row < to; row++) rows.push(this.reader.row(row));
    this.noteKinds(rows, from);
    this.base(firstRow, endRow);
    let last = firstRow > 0 ? lastOf(rows[firstRow - 1 - from]) : null;
    for (let row = firstRow; row < endRow; row++) {
      for (const knot of rows[row - from]!.knots) {
        const begins = last === null || last.row < firstRow;
        this.knot(knot, last, begins, level);
        last = knot;
      }
    }
    if (last !== null) this.goOn(last, endRow < plan.rows ? rows[endRow - from] : undefined, level);
    this.behind(behind, firstRow, endRow);
    return this.writer.finish(firstRow, endRow - firstRow);
  }

  /** A knot with the way to it. `begins`: the way from the knot before is in the chunk above. */
  private knot(knot: KnotReading, last: KnotReading | null, begins: boolean, level: Level): void {
    const { writer } = this;
    if (knot.change !== null) {
      if (last !== null && !begins) this.leave(knot, last, level);
      writer.begin(this.head(knot.tying, 'lead'));
      const link = this.link('up', knot, last);
      writer.follow(link.levels[level]!, this.x(knot.column), this.y(knot.row), sideOf(knot));
    } else if (begins || last === null || !writer.isOpen) {
      writer.begin({ ...this.head(knot.tying, 'lead'), fromAbove: last !== null });
    } else {
      this.goTo(knot, last, level);
    }
    const code = kindCode(knot.kind);
    const curve = (
      this.work.passes.isLifted(knot.row, knot.column) ? this.liftedCurves : this.knotCurves
    )[level]![code]!;
    writer.knot(knot.row, knot.column, curve, this.x(knot.column), this.y(knot.row));
  }

  /** What the lead in hand does after the last knot of a chunk. */
  private goOn(last: KnotReading, next: RowReading | undefined, level: Level): void {
    const { writer } = this;
    const first = next?.knots[0];
    if (first === undefined) {
      writer.begin(this.head(last.tying, 'tail'));
      const link = this.link('end', last, last);
      const curve = link.levels[level]!;
      const side = sideOf(last);
      const x = this.x(last.column);
      const y = this.y(last.row);
      writer.follow(curve, x, y, side);
      const n = curve.length;
      writer.add(curve[n - 3]! * side + x, curve[n - 2]! + y + LAST_TAIL, curve[n - 1]!);
      writer.end();
    } else if (first.change === null) {
      this.goTo(first, last, level);
      writer.end(true);
    } else {
      this.leave(first, last, level);
    }
  }

  private goTo(knot: KnotReading, last: KnotReading, level: Level): void {
    const link = this.link('on', knot, last);
    this.writer.follow(link.levels[level]!, this.x(knot.column), this.y(knot.row), sideOf(knot));
  }

  /** The old lead on its way to the back, from its last knot. */
  private leave(knot: KnotReading, last: KnotReading, level: Level): void {
    if (knot.change?.oldLead == null) return;
    const link = this.link(wayOf(knot), knot, last);
    this.writer.follow(link.levels[level]!, this.x(knot.column), this.y(knot.row), sideOf(knot));
    this.writer.end();
  }

  private link(way: LinkWay, knot: KnotReading, last: KnotReading | null): Link {
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

  private noteKinds(rows: readonly RowReading[], from: number): void {
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

  private base(firstRow: number, endRow: number): void {
    const { plan, seating } = this.work;
    const hung = new Map(plan.strings.map((string) => [string.id, string]));
    const top = this.border(firstRow);
    const bottom = this.border(endRow);
    plan.hung.forEach((id, column) => {
      const string = hung.get(id)!;
      const x = this.x(column);
      const radius = (this.scale.z * seating.ratio) / 2;
      if (firstRow === 0) {
        this.writer.begin({ ...this.head(string, 'tail'), radius });
        this.writer.add(x, top - ABOVE, 0);
        this.writer.add(x, top, 0);
      }
      this.writer.begin({ ...this.head(string, 'base'), radius, fromAbove: firstRow > 0 });
      this.writer.add(x, top, 0);
      for (let row = firstRow; row < endRow; row++) {
        // Base strings that spread turn at the middle of a row.
        if (this.work.spread !== null) this.writer.add(x, this.y(row), 0);
        this.writer.add(x, this.border(row + 1), 0);
      }
      this.writer.end(endRow < plan.rows);
      if (endRow === plan.rows) {
        this.writer.begin({ ...this.head(string, 'tail'), radius });
        this.writer.add(x, bottom, 0);
        this.writer.add(x, bottom + BELOW, 0);
      }
    });
    this.writer.end();
  }

  private behind(ids: Int32Array, firstRow: number, endRow: number): void {
    const { plan, stretches, routes, lying, seating, links } = this.work;
    const top = firstRow === 0 ? -Infinity : this.border(firstRow);
    const bottom = endRow === plan.rows ? Infinity : this.border(endRow);
    for (const id of ids) {
      const string = plan.strings[stretches.string(id)]!;
      const loose = { start: stretches.from(id) === null, end: stretches.to(id) === null };
      const part = loose.start || loose.end ? 'tail' : 'float';
      const flat = routes.flat(id, lying.choice[id]!);
      const line = stretchLine(flat, lying.layer[id]!, links.backDepth, seating, loose);
      cutLine(line, top, bottom, (points, cutTop, cutBottom) => {
        // A lead's own direction may be up the work, so its last point may be at the top.
        this.writer.begin({ ...this.head(string, part), fromAbove: cutTop });
        this.writer.addStraight(points);
        this.writer.end(cutBottom);
      });
    }
  }

  private head({ id, role, colour }: ThreadString, part: StrandHead['part']): StrandHead {
    return { string: id, role, colour, part, radius: this.scale.z / 2 };
  }

  private x(column: number): number {
    return column * this.work.seating.pitch;
  }

  private y(row: number): number {
    return row * this.work.seating.rowHeight;
  }

  /** Height between a row and the one above it. */
  private border(row: number): number {
    return (row - 0.5) * this.work.seating.rowHeight;
  }
}

const sideOf = (knot: KnotReading): number => (knot.direction === 'right' ? 1 : -1);

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
const wayOf = (knot: KnotReading): LinkWay => knot.change?.oldLeadRoute ?? 'down';

const lastOf = (row: RowReading | undefined): KnotReading | null =>
  row?.knots[row.knots.length - 1] ?? null;

/** The gap from which a knot's lead comes, and the one to which it goes. */
const gapOf = ({ column, kind }: KnotReading): number =>
  column + (startSide(kind) === 'right' ? 1 : 0);
const farGapOf = ({ column, kind }: KnotReading): number =>
  column + (endsRight(kindCode(kind)) ? 1 : 0);
