import type { EdgeTechnique, StartSide } from '../chart/chart.js';
import type { KnotKind } from '../model/knot.js';

/**
 * Whether the lead stays on the inner side of the outermost string, which then has two knots at a
 * turn. Stated here again, and not taken from the planner.
 */
const INNER: Readonly<Record<EdgeTechnique, Readonly<Record<'left' | 'right', boolean>>>> = {
  straight: { left: true, right: true },
  wrapped: { left: false, right: false },
};

/**
 * What a row should be by its edge technique: the verifier's own statement of the rules, written
 * apart from the planner's so that a slip in one is seen by the other.
 */
export class Technique {
  private readonly towardsRight: readonly KnotKind[];
  private readonly towardsLeft: readonly KnotKind[];
  readonly columns: number;
  readonly edge: EdgeTechnique;
  readonly start: StartSide;

  constructor(edge: EdgeTechnique, start: StartSide, columns: number) {
    this.edge = edge;
    this.start = start;
    this.columns = columns;
    const right: KnotKind[] = new Array<KnotKind>(columns).fill('forward');
    const left: KnotKind[] = new Array<KnotKind>(columns).fill('backward');
    const inner = INNER[edge];
    for (const row of [right, left]) {
      if (inner.right) row[columns - 1] = 'forward-backward';
      if (inner.left) row[0] = 'backward-forward';
      // One base string has no inner side: the lead stays on the side it hangs on.
      if (columns === 1 && inner.right && inner.left && start === 'right') {
        row[0] = 'forward-backward';
      }
    }
    this.towardsRight = right;
    this.towardsLeft = left;
  }

  /** Whether a row, counted from 0, is knotted from left to right. */
  runsRight(row: number): boolean {
    const even = row % 2 === 0;
    return this.start === 'left' ? even : !even;
  }

  /** Column of the knot that comes `order`-th in a row, both from 0. */
  columnAt(row: number, order: number): number {
    return this.runsRight(row) ? order : this.columns - 1 - order;
  }

  kindAt(row: number, column: number): KnotKind {
    const kinds = this.runsRight(row) ? this.towardsRight : this.towardsLeft;
    return kinds[column] as KnotKind;
  }

  /** Whether a column is an edge on whose inner side the lead turns. */
  turnsInside(column: number): boolean {
    const inner = INNER[this.edge];
    return (column === 0 && inner.left) || (column === this.columns - 1 && inner.right);
  }

  isEdge(column: number): boolean {
    return column === 0 || column === this.columns - 1;
  }
}
