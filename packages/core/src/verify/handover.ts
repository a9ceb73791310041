import { type Machine, Whereabouts } from '../model/machine.js';
import { Op } from '../model/steplist.js';
import type { ThreadString } from '../model/strings.js';
import { type ChangePlace, changePlace } from '../plan/changes.js';
import type { FindingLog } from './log.js';
import * as say from './messages.js';

/** Counts colour changes and judges how each old lead leaves and each new one comes back. */
export class HandOvers {
  readonly counts = { withinRow: 0, afterFirstKnot: 0, lastKnot: 0, turn: 0, start: 0 };
  /** The old lead of the last hand-over, until it is known how it left; -1 when none waits. */
  private old = -1;
  private place: ChangePlace = 'withinRow';
  private row = 0;
  private column = 0;
  private reported = false;
  private readonly coloursSeen = new Set<string>();
  private readonly floatRow: Int32Array;
  private readonly floatColumn: Int32Array;

  constructor(
    private readonly log: FindingLog,
    private readonly columns: number,
    private readonly longFloat: number,
    strings: number,
  ) {
    this.floatRow = new Int32Array(strings).fill(-1);
    this.floatColumn = new Int32Array(strings);
  }

  /** The lead about to be taken up has rested where the machine says. */
  takenUp(lead: number, machine: Machine): void {
    this.floatRow[lead] = machine.parkedRow[lead] as number;
    this.floatColumn[lead] = machine.parkedColumn[lead] as number;
  }

  /** A knot was tied by another lead than the one before it. */
  happened(old: number, lead: number, row: number, column: number, order: number, m: Machine) {
    const { id, colour } = m.strings[lead] as ThreadString;
    if (!this.coloursSeen.has(colour)) {
      this.coloursSeen.add(colour);
      this.counts.start++;
    }
    this.checkFloat(lead, row, column, id);
    if (old < 0) return;
    const place = changePlace(order, this.columns);
    if ((m.strings[old] as ThreadString).colour !== colour) this.counts[place]++;
    this.old = old;
    this.place = place;
    this.row = row;
    this.column = column;
    this.reported = false;
  }

  /** The old lead could not leave as the plan says, which has been reported. */
  excuse(): void {
    this.reported = true;
  }

  get waitingFor(): number {
    return this.old;
  }

  /**
   * Judges how the old lead of the last hand-over left. To be called before the next knot, the
   * next lead or the turn.
   * @returns the old lead if it still hangs in front, where it must not stay; else -1
   */
  settle(machine: Machine): number {
    const { old, place, row, column } = this;
    if (old < 0) return -1;
    this.old = -1;
    const { id } = machine.strings[old] as ThreadString;
    const where = machine.whereabouts[old];
    if (where === Whereabouts.front) {
      this.log.add('wrong', 'lead-left-in-front', row, column, () => say.oldLeadStays(id, place));
      return old;
    }
    if (where !== Whereabouts.parked || this.reported) return -1;
    this.judgeRoute(machine.parkedBy[old] as number, id);
    return -1;
  }

  private judgeRoute(route: number, id: string): void {
    const { place, row, column, log } = this;
    const inside = place === 'withinRow' || place === 'afterFirstKnot';
    if (inside && route !== Op.parkThrough) {
      log.add('weak', 'lead-not-caught', row, column, () => say.oldLeadNotLaid(id, place));
    } else if (!inside && route === Op.parkThrough) {
      log.add('weak', 'lead-caught-at-edge', row, column, () => say.oldLeadCaught(id, place));
    } else if (place === 'lastKnot' && route === Op.parkDown) {
      log.add('weak', 'lead-path', row, column, () => say.oldLeadBesideEdge(id));
    } else if (place === 'turn' && route === Op.parkBehind) {
      log.add('weak', 'lead-path', row, column, () => say.oldLeadBehindAtTurn(id));
    }
  }

  private checkFloat(lead: number, row: number, column: number, id: string): void {
    const fromRow = this.floatRow[lead] as number;
    if (fromRow < 0) return;
    this.floatRow[lead] = -1;
    const down = Math.abs(row - fromRow);
    const across = Math.abs(column - (this.floatColumn[lead] as number));
    // A knot is about as high as it is wide, so knots measure both ways well enough here.
    const length = Math.hypot(down, across);
    if (length <= this.longFloat) return;
    this.log.add('weak', 'long-float', row, column, () =>
      say.longFloat(id, down, across, this.longFloat),
    );
  }
}
