import { InputError } from '../errors.js';
import { Fault } from '../model/fault.js';
import { type HalfWay, KNOT_KINDS, kindOf } from '../model/knot.js';
import { Machine } from '../model/machine.js';
import { Op } from '../model/steplist.js';
import { directionOf, type Plan } from '../plan/plan.js';

export const NOBODY = -1;
/** A route that a plan does not give. */
export const NO_ROUTE = 0;

/**
 * What a plan tells its maker, knot by knot, in typed arrays: which lead ties which kind onto
 * which base string, and how the old lead leaves at a hand-over. Strings are named by their
 * places in the plan's table; knots are in row-major order by column.
 */
export class Written {
  readonly plan: Plan;
  readonly rows: number;
  readonly columns: number;
  readonly lead: Uint16Array;
  /** Indexes into KNOT_KINDS. */
  readonly kind: Uint8Array;
  /** Op by which the old lead leaves where a new one takes over; NO_ROUTE elsewhere. */
  readonly route: Uint8Array;
  /** Base string of each column. */
  readonly baseOf: Int32Array;
  /** The lead that goes on for one that has run out, by the one that has. */
  readonly successor: Int32Array;
  /** The lead that is finished when this one has tied its first knot. */
  readonly replaces: Int32Array;
  /** Colours of the leads as `#rrggbb`, each once. */
  readonly colours: readonly string[];
  /** Place of each string's colour in `colours`; -1 for one that no lead has. */
  readonly colourOf: Int16Array;
  /** The first lead of each colour. */
  readonly leadOfColour: Int32Array;

  /** @throws InputError when the plan does not tie one knot for each base string in every row */
  constructor(plan: Plan) {
    const { rows, columns, strings } = plan;
    if (plan.hung.length !== columns) unsound('It has not one base string for each column.', 1);
    this.plan = plan;
    this.rows = rows;
    this.columns = columns;
    this.lead = new Uint16Array(rows * columns);
    this.kind = new Uint8Array(rows * columns);
    this.route = new Uint8Array(rows * columns);
    this.successor = new Int32Array(strings.length).fill(NOBODY);
    this.replaces = new Int32Array(strings.length).fill(NOBODY);
    this.baseOf = new Int32Array(columns);
    const placeOf = new Map(strings.map((string, place) => [string.id, place]));
    plan.hung.forEach((id, column) => {
      this.baseOf[column] = placeOf.get(id) as number;
    });
    const colours: string[] = [];
    const leads: number[] = [];
    this.colourOf = new Int16Array(strings.length).fill(NOBODY);
    strings.forEach((string, place) => {
      if (string.role !== 'lead') return;
      let colour = colours.indexOf(string.colour);
      if (colour < 0) {
        colour = colours.push(string.colour) - 1;
        leads.push(place);
      }
      this.colourOf[place] = colour;
    });
    this.colours = colours;
    this.leadOfColour = Int32Array.from(leads);
    this.read();
  }

  private read(): void {
    const { plan, rows, columns } = this;
    const { op, a, b, length } = plan.steps;
    const machine = new Machine(plan.strings, plan.hung);
    let row = 0;
    let order = 0;
    let first: HalfWay | null = null;
    let inHand = NOBODY;
    let left = NO_ROUTE;
    for (let i = 0; i < length; i++) {
      const code = op[i] as number;
      const one = a[i] as number;
      if (machine.run(code, one, b[i] as number) !== Fault.none) {
        unsound(`Its step ${i + 1} cannot be done.`, row + 1);
      }
      if (code === Op.turn) {
        if (order === columns && row + 1 < rows) {
          row++;
          order = 0;
        } else if (order !== columns) unsound('A turn comes before the row is full.', row + 1);
      } else if (code === Op.parkDown || code === Op.parkBehind) left = code;
      else if (code === Op.parkThrough && order > 0) this.route[this.cell(row, order - 1)] = code;
      else if (code === Op.end && inHand !== NOBODY && one !== inHand) {
        this.successor[one] = inHand;
        if (this.replaces[inHand] === NOBODY) this.replaces[inHand] = one;
      }
      if (code !== Op.halfForward && code !== Op.halfBackward) continue;
      const way: HalfWay = code === Op.halfForward ? 'forward' : 'backward';
      if (first === null) {
        first = way;
        continue;
      }
      const cell = order < columns ? this.cell(row, order) : -1;
      const column = machine.columnOf[b[i] as number] as number;
      if (cell < 0 || column !== cell - row * columns) {
        unsound('Its knots are not one for each base string, in order.', row + 1);
      }
      if (this.colourOf[one] === NOBODY) unsound('A base string ties a knot.', row + 1);
      this.lead[cell] = one;
      this.kind[cell] = KNOT_KINDS.indexOf(kindOf(first, way));
      if (inHand !== one && inHand !== NOBODY) this.route[cell] = left;
      first = null;
      left = NO_ROUTE;
      inHand = one;
      order++;
    }
    if (row + 1 !== rows || order !== columns) unsound('It ends too soon.', row + 1);
  }

  private cell(row: number, order: number): number {
    const right = directionOf(this.plan.start, row) === 'right';
    return row * this.columns + (right ? order : this.columns - 1 - order);
  }
}

function unsound(what: string, row: number): never {
  throw new InputError(
    'plan-unsound',
    `The plan cannot be followed. ${what}`,
    { row },
    'Verify the plan and put it right first.',
  );
}
