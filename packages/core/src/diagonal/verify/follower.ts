import {
  changesPlaces,
  type HalfWay,
  KNOT_KINDS,
  type KnotKind,
  kindOf,
} from '../../model/knot.js';
import { Op } from '../../model/steplist.js';
import { knotIndex, slotOfPlace } from '../lattice.js';
import { ANY_COLOUR, BARE, type DiagonalPicture } from '../picture.js';
import type { DiagonalPlan } from '../plan.js';
import type { DiagonalLog } from './log.js';
import * as say from './messages.js';
import { belongsToNextRow, blameKnotBefore, placeMeant } from './place-meant.js';
import { MISTAKES_FOLLOWED, Standing } from './standing.js';
import { turnsTooSoon } from './turns.js';
import type { Wanted } from './wanted.js';

const HALF_OP = { forward: Op.halfForward, backward: Op.halfBackward } as const;

/**
 * Follows the steps of a diagonal plan through the state machine, knowing only the steps, what is
 * wanted and the lattice. What a step does wrong is reported where it happens; then the strings are
 * put right, so that the rest of the plan can be judged too: as the pattern has them where it is
 * known, and otherwise as the steps that follow need them.
 */
export class DiagonalFollower extends Standing {
  private readonly colourMatches: Uint8Array;
  private readonly colours: DiagonalPicture['colours'];
  /** The knot begun: as the step gave its strings, and as they were taken. */
  private givenTying = -1;
  private givenHeld = -1;
  private knotTying = -1;
  private knotHeld = -1;
  private knotPlace = -1;
  private knotExcused = false;
  /** A knot too many, whose half hitches are passed over. */
  private passTying = -1;
  private passHeld = -1;

  constructor(
    plan: DiagonalPlan,
    picture: DiagonalPicture,
    wanted: Wanted,
    log: DiagonalLog,
    private readonly longLoose: number,
  ) {
    super(plan, picture, wanted, log);
    this.colours = picture.colours;
    this.colourMatches = colourTable(plan, picture);
  }

  /** Follows every step, or as many as make sense, and goes on to the last row that is wanted. */
  run(): void {
    const { op, a, b, length } = this.steps;
    let i = 0;
    for (; i < length && this.row <= this.rows && this.log.wrong <= MISTAKES_FOLLOWED; i++) {
      const code = op[i] as number;
      if (code === Op.halfForward) this.half(i, 'forward', a[i] as number, b[i] as number);
      else if (code === Op.halfBackward) this.half(i, 'backward', a[i] as number, b[i] as number);
      else if (code === Op.turn) this.turn(i);
      else this.wrong('step-cannot-be-done', -1, () => say.stringLeaves(this.steps.at(i).do));
    }
    if (this.machine.halfTying >= 0) this.completeHalf(i);
    // What follows is not asked any more: it has ended, or nobody could make sense of it.
    while (this.row < this.rows) this.nextRow(length);
  }

  private half(i: number, way: HalfWay, tying: number, held: number): void {
    if (tying === this.passTying && held === this.passHeld) return;
    this.passTying = -1;
    if (this.machine.halfTying < 0) this.begin(i, way, tying, held);
    else this.second(i, way, tying, held);
  }

  private begin(i: number, givenWay: HalfWay, givenTying: number, givenHeld: number): void {
    if (this.row >= this.rows) {
      this.log.atPlace('wrong', 'row-too-many', this.row, -1, () => say.rowTooMany(this.rows));
      this.row = this.rows + 1;
      return;
    }
    let tying = givenTying;
    let held = givenHeld;
    let way = givenWay;
    this.knotExcused = false;
    let place = this.pairPlace(tying, held);
    if (place < 0) place = this.findPlace(i, tying, held);
    if (place < 0) return this.pass(givenTying, givenHeld);
    if (this.isTied(place)) {
      this.wrong('doubled-knot', place, () => say.doubled(...this.pairIds(place)));
      return this.pass(givenTying, givenHeld);
    }
    const leftSlot = slotOfPlace(this.lattice, this.row, place);
    const left = this.machine.front[leftSlot] as number;
    if (this.pairPlace(tying, held) !== place) {
      // Reported when the place was found: tied as the second half has it, where that is of this
      // place, and else by whoever hangs there, the way it is written.
      const right = this.machine.front[leftSlot + 1] as number;
      const next = this.look.nextHalf(i);
      const { a, b } = this.steps;
      if (next >= 0 && this.pairPlace(a[next] as number, b[next] as number) === place) {
        tying = a[next] as number;
      } else if (tying !== left && tying !== right) tying = held === left ? right : left;
      held = tying === left ? right : left;
      way = tying === left ? 'forward' : 'backward';
      this.knotExcused = true;
    } else if ((way === 'forward') !== (tying === left)) {
      this.wrong('wrong-kind', place, () =>
        say.wrongFirstHalf(givenWay, this.id(tying), this.id(held)),
      );
      way = way === 'forward' ? 'backward' : 'forward';
      this.knotExcused = true;
    }
    this.machine.run(HALF_OP[way], tying, held);
    this.halfHitches++;
    this.givenTying = givenTying;
    this.givenHeld = givenHeld;
    this.knotTying = tying;
    this.knotHeld = held;
    this.knotPlace = place;
  }

  /**
   * The place that is meant by a knot whose strings are no pair of the row, or -1 when it is passed
   * over; says what is wrong.
   */
  private findPlace(i: number, tying: number, held: number): number {
    if (belongsToNextRow(this, i, tying, held)) {
      const row = this.row;
      this.wrong('turn-missing', -1, () => say.turnMissing(row, this.id(tying), this.id(held)));
      this.nextRow(i - 1);
      const place = this.pairPlace(tying, held);
      if (place >= 0) return place;
    }
    if (blameKnotBefore(this, tying, held) || blameKnotBefore(this, held, tying)) {
      return this.pairPlace(tying, held);
    }
    const place = placeMeant(this, i, tying, held);
    if (place < 0) {
      this.wrong('wrong-string', -1, () => say.noPair(this.id(tying), this.id(held)));
      return -1;
    }
    this.wrong('wrong-string', place, () =>
      say.notAPair(this.id(tying), this.id(held), ...this.pairIds(place)),
    );
    return place;
  }

  private second(i: number, way: HalfWay, tying: number, held: number): void {
    const asGiven = tying === this.givenTying && held === this.givenHeld;
    const asTaken = tying === this.knotTying && held === this.knotHeld;
    if (!asGiven && !asTaken) {
      const related = tying === this.knotTying || held === this.knotHeld;
      if (this.look.repeatsNext(i) || !related) {
        this.completeHalf(i - 1);
        this.begin(i, way, tying, held);
        return;
      }
      const wrongTying = tying !== this.knotTying;
      this.wrong('wrong-string', this.knotPlace, () =>
        wrongTying
          ? say.secondHalfBy(this.id(tying), this.id(this.knotTying))
          : say.secondHalfOn(this.id(held), this.id(this.knotHeld)),
      );
    }
    this.halfHitches++;
    this.finish(way);
  }

  /** A knot of which the second half never comes: reported, and tied as it most likely should be. */
  private completeHalf(i: number): void {
    const { knotPlace: place } = this;
    this.wrong('half-knot', place, () =>
      say.halfKnot(this.id(this.knotTying), this.id(this.knotHeld)),
    );
    const kind = this.wanted.kind(this.row, place);
    const first = this.machine.halfFirst;
    const exchanges = this.exchangesAt(i, place, kind);
    const other: HalfWay = first === 'forward' ? 'backward' : 'forward';
    this.knotExcused = true;
    this.knots--;
    this.finish(exchanges ? first : other);
  }

  private finish(second: HalfWay): void {
    const { row, knotTying: tying, knotHeld: held, knotPlace: place } = this;
    const first = this.machine.halfFirst;
    this.machine.run(HALF_OP[second], tying, held);
    const kind = kindOf(first, second);
    const cell = knotIndex(this.lattice, row, place);
    this.knots++;
    this.tying[cell] = tying;
    this.kinds[cell] = KNOT_KINDS.indexOf(kind);
    this.knotted(tying, place, cell);
    this.knotted(held, place, cell);
    if (this.wanted.bare(row, place)) {
      this.wrong('knot-not-wanted', place, () => say.notWanted(this.id(tying), this.id(held)));
      const inPattern = this.wanted.pattern === null || this.wanted.kind(row, place) !== null;
      if (!inPattern && changesPlaces(kind)) this.exchangePair(place);
      return;
    }
    this.reportKind(kind, place);
    const colour = this.wanted.colour(row, place);
    if (colour === ANY_COLOUR || colour === BARE) return;
    if (this.colourMatches[tying * this.colours.length + colour] === 1) return;
    this.wrong('colour-differs', place, () =>
      say.colourDiffers(this.machine.strings[tying], this.colours[colour]),
    );
  }

  private reportKind(kind: KnotKind, place: number): void {
    const wanted = this.wanted.kind(this.row, place);
    if (wanted === null || wanted === kind) return;
    const exchanges = changesPlaces(kind);
    const wantedExchanges = changesPlaces(wanted);
    if (!this.knotExcused) {
      this.wrong('wrong-kind', place, () =>
        say.wrongKind(kind, wanted, exchanges, wantedExchanges),
      );
    }
    if (exchanges !== wantedExchanges) this.exchangePair(place);
  }

  /** Notes where a string is knotted, and says when it hung loose for long before that. */
  private knotted(string: number, place: number, cell: number): void {
    const last = this.lastRow[string] as number;
    const rows = this.row - last - 1;
    this.lastCell[string] = cell;
    this.lastRow[string] = this.row;
    if (last < 0 || rows <= this.longLoose) return;
    const slot = this.machine.slotOf[string] as number;
    this.log.add('weak', 'loose-string', this.row, place, slot, () =>
      say.loose(this.id(string), rows),
    );
  }

  private turn(i: number): void {
    if (this.machine.halfTying >= 0) {
      if (this.look.finishes(i, this.givenTying, this.givenHeld)) {
        this.wrong('turn-too-soon', this.knotPlace, () =>
          say.turnInKnot(this.id(this.knotTying), this.id(this.knotHeld)),
        );
        return;
      }
      this.completeHalf(i);
    }
    if (this.row >= this.rows) return;
    if (turnsTooSoon(this, i)) return;
    this.nextRow(i);
  }

  private pass(tying: number, held: number): void {
    this.passTying = tying;
    this.passHeld = held;
  }
}

/** Whether a string (row) is of a picture's colour (column): a byte each. */
function colourTable(plan: DiagonalPlan, picture: DiagonalPicture): Uint8Array {
  const { colours } = picture;
  const table = new Uint8Array(plan.strings.length * colours.length);
  plan.strings.forEach((string, i) => {
    colours.forEach(({ hex }, j) => {
      if (string.colour === hex) table[i * colours.length + j] = 1;
    });
  });
  return table;
}
