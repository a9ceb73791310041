import type { StrandHead } from '../fabric/chunk.js';
import { LEVEL_TOLERANCE, type Level, thinned } from '../fabric/levels.js';
import type { DiagonalChunk, DiagonalStrand } from './chunk.js';
import { type LatticeWork, NO_KNOT } from './knots.js';
import { type LatticeKnot, latticeKnots, type Strand } from './shapes.js';
import { type Spacing, spacing } from './spacing.js';
import { HANGING, wayBetween, wayIn, wayOut } from './ways.js';

/** No knot yet. */
const NONE = -1;

/** A knot of a string: its place in the arrays of the lattice, and on which side the string leaves. */
interface Left {
  readonly cell: number;
  readonly side: -1 | 1;
}

/** Builds chunks of diagonal work, one at a time. */
export class LatticeBuilder {
  private readonly spacing: Spacing = spacing();
  /** Curves of the knots by level, kind, and whether tying (0) or held (1). */
  private readonly curves: readonly (readonly (readonly Float64Array[])[])[];
  /** Last knot of each string before each chunk: `(chunks + 1) x strings`, NONE for none. */
  private readonly lastBefore: Int32Array;
  private readonly writer: StrandWriter;

  /** @param scale mm of a diameter, across, along and in depth */
  constructor(
    private readonly work: LatticeWork,
    private readonly rowsPerChunk: number,
    private readonly scale: { readonly x: number; readonly y: number; readonly z: number },
  ) {
    this.curves = LEVEL_TOLERANCE.map((tolerance) =>
      latticeKnots().map(({ tying, held }) =>
        [tying, held].map(({ points, from, to }) => thinned(points, tolerance, from, to)),
      ),
    );
    this.lastBefore = lastKnots(work, rowsPerChunk);
    this.writer = new StrandWriter(scale);
  }

  build(index: number, level: Level): DiagonalChunk {
    const { work, rowsPerChunk, writer } = this;
    const firstRow = index * rowsPerChunk;
    const endRow = Math.min(firstRow + rowsPerChunk, work.rows);
    const cells = this.cellsOf(firstRow, endRow);
    for (let string = 0; string < work.strings.length; string++) {
      const before = this.lastBefore[index * work.strings.length + string]!;
      const own = cells[string]!;
      if (own.length === 0) {
        if (index === 0 && this.lastOf(string) === NONE) this.never(string);
        continue;
      }
      this.string(string, before, own, level);
    }
    return writer.finish(firstRow, endRow - firstRow);
  }

  /** Knots of each string in some rows, in order. */
  private cellsOf(firstRow: number, endRow: number): number[][] {
    const { strings, across, kinds, tying, held } = this.work;
    const out: number[][] = strings.map(() => []);
    for (let cell = firstRow * across; cell < endRow * across; cell++) {
      if (kinds[cell] === NO_KNOT) continue;
      out[tying[cell]!]!.push(cell);
      out[held[cell]!]!.push(cell);
    }
    return out;
  }

  private string(string: number, before: number, cells: readonly number[], level: Level): void {
    const { writer } = this;
    let last: Left | null =
      before === NONE ? null : { cell: before, side: this.leaves(string, before) };
    if (last === null) this.hangIn(string, cells[0]!, level);
    writer.begin(this.head(string, 'lead'), before !== NONE);
    for (const cell of cells) {
      const ties = this.work.tying[cell] === string;
      if (last !== null) this.way(last, cell, level);
      const kind = this.work.kinds[cell]!;
      const curve = this.curves[level]![kind]![ties ? 0 : 1]!;
      writer.knot(this.rowOf(cell), this.placeOf(cell), ties, curve, this.x(cell), this.y(cell));
      last = { cell, side: this.leaves(string, cell) };
    }
    const goesOn = last!.cell !== this.lastOf(string);
    writer.end(goesOn);
    if (!goesOn) this.hangOut(string, last!, level);
  }

  private way(last: Left, cell: number, level: Level): void {
    const { kinds } = this.work;
    const right = Math.round((this.x(cell) - this.x(last.cell)) / this.spacing.slot);
    const down = this.rowOf(cell) - this.rowOf(last.cell);
    const way = wayBetween(kinds[last.cell]!, last.side, kinds[cell]!, right, down);
    this.writer.follow(way.levels[level]!, this.x(last.cell), this.y(last.cell));
  }

  /** The end that a string is hung by, down to its first knot. */
  private hangIn(string: number, cell: number, level: Level): void {
    const { writer } = this;
    const knot = this.knotOf(cell);
    const side = this.strandIn(string, cell, knot).comes;
    const curve = wayIn(this.work.kinds[cell]!, side).levels[level]!;
    const [x, y] = [this.x(cell), this.y(cell)];
    writer.begin(this.head(string, 'tail'), false);
    if (this.rowOf(cell) > 0) writer.add(curve[0]! + x, -HANGING.above, 0);
    writer.follow(curve, x, y);
    writer.end();
  }

  /** What hangs down from its last knot, past the last row. */
  private hangOut(string: number, last: Left, level: Level): void {
    const { writer, work } = this;
    const curve = wayOut(work.kinds[last.cell]!, last.side).levels[level]!;
    const [x, y] = [this.x(last.cell), this.y(last.cell)];
    writer.begin(this.head(string, 'tail'), false);
    writer.follow(curve, x, y);
    const bottom = this.bottom;
    const n = curve.length;
    if (bottom > y + curve[n - 2]! + 1e-6) writer.add(curve[n - 3]! + x, bottom, 0);
    writer.end();
  }

  /** A string that is in no knot. */
  private never(string: number): void {
    const x = string * this.spacing.slot;
    this.writer.begin(this.head(string, 'tail'), false);
    this.writer.add(x, -HANGING.above, 0);
    this.writer.add(x, this.bottom, 0);
    this.writer.end();
  }

  private head(string: number, part: StrandHead['part']): StrandHead {
    const { id, role, colour } = this.work.strings[string]!;
    return { string: id, role, colour, part, radius: this.scale.z / 2 };
  }

  private knotOf(cell: number): LatticeKnot {
    return latticeKnots()[this.work.kinds[cell]!]!;
  }

  private strandIn(string: number, cell: number, knot: LatticeKnot): Strand {
    return this.work.tying[cell] === string ? knot.tying : knot.held;
  }

  private leaves(string: number, cell: number): -1 | 1 {
    return this.strandIn(string, cell, this.knotOf(cell)).goes;
  }

  private lastOf(string: number): number {
    const { strings } = this.work;
    return this.lastBefore[this.lastBefore.length - strings.length + string]!;
  }

  private rowOf(cell: number): number {
    return Math.floor(cell / this.work.across);
  }

  private placeOf(cell: number): number {
    return cell % this.work.across;
  }

  /** Middle of a knot's place. */
  private x(cell: number): number {
    const first = (this.work.first + this.rowOf(cell)) % 2;
    return (first + 2 * this.placeOf(cell) + 0.5) * this.spacing.slot;
  }

  private y(cell: number): number {
    return this.rowOf(cell) * this.spacing.row;
  }

  private get bottom(): number {
    return (this.work.rows - 1) * this.spacing.row + HANGING.below;
  }
}

function lastKnots(work: LatticeWork, rowsPerChunk: number): Int32Array {
  const { strings, rows, across, kinds, tying, held } = work;
  const chunks = Math.ceil(rows / rowsPerChunk);
  const out = new Int32Array((chunks + 1) * strings.length).fill(NONE);
  const last = new Int32Array(strings.length).fill(NONE);
  for (let chunk = 0; chunk < chunks; chunk++) {
    out.set(last, chunk * strings.length);
    const end = Math.min((chunk + 1) * rowsPerChunk, rows) * across;
    for (let cell = chunk * rowsPerChunk * across; cell < end; cell++) {
      if (kinds[cell] === NO_KNOT) continue;
      last[tying[cell]!] = cell;
      last[held[cell]!] = cell;
    }
  }
  out.set(last, chunks * strings.length);
  return out;
}

/** Collects the points and strands of a chunk; what it hands out is a copy. */
class StrandWriter {
  private points = new Float32Array(3 * 4096);
  private length = 0;
  private strands: DiagonalStrand[] = [];
  private open: { head: StrandHead; first: number; fromAbove: boolean; passes: number[] } | null =
    null;

  constructor(
    private readonly scale: { readonly x: number; readonly y: number; readonly z: number },
  ) {}

  begin(head: StrandHead, fromAbove: boolean): void {
    this.open = { head, first: this.length / 3, fromAbove, passes: [] };
  }

  /** A point, in diameters. */
  add(x: number, y: number, z: number): void {
    if (this.length + 3 > this.points.length) {
      const more = new Float32Array(this.points.length * 2);
      more.set(this.points);
      this.points = more;
    }
    this.points[this.length++] = x * this.scale.x;
    this.points[this.length++] = y * this.scale.y;
    this.points[this.length++] = z * this.scale.z;
  }

  /** A curve at its place; its first point is left out where the strand is already there. */
  follow(curve: Float64Array, x: number, y: number): void {
    const begun = this.length / 3 > this.open!.first;
    for (let i = begun ? 3 : 0; i < curve.length; i += 3) {
      this.add(curve[i]! + x, curve[i + 1]! + y, curve[i + 2]!);
    }
  }

  knot(row: number, place: number, ties: boolean, curve: Float64Array, x: number, y: number): void {
    const open = this.open!;
    const first = Math.max(this.length / 3 - 1, open.first);
    this.follow(curve, x, y);
    open.passes.push(row, place, first, this.length / 3 - first, ties ? 1 : 0);
  }

  end(toBelow = false): void {
    const { head, first, fromAbove, passes } = this.open!;
    this.open = null;
    this.strands.push({
      ...head,
      first,
      count: this.length / 3 - first,
      fromAbove,
      toBelow,
      passes: Int32Array.from(passes),
    });
  }

  finish(firstRow: number, rowCount: number): DiagonalChunk {
    const chunk = {
      firstRow,
      rowCount,
      points: this.points.slice(0, this.length),
      strands: this.strands,
    };
    this.length = 0;
    this.strands = [];
    return chunk;
  }
}
