import { Fault } from '../model/fault.js';
import { halvesOf, KNOT_KINDS, startSide } from '../model/knot.js';
import { Machine, Whereabouts } from '../model/machine.js';
import { Op, type StepListBuilder } from '../model/steplist.js';
import { changePlace } from '../plan/changes.js';
import { isOfTurn, type Mistake } from './mistake.js';
import { Catch, Deed, Script } from './script.js';
import { RowWatch, type TiedRow } from './watch.js';
import { NO_ROUTE, NOBODY, type Written } from './written.js';

/** Where the strings are between two rows. Base strings always hang in their order. */
export interface Between {
  readonly inHand: number;
  /** Slot of the lead in hand; -1 before the first knot. */
  readonly slot: number;
  /** Whereabouts of every string. */
  readonly whereabouts: Uint8Array;
}

const HALF = { forward: Op.halfForward, backward: Op.halfBackward } as const;

/**
 * A maker at work: ties row after row as the instructions say, slips and all, by steps of the
 * state machine. A lead that a slip has left on the wrong side of a string is passed behind that
 * string to where the next knot needs it, which is how a maker can go on without undoing.
 */
export class Maker {
  private machine: Machine;
  private readonly script: Script;
  private inHand = NOBODY;
  private turnDue = false;
  private watch: RowWatch;

  constructor(
    private readonly written: Written,
    private readonly record: StepListBuilder | null = null,
  ) {
    this.machine = new Machine(written.plan.strings, written.plan.hung);
    this.script = new Script(written.columns);
    this.watch = new RowWatch(written.columns, written.colourOf, NOBODY);
  }

  between(): Between {
    return {
      inHand: this.inHand,
      slot: this.inHand === NOBODY ? -1 : (this.machine.slotOf[this.inHand] as number),
      whereabouts: this.machine.whereabouts.slice(),
    };
  }

  /** Puts every string where it was between two rows. */
  goTo(between: Between): void {
    const { machine, written } = this;
    machine.whereabouts.set(between.whereabouts);
    machine.slotOf.fill(-1);
    machine.frontLength = 0;
    const put = (string: number): void => {
      machine.slotOf[string] = machine.frontLength;
      machine.front[machine.frontLength++] = string;
    };
    for (let column = 0; column < written.columns; column++) {
      if (machine.frontLength === between.slot) put(between.inHand);
      put(written.baseOf[column] as number);
    }
    if (machine.frontLength === between.slot) put(between.inHand);
    machine.halfTying = -1;
    machine.halfHeld = -1;
    machine.halfLaid = -1;
    machine.locked = -1;
    machine.lead = between.inHand;
    this.inHand = between.inHand;
    this.watch = new RowWatch(written.columns, written.colourOf, between.inHand);
  }

  /**
   * Ties one row of the piece.
   *
   * @param source the row of the instructions that the maker follows
   * @param slips mistakes of the piece, of any row
   */
  tie(row: number, source: number, slips: readonly Mistake[]): TiedRow {
    const { script } = this;
    const mine = slips.filter((slip) => touches(slip, row));
    script.write(this.written, row, source, mine);
    this.turnDue = row > 0;
    for (let i = 0; i < script.length; i++) {
      const deed = script.deed[i] as number;
      if (deed === Deed.knot) this.knot(i);
      else if (deed === Deed.half) {
        this.watch.half(script.column[i] as number, this.usable(script.lead[i] as number));
      }
    }
    this.turn();
    return this.watch.finish(this.machine);
  }

  private knot(i: number): void {
    const { script, written } = this;
    const lead = this.usable(script.lead[i] as number);
    const held = written.baseOf[script.column[i] as number] as number;
    const kind = KNOT_KINDS[script.kind[i] as number] as (typeof KNOT_KINDS)[number];
    const side = startSide(kind);
    const [first, second] = halvesOf(kind);
    const old = this.inHand;
    let through = false;
    if (lead === old) {
      this.turn();
      this.bring(lead, held, side);
    } else {
      const leaves = this.leaving(i, old);
      through = leaves === Op.parkThrough;
      if (leaves === Op.parkDown) this.step(Op.parkDown, old);
      this.turn();
      if (through) this.bring(old, held, side);
      this.enter(lead, held, side);
      if (leaves === Op.parkBehind) this.step(Op.parkBehind, old);
    }
    this.step(HALF[first], lead, held);
    if (through) this.step(Op.layThrough, old);
    this.step(HALF[second], lead, held);
    if (through) this.step(Op.parkThrough, old);
    this.inHand = lead;
    const replaced = written.replaces[lead] as number;
    if (replaced !== NOBODY && this.machine.whereabouts[replaced] === Whereabouts.parked) {
      this.step(Op.end, replaced);
    }
  }

  /** How the old lead leaves at a hand-over; NO_ROUTE when there is none. */
  private leaving(i: number, old: number): number {
    if (old === NOBODY) return NO_ROUTE;
    const { script, written } = this;
    const place = changePlace(script.order[i] as number, written.columns);
    const caught = script.caught[i] as number;
    if (caught === Catch.caught) return Op.parkThrough;
    if (caught === Catch.loose) return Op.parkBehind;
    const route = script.route[i] as number;
    if (route !== NO_ROUTE) return route;
    if (place === 'turn') return Op.parkDown;
    return place === 'lastKnot' ? Op.parkBehind : Op.parkThrough;
  }

  private turn(): void {
    if (!this.turnDue) return;
    this.turnDue = false;
    this.step(Op.turn);
  }

  /** Passes a lead behind the work to the side of a string on which it is needed. */
  private bring(lead: number, held: number, side: 'left' | 'right'): void {
    const { slotOf } = this.machine;
    const needed = (slotOf[held] as number) + (side === 'left' ? -1 : 1);
    if (slotOf[lead] === needed) return;
    this.step(Op.parkBehind, lead);
    this.enter(lead, held, side);
  }

  private enter(lead: number, held: number, side: 'left' | 'right'): void {
    const { slotOf, whereabouts } = this.machine;
    const slot = (slotOf[held] as number) + (side === 'left' ? 0 : 1);
    this.step(whereabouts[lead] === Whereabouts.waiting ? Op.add : Op.takeUp, lead, slot);
  }

  /** The lead itself, or the one that goes on for it when it has run out. */
  private usable(lead: number): number {
    let usable = lead;
    while (usable !== NOBODY && this.machine.whereabouts[usable] === Whereabouts.ended) {
      usable = this.written.successor[usable] as number;
    }
    return usable === NOBODY ? this.inHand : usable;
  }

  private step(op: Op, a = 0, b = 0): void {
    const { machine } = this;
    const fault = machine.run(op, a, b);
    if (fault !== Fault.none)
      throw new Error(`The maker took a step that cannot be done: ${fault}.`);
    this.watch.saw(op, a, b, machine);
    this.record?.code(op, a, b);
  }
}

/** Whether a slip changes what is done in a row of the piece. */
export function touches(slip: Mistake, row: number): boolean {
  return slip.row === row || (slip.row === row - 1 && isOfTurn(slip));
}
