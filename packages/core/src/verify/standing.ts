import type { Chart } from '../chart/chart.js';
import { Machine } from '../model/machine.js';
import { Op, type StepList } from '../model/steplist.js';
import type { Plan } from '../plan/plan.js';
import { HandOvers } from './handover.js';
import type { FindingLog } from './log.js';
import { Lookahead } from './lookahead.js';
import * as say from './messages.js';
import { takeBehind } from './repair.js';
import type { Technique } from './technique.js';

export const NO_KNOT = 0xffff;
export const NO_KIND = 255;

/** Where a piece stands, as far as the steps of its plan have been followed. */
export class Standing {
  readonly tying: Uint16Array;
  readonly kinds: Uint8Array;
  knots = 0;
  halfHitches = 0;
  /** The row worked on and how many of its knots are accounted for. */
  row = 0;
  order = 0;
  machine: Machine;
  readonly handOvers: HandOvers;
  protected readonly steps: StepList;
  protected readonly look: Lookahead;
  protected readonly columns: number;
  protected readonly rows: number;
  protected readonly isLead: Uint8Array;
  protected readonly baseOf: Int32Array;
  protected inHand = -1;

  constructor(
    plan: Plan,
    protected readonly chart: Chart,
    protected readonly technique: Technique,
    protected readonly log: FindingLog,
    longFloat: number,
  ) {
    this.steps = plan.steps;
    this.columns = plan.columns;
    this.rows = chart.rows;
    this.machine = new Machine(plan.strings, plan.hung);
    this.look = new Lookahead(plan.steps);
    this.tying = new Uint16Array(chart.rows * chart.columns).fill(NO_KNOT);
    this.kinds = new Uint8Array(chart.rows * chart.columns).fill(NO_KIND);
    this.handOvers = new HandOvers(log, plan.columns, longFloat, plan.strings.length);
    this.isLead = Uint8Array.from(plan.strings, (string) => (string.role === 'lead' ? 1 : 0));
    this.baseOf = new Int32Array(plan.columns);
    for (let string = 0; string < plan.strings.length; string++) {
      const column = this.machine.columnOf[string] as number;
      if (column >= 0) this.baseOf[column] = string;
    }
  }

  protected nextRow(): void {
    this.machine.run(Op.turn, 0, 0);
    this.row++;
    this.order = 0;
  }

  protected settle(): void {
    const left = this.handOvers.settle(this.machine);
    if (left >= 0) this.machine = takeBehind(this.machine, left);
  }

  /** Leads in front that neither tie nor have just tied are in the way. */
  protected clearStrays(tying: number): void {
    const { machine } = this;
    for (let slot = machine.frontLength - 1; slot >= 0; slot--) {
      const string = machine.front[slot] as number;
      if (this.isLead[string] !== 1 || string === tying || string === this.inHand) continue;
      this.wrong('lead-left-in-front', this.next(), () => say.stray(this.id(string)));
      this.machine = takeBehind(this.machine, string);
    }
  }

  protected next(): number {
    return this.technique.columnAt(this.row, Math.min(this.order, this.columns - 1));
  }

  protected wrong(
    code: Parameters<FindingLog['add']>[1],
    column: number,
    text: () => string,
  ): void {
    this.log.add('wrong', code, this.row, column, text);
  }

  /** The column of a held string, or the next in the row when it has none. */
  protected cellOf(held: number): number {
    const column = held < this.machine.count ? (this.machine.columnOf[held] as number) : -1;
    return column >= 0 ? column : this.next();
  }

  protected orderOf(column: number): number {
    return this.technique.runsRight(this.row) ? column : this.columns - 1 - column;
  }

  protected isEdge(column: number): boolean {
    return this.technique.isEdge(column);
  }

  protected base(column: number): string {
    return this.id(this.baseOf[column] as number);
  }

  protected id(string: number): string {
    return this.machine.strings[string]?.id ?? 'that is not in the table';
  }
}
