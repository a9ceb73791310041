import { type Machine, Whereabouts } from '../model/machine.js';
import { Op } from '../model/steplist.js';
import { type ChangePlace, changePlace } from '../plan/changes.js';
import type { FindingLog } from './log.js';

const PLACE_IN_WORDS: Readonly<Record<ChangePlace, string>> = {
  withinRow: 'within the row',
  afterFirstKnot: 'after the first knot',
  lastKnot: 'at the last knot',
  turn: 'at the turn',
};

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
    const name = (string: number): string => m.strings[string]?.id ?? '?';
    const colour = m.strings[lead]?.colour ?? '';
    if (!this.coloursSeen.has(colour)) {
      this.coloursSeen.add(colour);
      this.counts.start++;
    }
    this.checkFloat(lead, row, column, name(lead));
    if (old < 0) return;
    const place = changePlace(order, this.columns);
    if (m.strings[old]?.colour !== colour) this.counts[place]++;
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
    const id = machine.strings[old]?.id ?? '?';
    const where = machine.whereabouts[old];
    if (where === Whereabouts.front) {
      if (!this.reported) {
        this.log.add(
          'wrong',
          'lead-left-in-front',
          row,
          column,
          () =>
            `The old lead ${id} still hangs in front after the colour change ${PLACE_IN_WORDS[place]}. It would be in the way of every row to come; take it to the back.`,
        );
      }
      return old;
    }
    if (where !== Whereabouts.parked || this.reported) return -1;
    this.judgeRoute(machine.parkedBy[old] as number, id);
    return -1;
  }

  private judgeRoute(route: number, id: string): void {
    const { place, row, column, log } = this;
    const inside = place === 'withinRow' || place === 'afterFirstKnot';
    const where = PLACE_IN_WORDS[place];
    if (inside && route !== Op.parkThrough) {
      log.add(
        'weak',
        'lead-not-caught',
        row,
        column,
        () =>
          `The old lead ${id} is not laid through the knot at the colour change ${where}, so nothing holds it: its last knot can work loose and a loop shows at the back.`,
      );
    } else if (!inside && route === Op.parkThrough) {
      log.add(
        'weak',
        'lead-caught-at-edge',
        row,
        column,
        () =>
          `The old lead ${id} is caught in the knot at the colour change ${where}, so it sticks out at the side. Pass it ${place === 'turn' ? 'down and behind' : 'behind and under that knot'} instead.`,
      );
    } else if (place === 'lastKnot' && route === Op.parkDown) {
      log.add(
        'weak',
        'lead-path',
        row,
        column,
        () =>
          `The old lead ${id} goes straight down at the last knot; pass it behind and under that knot, or it shows beside the edge.`,
      );
    } else if (place === 'turn' && route === Op.parkBehind) {
      log.add(
        'weak',
        'lead-path',
        row,
        column,
        () =>
          `The old lead ${id} is passed behind a knot at the turn; take it down and behind, or the last knot of the row above does not lie level.`,
      );
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
    this.log.add(
      'weak',
      'long-float',
      row,
      column,
      () =>
        `Lead ${id} comes back over a float of ${down} ${down === 1 ? 'row' : 'rows'} and ${across} ${across === 1 ? 'knot' : 'knots'} behind the work, more than ${this.longFloat} knots long: it can snag, and pulled tight it puckers the work.`,
    );
  }
}
