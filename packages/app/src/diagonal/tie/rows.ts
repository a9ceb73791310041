import { type DiagonalPattern, knotsAcross, NO_KNOT, slotOfPlace } from '@halfhitch/core';
import { MarkHash, type TiedRows } from '../../tie/row-marks.js';

/** The rows of a diagonal pattern as its knots are counted: from the left in each. */
export class DiagonalRows implements TiedRows {
  readonly rows: number;
  /** Strings: a count goes on with as many of them only. */
  readonly columns: number;
  readonly total: number;
  /** Knots before each row, and in all. */
  private readonly knotsBefore: Uint32Array;
  private readonly placesAcross: number;

  constructor(
    private readonly pattern: DiagonalPattern,
    /** String that ties each knot, by its slot at the start. */
    private readonly tying: Uint16Array,
    private readonly held: Uint16Array,
  ) {
    const { rows, strings, knots } = pattern;
    this.rows = rows;
    this.columns = strings;
    this.placesAcross = knotsAcross(pattern);
    this.knotsBefore = new Uint32Array(rows + 1);
    for (let row = 0; row < rows; row++) {
      let many = 0;
      for (let at = row * this.placesAcross; at < (row + 1) * this.placesAcross; at++) {
        if (knots[at] !== NO_KNOT) many++;
      }
      this.knotsBefore[row + 1] = this.before(row) + many;
    }
    this.total = this.before(rows);
  }

  before(row: number): number {
    return this.knotsBefore[row] ?? this.total;
  }

  /** How many rows the first so many knots lie in. */
  rowsOf(done: number): number {
    if (done > this.total) return this.rows + 1;
    let [least, most] = [0, this.rows];
    while (least < most) {
      const middle = (least + most) >> 1;
      if (this.before(middle) >= done) most = middle;
      else least = middle + 1;
    }
    return least;
  }

  /** Places of a row that have knots, in the order of knotting. */
  placesOf(row: number): number[] {
    const places: number[] = [];
    for (let place = 0; place < this.placesAcross; place++) {
      if (this.pattern.knots[row * this.placesAcross + place] !== NO_KNOT) places.push(place);
    }
    return places;
  }

  /** By the slot, kind and colours of each knot. */
  mark(row: number, knots: number): number {
    const { pattern, tying, held, placesAcross } = this;
    const hash = new MarkHash();
    for (const place of this.placesOf(row).slice(0, knots)) {
      const at = row * placesAcross + place;
      const slot = slotOfPlace(pattern, row, place);
      hash.take(slot);
      hash.take(slot >> 8);
      hash.take(pattern.knots[at] as number);
      for (const string of [tying[at], held[at]]) {
        hash.takeColour(pattern.colours[pattern.start[string ?? 0] ?? 0]?.hex ?? '#0');
      }
    }
    return hash.value;
  }
}
