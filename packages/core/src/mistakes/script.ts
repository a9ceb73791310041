import { KNOT_KINDS, type KnotKind } from '../model/knot.js';
import { stringIndex } from '../model/steplist.js';
import { directionOf } from '../plan/plan.js';
import { turnAt } from '../plan/turn-way.js';
import { isOfTurn, type Mistake } from './mistake.js';
import { NO_ROUTE, NOBODY, type Written } from './written.js';

export const Deed = { knot: 0, pass: 1, half: 2 } as const;
export const Catch = { asUsual: 0, caught: 1, loose: 2 } as const;

const KIND = { forward: 0, backward: 1, forwardBackward: 2, backwardForward: 3 } as const;

/** What the maker does in one row, string by string; reused from row to row. */
export class Script {
  length = 0;
  /** Place in the row in the order of knotting; a doubled knot has the same twice. */
  readonly order: Uint16Array;
  readonly column: Uint16Array;
  readonly lead: Uint16Array;
  readonly kind: Uint8Array;
  readonly deed: Uint8Array;
  readonly caught: Uint8Array;
  readonly route: Uint8Array;
  private readonly offset: Int16Array;

  constructor(columns: number) {
    // Every string at most twice.
    this.order = new Uint16Array(2 * columns);
    this.column = new Uint16Array(2 * columns);
    this.lead = new Uint16Array(2 * columns);
    this.kind = new Uint8Array(2 * columns);
    this.deed = new Uint8Array(2 * columns);
    this.caught = new Uint8Array(2 * columns);
    this.route = new Uint8Array(2 * columns);
    this.offset = new Int16Array(columns);
  }

  /**
   * Writes the row of the piece that follows a row of the instructions, with the slips made in
   * it. Colours go by counting and kinds by place: a maker counts knots of a colour, but sees
   * which string is the last one.
   *
   * @param row row of the piece; its parity gives the direction
   * @param source row of the instructions
   * @param slips those of this row and of the turn before it
   */
  write(written: Written, row: number, source: number, slips: readonly Mistake[]): void {
    const { columns } = written;
    const right = directionOf(written.plan.start, row) === 'right';
    const flipped = (row - source) % 2 !== 0;
    const first = source * columns;
    const columnAt = (order: number) => (right ? order : columns - 1 - order);
    const leadAt = (order: number) =>
      written.lead[first + columnAt(Math.max(0, Math.min(columns - 1, order)))] as number;
    this.offset.fill(0);
    let doubled = false;
    if (slips.length > 0) {
      doubled = this.count(slips, row, columns, right);
    }
    this.length = 0;
    for (let order = 0; order < columns; order++) {
      const column = columnAt(order);
      const kind = written.kind[first + column] as number;
      this.add(order, column, leadAt(order + (this.offset[order] as number)), kind, flipped);
      if (!flipped && this.offset[order] === 0) {
        this.route[this.length - 1] = written.route[first + column] as number;
      }
      if (doubled && has(slips, 'doubled-knot', row, column)) {
        const counted = order + 1 + (this.offset[order] as number);
        this.add(order, column, leadAt(counted), kind, flipped);
      }
    }
    for (const slip of slips) this.change(written, row, slip, right, leadAt);
  }

  /** How far the count of colours is off at each string. */
  private count(slips: readonly Mistake[], row: number, columns: number, right: boolean): boolean {
    let doubled = false;
    for (const slip of slips) {
      if (slip.row !== row || !('column' in slip)) continue;
      const order = right ? slip.column : columns - 1 - slip.column;
      let from = order;
      let by = 0;
      if (slip.kind === 'skipped-string') {
        from = order + 1;
        by = -1;
      } else if (slip.kind === 'doubled-knot') {
        doubled = true;
        from = order + 1;
        by = 1;
      } else if (slip.kind === 'short-run') by = 1;
      else if (slip.kind === 'long-run') by = -1;
      if (by === 0) continue;
      for (let i = from; i < columns; i++) this.offset[i] = (this.offset[i] as number) + by;
    }
    return doubled;
  }

  private add(order: number, column: number, lead: number, kind: number, flipped: boolean): void {
    const at = this.length++;
    this.order[at] = order;
    this.column[at] = column;
    this.lead[at] = lead;
    // Knotted the other way round, ordinary knots are the mirror image; edge knots are the same.
    this.kind[at] = flipped && kind < 2 ? 1 - kind : kind;
    this.deed[at] = Deed.knot;
    this.caught[at] = Catch.asUsual;
    this.route[at] = NO_ROUTE;
  }

  private change(
    written: Written,
    row: number,
    slip: Mistake,
    right: boolean,
    leadAt: (order: number) => number,
  ): void {
    const last = this.length - 1;
    if (isOfTurn(slip)) {
      const at = slip.row === row ? last : 0;
      if (slip.kind === 'single-edge-knot') {
        const lacks = slip.lacking === 'end' ? slip.row === row : slip.row !== row;
        if (lacks) this.deed[at] = Deed.pass;
      } else this.kind[at] = otherEdge(written, right, this.column[at] as number);
      return;
    }
    if (slip.row !== row || !('column' in slip)) return;
    const at = this.place(slip.column);
    const order = this.order[at] as number;
    const { columns } = written;
    switch (slip.kind) {
      case 'wrong-kind':
        this.kind[at] = KNOT_KINDS.indexOf(slip.tied);
        return;
      case 'skipped-string':
      case 'missing-knot':
        this.deed[at] = Deed.pass;
        return;
      case 'half-knot':
        this.deed[at] = Deed.half;
        return;
      case 'early-change':
        this.lead[at] = leadAt(order + 1 + (this.offset[order] as number));
        return;
      case 'late-change':
        this.lead[at] = leadAt(order - 1 + (this.offset[order] as number));
        return;
      case 'caught-at-edge':
        this.caught[at] = Catch.caught;
        return;
      case 'not-caught':
        this.caught[at] = Catch.loose;
        return;
      case 'wrong-lead': {
        const lead = stringIndex(written.plan.strings).get(slip.lead) ?? NOBODY;
        const due = this.lead[at];
        for (let i = at; i <= last && this.lead[i] === due; i++) {
          this.lead[i] = lead;
          if (slip.span === 'knot') break;
        }
        return;
      }
    }
    // The others are done by counting.
    if (order >= columns) throw new RangeError('The order lies outside the row.');
  }

  private place(column: number): number {
    let at = 0;
    while (this.column[at] !== column) at++;
    return at;
  }
}

function has(slips: readonly Mistake[], kind: string, row: number, column: number): boolean {
  return slips.some(
    (slip) =>
      slip.kind === kind && slip.row === row && (slip as { column: number }).column === column,
  );
}

/** The knot that the other edge technique has at an edge string. */
function otherEdge(written: Written, right: boolean, column: number): number {
  const side = column === 0 ? 'left' : 'right';
  if (turnAt(written.plan.edge, side) === 'inside') return right ? KIND.forward : KIND.backward;
  return column === 0 ? KIND.backwardForward : KIND.forwardBackward;
}

/** The kind of knot at a place of KNOT_KINDS. */
export function kindAt(place: number): KnotKind {
  return KNOT_KINDS[place] as KnotKind;
}
