import {
  changesPlaces,
  type HalfWay,
  KNOT_KINDS,
  type KnotKind,
  kindOf,
} from '../../model/knot.js';
import { Machine } from '../../model/machine.js';
import { Op, type StepList } from '../../model/steplist.js';
import { Lookahead } from '../../verify/lookahead.js';
import { knotIndex, knotsAcross, knotsInRow, type Lattice, slotOfPlace } from '../lattice.js';
import { NO_KNOT } from '../pattern.js';
import { ANY_COLOUR, BARE, type DiagonalPicture } from '../picture.js';
import type { DiagonalPlan } from '../plan.js';
import { NO_STRING_HERE } from '../simulate.js';
import type { DiagonalFindingCode } from './findings.js';
import type { DiagonalLog } from './log.js';
import * as say from './messages.js';
import type { Wanted } from './wanted.js';

/** After so many mistakes the plan is not for this picture, and following it helps nobody. */
const MISTAKES_FOLLOWED = 2_000;

const HALF_OP = { forward: Op.halfForward, backward: Op.halfBackward } as const;
/**
 * Follows the steps of a diagonal plan through the state machine, knowing only the steps, what is
 * wanted and the lattice. What a step does wrong is reported where it happens; then the strings are
 * put right, so that the rest of the plan can be judged too: as the pattern has them where it is
 * known, and otherwise as the steps that follow need them.
 */
export class DiagonalFollower {
  readonly tying: Uint16Array;
  readonly kinds: Uint8Array;
  readonly order: Uint16Array;
  knots = 0;
  halfHitches = 0;
  row = 0;
  readonly machine: Machine;
  private readonly steps: StepList;
  private readonly look: Lookahead;
  private readonly lattice: Lattice;
  private readonly rows: number;
  private readonly colourMatches: Uint8Array;
  private readonly colours: DiagonalPicture['colours'];
  /** Where each string was knotted last: an entry of the lattice, and its row. */
  private readonly lastCell: Int32Array;
  private readonly lastRow: Int32Array;
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
    private readonly wanted: Wanted,
    private readonly log: DiagonalLog,
    private readonly longLoose: number,
  ) {
    this.steps = plan.steps;
    this.look = new Lookahead(plan.steps);
    this.lattice = picture;
    this.rows = picture.rows;
    this.colours = picture.colours;
    this.machine = new Machine(plan.strings, plan.hung);
    const cells = picture.rows * knotsAcross(picture);
    this.tying = new Uint16Array(cells).fill(NO_STRING_HERE);
    this.kinds = new Uint8Array(cells).fill(NO_KNOT);
    this.order = new Uint16Array((picture.rows + 1) * picture.strings);
    this.lastCell = new Int32Array(plan.strings.length).fill(-1);
    this.lastRow = new Int32Array(plan.strings.length).fill(-1);
    this.colourMatches = colourTable(plan, picture);
    this.writeOrder();
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
      // Reported when the place was found: tied by whoever hangs there, the way it is written.
      const right = this.machine.front[leftSlot + 1] as number;
      if (tying !== left && tying !== right) tying = held === left ? right : left;
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
    if (this.belongsToNextRow(i, tying, held)) {
      const row = this.row;
      this.wrong('turn-missing', -1, () => say.turnMissing(row, this.id(tying), this.id(held)));
      this.nextRow(i - 1);
      const place = this.pairPlace(tying, held);
      if (place >= 0) return place;
    }
    if (this.blameKnotBefore(tying, held) || this.blameKnotBefore(held, tying)) {
      return this.pairPlace(tying, held);
    }
    const place = this.placeMeant(i, tying, held);
    if (place < 0) {
      this.wrong('wrong-string', -1, () => say.noPair(this.id(tying), this.id(held)));
      return -1;
    }
    this.wrong('wrong-string', place, () =>
      say.notAPair(this.id(tying), this.id(held), ...this.pairIds(place)),
    );
    return place;
  }

  /** Whether a knot is one of the next row, to which there was no turn. */
  private belongsToNextRow(i: number, tying: number, held: number): boolean {
    const slot = this.leftSlot(tying, held);
    if (slot < 0 || this.row + 1 >= this.rows) return false;
    if (this.wanted.placeAt(this.row + 1, slot) < 0) return false;
    return this.lacks() === 0 || !(this.look.turnComesFirst(i) || this.nextFits(i));
  }

  /** Whether the next knot of other strings, before any turn, is one that this row still lacks. */
  private nextFits(i: number): boolean {
    const { a, b } = this.steps;
    for (let j = this.look.nextHalf(i); j >= 0; j = this.look.nextHalf(j, false, i)) {
      if (a[j] === a[i] && b[j] === b[i]) continue;
      const place = this.pairPlace(a[j] as number, b[j] as number);
      return place >= 0 && !this.isTied(place);
    }
    return false;
  }

  /**
   * Without a pattern the kind of an earlier knot shows to be wrong only when its strings are needed
   * on each other's sides.
   */
  private blameKnotBefore(string: number, other: number): boolean {
    const { machine, wanted } = this;
    if (wanted.pattern !== null || string >= machine.count || other >= machine.count) return false;
    const cell = this.lastCell[string] as number;
    const row = this.lastRow[string] as number;
    if (cell < 0 || row >= this.row) return false;
    const kind = KNOT_KINDS[this.kinds[cell] as number];
    const slot = machine.slotOf[string] as number;
    for (const beside of [slot - 1, slot + 1]) {
      const partner = beside < 0 ? -1 : (machine.front[beside] as number);
      if (beside >= machine.frontLength || partner < 0 || kind === undefined) continue;
      if (partner === other || this.lastCell[partner] !== cell) continue;
      const far = machine.slotOf[other] as number;
      if (Math.abs(far - beside) !== 1) continue;
      const place = wanted.placeAt(this.row, Math.min(far, beside));
      if (place < 0 || this.isTied(place)) continue;
      const inRow = row * knotsAcross(this.lattice);
      const exchanges = changesPlaces(kind);
      this.log.atPlace('wrong', 'wrong-kind', row, cell - inRow, () =>
        say.wrongSides(
          kind,
          this.id(string),
          this.id(partner),
          this.id(other),
          this.row,
          exchanges,
        ),
      );
      this.exchange(Math.min(slot, beside));
      return true;
    }
    return false;
  }

  /** The place that a knot with a wrong string was most likely meant for, or -1. */
  private placeMeant(i: number, tying: number, held: number): number {
    const { a, b } = this.steps;
    const next = this.look.nextHalf(i);
    // Where the second half names its strings rightly, the first half alone is wrong.
    if (next >= 0 && !this.look.repeatsNext(i)) {
      const [nextTying, nextHeld] = [a[next] as number, b[next] as number];
      const place = this.pairPlace(nextTying, nextHeld);
      if (place >= 0 && !this.isTied(place) && (nextTying === tying || nextHeld === held)) {
        return place;
      }
    }
    const free = [tying, held]
      .map((string) => (string < this.machine.count ? (this.machine.slotOf[string] as number) : -1))
      .map((slot) => (slot < 0 ? -1 : this.wanted.placeOf(this.row, slot)))
      .filter((place) => place >= 0 && !this.isTied(place));
    const due = this.firstLacking();
    return free.includes(due) ? due : (free[0] ?? -1);
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
      if (this.secondHalfFollows(i)) {
        this.wrong('turn-too-soon', this.knotPlace, () =>
          say.turnInKnot(this.id(this.knotTying), this.id(this.knotHeld)),
        );
        return;
      }
      this.completeHalf(i);
    }
    if (this.row >= this.rows) return;
    if (this.turnsTooSoon(i)) return;
    this.nextRow(i);
  }

  /** Whether the knot begun is finished by the next half hitch, which is not one of two. */
  private secondHalfFollows(i: number): boolean {
    const { a, b } = this.steps;
    const next = this.look.nextHalf(i);
    return (
      next >= 0 &&
      a[next] === this.givenTying &&
      b[next] === this.givenHeld &&
      !this.look.repeatsNext(next)
    );
  }

  /**
   * Whether a turn is one too many, and says so: the knot after it, and after the turns that follow
   * it at once, belongs to a row earlier than they lead to, which still lacks it.
   */
  private turnsTooSoon(i: number): boolean {
    const { op, a, b } = this.steps;
    let turns = 1;
    while (op[i + turns] === Op.turn && turns <= this.rows) turns++;
    const next = this.look.nextHalf(i + turns - 1);
    if (next < 0) return false;
    const [tying, held] = [a[next] as number, b[next] as number];
    const slot = this.leftSlot(tying, held);
    const row = this.row + turns - 1;
    if (slot < 0 || row >= this.rows) return false;
    const place = this.wanted.placeAt(row, slot);
    if (place < 0 || !this.wanted.knot(row, place)) return false;
    if (row === this.row && this.isTied(place)) return false;
    this.log.atPlace('wrong', 'turn-too-soon', row, place, () =>
      say.turnTooSoon(this.id(tying), this.id(held)),
    );
    return true;
  }

  /** Ends the row: what it lacks is reported, and its strings hang as if it had been tied. */
  private nextRow(i: number): void {
    for (let place = 0; place < knotsInRow(this.lattice, this.row); place++) {
      if (this.isTied(place) || !this.wanted.knot(this.row, place)) continue;
      const kind = this.wanted.kind(this.row, place);
      this.wrong('missing-knot', place, () => say.missing(...this.pairIds(place), kind));
      if (this.exchangesAt(i, place, kind)) this.exchangePair(place);
    }
    this.machine.run(Op.turn, 0, 0);
    this.row++;
    this.writeOrder();
  }

  /** Whether the knot that belongs in a place exchanges its strings. */
  private exchangesAt(i: number, place: number, kind: KnotKind | null): boolean {
    if (this.wanted.pattern === null) return this.needsExchange(i, place);
    return kind !== null && changesPlaces(kind);
  }

  /**
   * Whether the strings of a place must change sides for the knots that come next: what is to be
   * knotted with a string on its right must find it on the right.
   */
  private needsExchange(i: number, place: number): boolean {
    if (this.log.wrong > MISTAKES_FOLLOWED) return false;
    const { a, b } = this.steps;
    const [left, right] = this.pairOf(place);
    const slot = this.machine.slotOf[left] as number;
    for (let j = this.look.nextHalf(i, true); j >= 0; j = this.look.nextHalf(j, true, i)) {
      const [one, other] = [a[j] as number, b[j] as number];
      for (const [string, partner] of [
        [one, other],
        [other, one],
      ] as const) {
        if (string !== left && string !== right) continue;
        if (partner === left || partner === right) return false;
        const onRight = (this.machine.slotOf[partner] ?? 0) > slot;
        return (string === left) === onRight;
      }
    }
    return false;
  }

  /** How many knots the row still lacks. */
  private lacks(): number {
    let count = 0;
    for (let place = 0; place < knotsInRow(this.lattice, this.row); place++) {
      if (!this.isTied(place) && this.wanted.knot(this.row, place)) count++;
    }
    return count;
  }

  private firstLacking(): number {
    const count = knotsInRow(this.lattice, this.row);
    for (let place = 0; place < count; place++) {
      if (!this.isTied(place) && this.wanted.knot(this.row, place)) return place;
    }
    return -1;
  }

  private isTied(place: number): boolean {
    return this.tying[knotIndex(this.lattice, this.row, place)] !== NO_STRING_HERE;
  }

  /** The place of this row whose pair two strings are, or -1. */
  private pairPlace(one: number, other: number): number {
    const slot = this.leftSlot(one, other);
    return slot < 0 ? -1 : this.wanted.placeAt(this.row, slot);
  }

  /** The slot of the left one of two strings that hang side by side, or -1. */
  private leftSlot(one: number, other: number): number {
    const { slotOf, count } = this.machine;
    if (one >= count || other >= count) return -1;
    const first = slotOf[one] as number;
    const second = slotOf[other] as number;
    return Math.abs(first - second) === 1 ? Math.min(first, second) : -1;
  }

  /** The strings of a place of this row, the left one first. */
  private pairOf(place: number): readonly [number, number] {
    const slot = slotOfPlace(this.lattice, this.row, place);
    const { front } = this.machine;
    return [front[slot] as number, front[slot + 1] as number];
  }

  private pairIds(place: number): readonly [string, string] {
    const [left, right] = this.pairOf(place);
    return [this.id(left), this.id(right)];
  }

  private exchangePair(place: number): void {
    this.exchange(slotOfPlace(this.lattice, this.row, place));
  }

  /** Hangs two neighbours the other way round. */
  private exchange(slot: number): void {
    const { front, slotOf } = this.machine;
    const [left, right] = [front[slot] as number, front[slot + 1] as number];
    front[slot] = right;
    front[slot + 1] = left;
    slotOf[right] = slot;
    slotOf[left] = slot + 1;
  }

  private writeOrder(): void {
    const { strings } = this.lattice;
    this.order.set(this.machine.front.subarray(0, strings), this.row * strings);
  }

  private pass(tying: number, held: number): void {
    this.passTying = tying;
    this.passHeld = held;
  }

  private wrong(code: DiagonalFindingCode, place: number, text: () => string): void {
    this.log.atPlace('wrong', code, this.row, place, text);
  }

  private id(string: number): string {
    return this.machine.strings[string]?.id ?? 'a string that is not in the table';
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
