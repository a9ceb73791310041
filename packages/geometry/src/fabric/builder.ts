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
  type Link,
  type Links,
  type LinkWay,
  mirroredAround,
  type Past,
} from './links.js';
import type { Routes } from './routes.js';
import type { Seating } from './seating.js';
import { kindCode, NO_KNOT } from './shapes.js';
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
    this.writer = new ChunkWriter(scale.x, scale.y, scale.z);
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
      const beside = last === null ? undefined : wayOf(knot);
      const link = this.link('up', knot, last, beside);
      writer.follow(link.levels[level]!, this.x(knot.column), this.y(knot.row), sideOf(knot));
    } else if (begins || last === null || !writer.isOpen) {
      writer.begin({ ...this.head(knot.tying, 'lead'), fromAbove: last !== null });
    } else {
      this.goTo(knot, last, level);
    }
    const code = kindCode(knot.kind);
    const lifted = knot.change?.oldLead != null && wayOf(knot) === 'through';
    const curve = (lifted ? this.liftedCurves : this.knotCurves)[level]![code]!;
    writer.knot(knot.row, knot.column, curve, this.x(knot.column), this.y(knot.row));
  }

  /** What the lead in hand does after the last knot of a chunk. */
  private goOn(last: KnotReading, next: RowReading | undefined, level: Level): void {
    const { writer } = this;
    const first = next?.knots[0];
    if (first === undefined) {
      writer.begin(this.head(last.tying, 'tail'));
      const link = this.link('end', last, last, undefined);
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
    const link = this.link('on', knot, last, undefined);
    this.writer.follow(link.levels[level]!, this.x(knot.column), this.y(knot.row), sideOf(knot));
  }

  /** The old lead on its way to the back, from its last knot. */
  private leave(knot: KnotReading, last: KnotReading, level: Level): void {
    if (knot.change?.oldLead == null) return;
    const link = this.link(wayOf(knot), knot, last, undefined);
    this.writer.follow(link.levels[level]!, this.x(knot.column), this.y(knot.row), sideOf(knot));
    this.writer.end();
  }

  private link(
    way: LinkWay,
    knot: KnotReading,
    last: KnotReading | null,
    beside: LinkWay | undefined,
  ): Link {
    const right = last === null ? 0 : (last.column - knot.column) * sideOf(knot);
    const down = last === null ? 0 : last.row - knot.row;
    const alone = way === 'up' && beside === undefined;
    const turns = way === 'end' || down !== 0;
    const past = turns
      ? this.throughPast(knot, last)
      : way === 'up'
        ? this.upPast(knot, last)
        : null;
    return this.work.links.link(
      {
        way,
        from: alone ? { right: 0, down: 0 } : { right, down },
        ...(beside ? { beside } : {}),
        ...(past ? { past: { ...past, around: this.around(past.knot) } } : {}),
      },
      this.around(knot),
    );
  }

  /** The lead that was laid through the last knot but one of the row before. */
  private throughPast(knot: KnotReading, last: KnotReading | null): Passing | null {
    const row = last === null ? undefined : this.rows[last.row - this.rowsFrom];
    const laid = row?.knots[row.knots.length - 2];
    const source = row?.knots[row.knots.length - 3];
    if (laid?.change?.oldLeadRoute !== 'through' || source === undefined) return null;
    const right = (source.column - laid.column) * sideOf(laid);
    return { way: 'through', from: { right, down: 0 }, knot: laid, ...placeFrom(knot, laid) };
  }

  /** The lead that came up for the knot before, where both knots have theirs from the same gap. */
  private upPast(knot: KnotReading, last: KnotReading | null): Passing | null {
    if (last?.change == null || last.row !== knot.row || gapOf(last) !== gapOf(knot)) return null;
    const there = { knot: last, ...placeFrom(knot, last) };
    const row = this.rows[last.row - this.rowsFrom]!;
    const before = row.knots[last.order - 1] ?? lastOf(this.rows[last.row - this.rowsFrom - 1]);
    if (last.change.oldLead === null || before === null) {
      return { way: 'up', from: { right: 0, down: 0 }, ...there };
    }
    const { right, down } = placeFrom(last, before);
    return { way: 'up', beside: wayOf(last), from: { right, down }, ...there };
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
      for (let row = firstRow; row <= endRow; row++) this.writer.add(x, this.border(row), 0);
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
        for (let i = 0; i < points.length; i += 3) {
          this.writer.add(points[i]!, points[i + 1]!, points[i + 2]!);
        }
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

type Passing = Omit<Past, 'around'> & { readonly knot: KnotReading };

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

/** The gap from which a knot's lead comes. */
const gapOf = ({ column, kind }: KnotReading): number =>
  column + (startSide(kind) === 'right' ? 1 : 0);
