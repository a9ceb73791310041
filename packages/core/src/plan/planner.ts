import {
  type Chart,
  type ChartColour,
  cellAt,
  type EdgeTechnique,
  type StartSide,
} from '../chart/chart.js';
import { checkChart } from '../chart/check-chart.js';
import { InputError } from '../errors.js';
import { halvesOf, KNOT_KINDS, type KnotKind, startSide } from '../model/knot.js';
import { Op, StepListBuilder } from '../model/steplist.js';
import { MAX_STRINGS, type ThreadString } from '../model/strings.js';
import { changePlace } from './changes.js';
import { type Direction, directionOf, type Plan } from './plan.js';
import { turnAt } from './turn-way.js';

/** A place at which a lead has run out and a new one of its colour goes on, from 0. */
export interface Join {
  readonly row: number;
  readonly column: number;
}

export interface PlanOptions {
  /** Default: what the chart asks for, else straight. */
  readonly edge?: EdgeTechnique;
  /** Default: what the chart asks for, else left. */
  readonly start?: StartSide;
  /** Colour of the base strings, which the knots cover; `#rrggbb`. Default: undyed. */
  readonly baseColour?: string;
  /** Where to go on with a new lead of the same colour, because the old one is used up. */
  readonly joins?: readonly Join[];
}

const UNDYED = '#e9e2d0';

const HALF_OP = { forward: Op.halfForward, backward: Op.halfBackward } as const;

/**
 * Turns a chart into steps: one knot for each base string in each row, the kinds by the edge
 * technique, the leads handed over with flat colour changes.
 *
 * @throws InputError when the chart is outside the limits or not whole, a join lies outside it, or
 * there would be too many strings
 */
export function planAlpha(chart: Chart, options: PlanOptions = {}): Plan {
  checkChart(chart);
  const edge = options.edge ?? chart.edge ?? 'straight';
  const start = options.start ?? chart.start ?? 'left';
  const { rows, columns } = chart;
  const joins = joinCells(chart, options.joins ?? []);
  const { strings, leadOf } = stringTable(chart, start, joins, options.baseColour ?? UNDYED);
  const steps = new StepListBuilder(strings, 2 * rows * columns + rows + 64);
  const planner = new RowPlanner(chart, edge, start, joins, leadOf, steps);
  for (let row = 0; row < rows; row++) planner.row(row);
  return {
    name: chart.name,
    rows,
    columns,
    edge,
    start,
    strings,
    hung: strings.slice(0, columns).map((string) => string.id),
    steps: steps.finish(),
  };
}

/** The kind of knot a place in a row asks for, by the edge technique. */
export function plannedKind(
  edge: EdgeTechnique,
  start: StartSide,
  direction: Direction,
  column: number,
  columns: number,
): KnotKind {
  const left = column === 0 && turnAt(edge, 'left') === 'inside';
  const right = column === columns - 1 && turnAt(edge, 'right') === 'inside';
  // On a single base string the lead stays on the side it started from, row after row.
  if (left && right) return start === 'left' ? 'backward-forward' : 'forward-backward';
  if (left) return 'backward-forward';
  if (right) return 'forward-backward';
  return direction === 'right' ? 'forward' : 'backward';
}

/** Adds a lead to the table of strings, numbered in the order in which they are needed; its place. */
function addLead(strings: ThreadString[], chart: Chart, colour: number): number {
  const place = strings.length;
  if (place >= MAX_STRINGS) {
    throw new InputError(
      'too-many-strings',
      `The piece would need more than ${MAX_STRINGS} strings.`,
      {},
      'Plan fewer joins.',
    );
  }
  const { hex, name } = chart.colours[colour] as ChartColour;
  strings.push({ id: `L${place - chart.columns + 1}`, role: 'lead', colour: hex, name });
  return place;
}

interface StringTable {
  readonly strings: readonly ThreadString[];
  /** First leads by colour, then those of the joins in order; places in the table. */
  readonly leadOf: Int32Array;
}

function stringTable(
  chart: Chart,
  start: StartSide,
  joins: ReadonlySet<number>,
  baseColour: string,
): StringTable {
  const strings: ThreadString[] = [];
  for (let column = 1; column <= chart.columns; column++) {
    strings.push({ id: `B${column}`, role: 'base', colour: baseColour, name: '' });
  }
  const leadOf = new Int32Array(chart.colours.length + joins.size);
  const seen = new Uint8Array(chart.colours.length);
  let joined = 0;
  for (let row = 0; row < chart.rows; row++) {
    const right = directionOf(start, row) === 'right';
    for (let order = 0; order < chart.columns; order++) {
      const column = right ? order : chart.columns - 1 - order;
      const colour = cellAt(chart, row, column);
      if (seen[colour] === 0) {
        seen[colour] = 1;
        leadOf[colour] = addLead(strings, chart, colour);
      } else if (joins.has(row * chart.columns + column)) {
        leadOf[chart.colours.length + joined++] = addLead(strings, chart, colour);
      }
    }
  }
  return { strings, leadOf };
}

function joinCells(chart: Chart, joins: readonly Join[]): ReadonlySet<number> {
  const cells = new Set<number>();
  for (const { row, column } of joins) {
    const inside =
      Number.isInteger(row) &&
      Number.isInteger(column) &&
      row >= 0 &&
      row < chart.rows &&
      column >= 0 &&
      column < chart.columns;
    if (!inside) {
      throw new InputError(
        'join-outside',
        'A lead is to be joined outside the chart.',
        { row: row + 1, column: column + 1 },
        `Choose a row from 1 to ${chart.rows} and a column from 1 to ${chart.columns}.`,
      );
    }
    cells.add(row * chart.columns + column);
  }
  return cells;
}

/** Writes the steps of one row after another. */
class RowPlanner {
  private readonly added: Uint8Array;
  /** The lead that ties a colour now; joins move it on. */
  private readonly leads: Int32Array;
  private joined = 0;
  private inHand = -1;

  constructor(
    private readonly chart: Chart,
    private readonly edge: EdgeTechnique,
    private readonly start: StartSide,
    private readonly joins: ReadonlySet<number>,
    private readonly leadOf: Int32Array,
    private readonly steps: StepListBuilder,
  ) {
    this.leads = leadOf.slice(0, chart.colours.length);
    this.added = new Uint8Array(chart.columns + leadOf.length);
  }

  row(row: number): void {
    const { columns } = this.chart;
    const direction = directionOf(this.start, row);
    for (let order = 0; order < columns; order++) {
      const column = direction === 'right' ? order : columns - 1 - order;
      this.knot(row, column, order, direction);
    }
  }

  private knot(row: number, column: number, order: number, direction: Direction): void {
    const kind = this.kindAt(row, column, direction);
    const replaced = this.joinAt(row, column);
    const lead = this.leads[cellAt(this.chart, row, column)] as number;
    const [first, second] = halvesOf(kind);
    if (lead === this.inHand) {
      if (order === 0) this.steps.code(Op.turn);
      this.steps.code(HALF_OP[first], lead, column);
      this.steps.code(HALF_OP[second], lead, column);
      return;
    }
    const old = this.inHand;
    const place = changePlace(order, this.chart.columns);
    if (place === 'turn') this.startRowWith(lead, old, kind, row, column);
    else this.enter(lead, column + 1);
    if (place === 'lastKnot') this.steps.code(Op.parkBehind, old);
    this.steps.code(HALF_OP[first], lead, column);
    const caught = place === 'withinRow' || place === 'afterFirstKnot';
    if (caught) this.steps.code(Op.layThrough, old);
    this.steps.code(HALF_OP[second], lead, column);
    if (caught) this.steps.code(Op.parkThrough, old);
    if (replaced >= 0) this.steps.code(Op.end, replaced);
    this.inHand = lead;
  }

  /** The old lead goes down and behind, the work is turned, and the new lead starts the row. */
  private startRowWith(lead: number, old: number, kind: KnotKind, row: number, column: number) {
    if (old >= 0) this.steps.code(Op.parkDown, old);
    if (row > 0) this.steps.code(Op.turn);
    this.enter(lead, startSide(kind) === 'left' ? column : column + 1);
  }

  private enter(lead: number, slot: number): void {
    this.steps.code(this.added[lead] === 0 ? Op.add : Op.takeUp, lead, slot);
    this.added[lead] = 1;
  }

  private kindAt(row: number, column: number, direction: Direction): KnotKind {
    const { knots, columns } = this.chart;
    if (knots !== undefined) {
      return KNOT_KINDS[knots[row * columns + column] as number] as KnotKind;
    }
    return plannedKind(this.edge, this.start, direction, column, columns);
  }

  /**
   * Moves the cell's colour on to its next lead where there is a join, and says which lead that
   * replaces. Where the colour is first used there is nothing yet to run out, so no join.
   */
  private joinAt(row: number, column: number): number {
    if (!this.joins.has(row * this.chart.columns + column)) return -1;
    const colour = cellAt(this.chart, row, column);
    const lead = this.leads[colour] as number;
    if (this.added[lead] === 0) return -1;
    this.leads[colour] = this.leadOf[this.chart.colours.length + this.joined++] as number;
    return lead;
  }
}
