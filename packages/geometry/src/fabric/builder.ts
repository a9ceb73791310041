import { type KnotReading, PlanReader, type RowReading, type ThreadString } from '@halfhitch/core';
import { cutLine, stretchLine } from './behind.js';
import { ChunkWriter, type FabricChunk, type StrandHead } from './chunk.js';
import { LeadWays, lastOf, sideOf, wayOf } from './lead-ways.js';
import { LEVEL_TOLERANCE, type Level, thinned } from './levels.js';
import { kindCode } from './shapes.js';
import type { Work } from './work.js';

/** Lengths of the loose ends of base strings, in tying diameters. */
const ABOVE = 8;
const BELOW = 12;

/** The last end of all hangs down so far beyond the bend out of its knot. */
const LAST_TAIL = 7;

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
  private readonly ways: LeadWays;

  constructor(
    private readonly work: Work,
    private readonly scale: { readonly x: number; readonly y: number; readonly z: number },
  ) {
    this.reader = new PlanReader(work.plan);
    this.ways = new LeadWays(work);
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
    this.ways.read(rows, from);
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
      const link = this.ways.link('up', knot, last);
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
      const link = this.ways.link('end', last, last);
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
    const link = this.ways.link('on', knot, last);
    this.writer.follow(link.levels[level]!, this.x(knot.column), this.y(knot.row), sideOf(knot));
  }

  /** The old lead on its way to the back, from its last knot. */
  private leave(knot: KnotReading, last: KnotReading, level: Level): void {
    if (knot.change?.oldLead == null) return;
    const link = this.ways.link(wayOf(knot), knot, last);
    this.writer.follow(link.levels[level]!, this.x(knot.column), this.y(knot.row), sideOf(knot));
    this.writer.end();
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
