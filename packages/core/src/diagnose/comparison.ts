import { Back, Edge, Look, type Seen, Sight, Stick, UNCOUNTED } from '../mistakes/seen.js';
import type { RowView } from '../mistakes/view.js';
import type { Written } from '../mistakes/written.js';
import { directionOf } from '../plan/plan.js';

/** A colour that the plan does not have. */
const FOREIGN = 0x7fff;

/** How a row that would be seen differs from the row that was. */
export interface RowDifference {
  /** Things that differ. */
  count: number;
  /** The first of them in the order of knotting; the row's length when only the row as a whole
   * differs. */
  first: number;
}

/** Compares rows with what was seen of them; what was not looked at never differs. */
export class Comparison {
  private readonly cells: Int16Array;
  private readonly difference: RowDifference = { count: 0, first: 0 };
  private readonly off: ReadonlyMap<number, 'left' | 'right' | null>;

  constructor(
    private readonly written: Written,
    readonly seen: Seen,
  ) {
    const place = seen.colours.map((hex) => {
      const at = written.colours.indexOf(hex.toLowerCase());
      return at < 0 ? FOREIGN : at;
    });
    this.cells = seen.cells.map((cell) => (cell < 0 ? cell : (place[cell] ?? FOREIGN)));
    this.off = new Map(seen.off.map(({ row, towards }) => [row, towards]));
  }

  /** The answer is overwritten by the next call. */
  row(row: number, view: RowView): RowDifference {
    const { seen, cells, difference } = this;
    const { columns } = seen;
    const right = directionOf(this.written.plan.start, row) === 'right';
    let count = 0;
    let first = columns;
    for (let order = columns - 1; order >= 0; order--) {
      const column = right ? order : columns - 1 - order;
      const cell = row * columns + column;
      const before = count;
      const colour = cells[cell];
      if (colour !== Sight.unknown && colour !== view.cells[column]) count++;
      const look = seen.looks[cell];
      if (look !== Look.unknown && look !== view.looks[column]) count++;
      const back = seen.backs[cell];
      if (back !== Back.unknown && back !== view.backs[column]) count++;
      if (count > before) first = order;
    }
    const knots = seen.knots[row];
    if (knots !== UNCOUNTED && knots !== view.knots) count++;
    for (const side of [0, 1] as const) {
      const edge = seen.edges[2 * row + side];
      if (edge !== Edge.unknown && edge !== view.edges[side]) count++;
      const stick = seen.sticks[2 * row + side];
      if (stick !== Stick.unknown && stick !== view.sticks[side]) count++;
    }
    const towards = this.off.get(row);
    if (towards !== undefined && !this.isOff(row, view, towards)) count++;
    difference.count = count;
    difference.first = first;
    return difference;
  }

  /** Two numbers that are the same for rows that look the same, as far as was looked. */
  hash(row: number, view: RowView, into: Int32Array): void {
    const { seen, cells } = this;
    const { columns } = seen;
    let one = 17;
    let two = 91;
    const mix = (value: number): void => {
      one = Math.imul(one ^ value, 0x01000193);
      two = Math.imul(two + value + 0x9e37, 0x85ebca6b) ^ (two >>> 13);
    };
    for (let column = 0; column < columns; column++) {
      const cell = row * columns + column;
      if (cells[cell] !== Sight.unknown) mix(view.cells[column] as number);
      if (seen.looks[cell] !== Look.unknown) mix(view.looks[column] as number);
      if (seen.backs[cell] !== Back.unknown) mix(view.backs[column] as number);
    }
    if (seen.knots[row] !== UNCOUNTED) mix(view.knots);
    for (const side of [0, 1] as const) {
      if (seen.edges[2 * row + side] !== Edge.unknown) mix(view.edges[side]);
      if (seen.sticks[2 * row + side] !== Stick.unknown) mix(view.sticks[side]);
    }
    const towards = this.off.get(row);
    if (towards !== undefined) mix(this.isOff(row, view, towards) ? 1 : 0);
    into[0] = Math.imul(one, 2 * row + 1);
    into[1] = Math.imul(two, 2 * row + 1);
  }

  /** Whether the colours of a row stand one column from where they are drawn. */
  private isOff(row: number, view: RowView, towards: 'left' | 'right' | null): boolean {
    if (towards === null) return this.isOff(row, view, 'left') || this.isOff(row, view, 'right');
    const { written } = this;
    const { columns } = written;
    if (row >= written.rows) return false;
    const by = towards === 'right' ? -1 : 1;
    const drawn = (column: number): number =>
      written.colourOf[written.lead[row * columns + column] as number] as number;
    let differs = false;
    for (let column = 0; column < columns; column++) {
      const colour = view.cells[column] as number;
      if (colour === drawn(column)) continue;
      const from = column + by;
      if (colour === Sight.bare) continue;
      if (from < 0 || from >= columns || colour !== drawn(from)) return false;
      differs = true;
    }
    return differs;
  }
}
