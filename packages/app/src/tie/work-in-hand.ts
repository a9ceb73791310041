import type { Store } from '../store/store.js';
import type { Place } from '../view/fabric-picture.js';
import { WorkError } from '../work/work-error.js';
import type { BreakClock } from './break-clock.js';
import type { Course, KnotPlace } from './course.js';
import { announced, type InHand } from './in-hand.js';
import { PAUSE } from './pace.js';
import { Tying } from './tying.js';

/** Who shows the work in hand. */
export interface WorkHost {
  /** Something of it has changed. */
  changed(): void;
  /** The maker has gone on, back or elsewhere. */
  moved(): void;
  /** Keeps the project itself, before its first knot is counted. */
  keepProject(): Promise<void>;
}

/** The piece that is tied: as it is followed along, how far it is, and the knot in hand. */
export class WorkInHand<H extends InHand> {
  course: Course<H> | null = null;
  tying: Tying | null = null;
  /** The knot in hand, once its row has come; null when all is tied. */
  hand: H | null = null;
  /** Of a colour change that is gone through step by step, from 0. */
  step = 0;
  /** Why the knot in hand can't be shown. */
  problem = '';
  /** What is told to who does not see the page. */
  news = '';
  /** Whether another window has counted last. */
  elsewhere = false;
  /** Whether the next knot that comes up is to be said and played: not the one it opens with. */
  hasMoved = false;

  constructor(
    private readonly host: WorkHost,
    private readonly rests: BreakClock,
  ) {}

  /** The place of the knot in hand; null when all is tied. */
  get place(): KnotPlace | null {
    const { course, tying } = this;
    return course === null || tying === null ? null : course.placeAfter(tying.done);
  }

  /** Another piece, or another drawing of it. */
  follow(course: Course<H>, store: Store): void {
    const work = { id: course.id, rows: course };
    const other = this.tying?.id !== course.id;
    if (other) this.count(new Tying(store, work, () => this.host.keepProject()));
    this.course = course;
    this.hand = null;
    if (other) void this.tying?.start();
    else this.tying?.setWork(work);
    void this.takeUp();
  }

  leave(): void {
    this.count(null);
  }

  private count(tying: Tying | null): void {
    this.tying?.removeEventListener('count', this.onCount);
    this.tying?.removeEventListener('elsewhere', this.onElsewhere);
    this.tying?.stop();
    this.tying = tying;
    this.hand = null;
    this.elsewhere = false;
    this.hasMoved = false;
    this.rests.rested();
    tying?.addEventListener('count', this.onCount);
    tying?.addEventListener('elsewhere', this.onElsewhere);
  }

  private readonly onCount = (): void => {
    this.host.changed();
    void this.takeUp();
  };

  private readonly onElsewhere = (): void => {
    this.elsewhere = true;
    this.host.changed();
  };

  /** Fetches what is said of the knot that is next. */
  private async takeUp(): Promise<void> {
    const { course, place, tying } = this;
    if (course === null || tying?.ready !== true) return;
    if (place === null) {
      this.hand = null;
      this.news = 'All knots are tied.';
      this.host.changed();
      return;
    }
    let hand: H | null;
    try {
      hand = await course.hand(place);
    } catch (error) {
      if (course !== this.course) return;
      this.hand = null;
      this.problem =
        error instanceof WorkError
          ? error.message
          : 'This row could not be read. Look at the Check view.';
      this.host.changed();
      return;
    }
    const now = this.place;
    if (course !== this.course || now === null) return;
    if (now.row !== place.row || now.order !== place.order) return;
    this.problem = '';
    this.hand = hand;
    this.step = 0;
    if (hand !== null) this.news = announced(hand, course.knotsIn(place.row));
    this.host.changed();
  }

  tie(knots: number): void {
    const { tying, course } = this;
    if (tying === null || course === null) return;
    const from = tying.done;
    const to = Math.min(course.total, from + knots);
    const counted = tying.tie(knots, course.changesBetween(from, to));
    if (counted === null) return;
    if (counted.seconds !== null) this.rests.tied(counted.seconds, PAUSE * knots);
    this.moved();
  }

  /** All that is left of the row. */
  tieRow(): void {
    const { place, course } = this;
    if (place !== null && course !== null) this.tie(course.knotsIn(place.row) - place.order);
  }

  back(): void {
    if (this.tying?.back()) this.moved();
  }

  goTo(done: number): void {
    this.tying?.goTo(done);
    this.moved();
  }

  goToPlace(place: Place): void {
    if (this.course !== null) this.goTo(this.course.doneBefore(place));
  }

  goToStep(step: number): void {
    this.step = step;
    this.news = this.hand?.steps[step] ?? '';
    this.host.changed();
  }

  private moved(): void {
    this.elsewhere = false;
    this.hasMoved = true;
    this.host.moved();
  }
}
