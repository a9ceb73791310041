import {
  checkPlanSteps,
  type DiagonalPattern,
  type KnotReading,
  mirrorKnot,
  type Plan,
  PlanReader,
  type RowReading,
} from '@halfhitch/core';
import type { Words } from '../messages/words.js';
import { latticeHeading } from '../row/pattern-row.js';
import { leadName } from '../row/row-words.js';
import { LatticeOrder } from './lattice-order.js';

/** The knots of a piece in the order in which they are tied, and what is said of them. */
export interface Knotting {
  readonly length: number;
  readonly rows: number;
  /** The row in work at a time, in knots, and how far it is. */
  rowAt(position: number): number;
  /** Row and place in the order of knotting, from 0, of a knot; whether its row ends with it. */
  placeOf(knot: number): {
    readonly row: number;
    readonly order: number;
    readonly endsRow: boolean;
  };
  /** Row of a knot, and its column or its place in the lattice. */
  cellOf(knot: number): readonly [row: number, across: number];
  /** Knots tied before one of a row. */
  before(row: number, order: number): number;
  /** Place of the string that ties a knot, among the strings of the work. */
  tying(knot: number): number;
  /** Place of a string by its id; -1 where there is none. */
  stringOf(id: string): number;
  sayKnot(knot: number, mirror: boolean, words: Words): string;
  sayBegin(words: Words): string;
  sayDone(words: Words): string;
  sayPicture(words: Words): string;
}

/** Of a plan for an alpha pattern: every row has as many knots. */
export class PlanKnotting implements Knotting {
  readonly length: number;
  readonly rows: number;
  private readonly reader: PlanReader;
  private rowRead: RowReading | null = null;

  /** @throws InputError when the plan's steps do not tie a whole piece */
  constructor(private readonly plan: Plan) {
    checkPlanSteps(plan);
    this.rows = plan.rows;
    this.length = plan.rows * plan.columns;
    this.reader = new PlanReader(plan);
  }

  rowAt(position: number): number {
    return position / this.plan.columns;
  }

  placeOf(knot: number) {
    const { columns } = this.plan;
    const row = Math.floor(knot / columns);
    const order = knot - row * columns;
    return { row, order, endsRow: order === columns - 1 };
  }

  cellOf(number: number): readonly [number, number] {
    const knot = this.knot(number);
    return [knot?.row ?? 0, knot?.column ?? 0];
  }

  before(row: number, order: number): number {
    return row * this.plan.columns + order;
  }

  /** Every lead's way is marked: they take turns. */
  tying(): number {
    return -1;
  }

  stringOf(id: string): number {
    return this.plan.strings.findIndex((string) => string.id === id);
  }

  knot(number: number): KnotReading | undefined {
    const { row, order } = this.placeOf(number);
    if (row >= this.rows) return undefined;
    if (this.rowRead?.row !== row) this.rowRead = this.reader.row(row);
    return this.rowRead.knots[order];
  }

  sayKnot(number: number, mirror: boolean, words: Words): string {
    const knot = this.knot(number);
    if (knot === undefined) return this.sayPicture(words);
    return words('piece.heading', {
      row: knot.row + 1,
      knot: knot.order + 1,
      knots: this.plan.columns,
      kind: words(`kind.${mirror ? mirrorKnot(knot.kind) : knot.kind}`),
      held: words('name.base', { number: knot.column + 1 }),
      lead: leadName(knot.tying, words),
    });
  }

  sayBegin(words: Words): string {
    return words('piece.begin');
  }

  sayDone(words: Words): string {
    return words('piece.done', this.size);
  }

  sayPicture(words: Words): string {
    return words('piece.picture', this.size);
  }

  private get size() {
    return { rows: this.rows, columns: this.plan.columns };
  }
}

/** Of a diagonal pattern. */
export class PatternKnotting implements Knotting {
  readonly length: number;
  readonly rows: number;
  readonly order: LatticeOrder;

  /** @throws InputError when the pattern is outside the limits, or not whole */
  constructor(private readonly pattern: DiagonalPattern) {
    this.order = new LatticeOrder(pattern);
    this.rows = pattern.rows;
    this.length = this.order.length;
  }

  rowAt(position: number): number {
    return this.order.rowAt(position);
  }

  placeOf(number: number) {
    const { row = 0, order = 0 } = this.order.knot(number) ?? {};
    return { row, order, endsRow: order === this.order.knotsOf(row) - 1 };
  }

  cellOf(number: number): readonly [number, number] {
    const knot = this.order.knot(number);
    return [knot?.row ?? 0, knot?.place ?? 0];
  }

  before(row: number, order: number): number {
    return this.order.before(row, 0) + order;
  }

  tying(number: number): number {
    const knot = this.order.knot(number);
    return knot === undefined ? -1 : this.order.strings.indexOf(knot.tying);
  }

  stringOf(id: string): number {
    return this.order.strings.findIndex((string) => string.id === id);
  }

  sayKnot(number: number, mirror: boolean, words: Words): string {
    return this.order.knot(number) === undefined
      ? this.sayPicture(words)
      : latticeHeading(this.order, number, mirror, words);
  }

  sayBegin(words: Words): string {
    return words('lattice.begin', this.size);
  }

  sayDone(words: Words): string {
    return words('lattice.done', this.size);
  }

  sayPicture(words: Words): string {
    return words('lattice.picture', this.size);
  }

  private get size() {
    return { rows: this.rows, strings: this.pattern.strings };
  }
}
