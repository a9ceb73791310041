import '@halfhitch/simulator';
import '../view/swatch.js';
import type { HalfhitchRow, TiedDetail } from '@halfhitch/simulator';
import { html, nothing, type TemplateResult } from 'lit';
import type { Session } from '../project/session.js';
import { keeperOf } from '../store/keep-session.js';
import { theStore } from '../store/open-store.js';
import type { Store } from '../store/store.js';
import type { Place } from '../view/fabric-picture.js';
import { PageElement } from '../view/page-element.js';
import { SessionWatch } from '../view/session-watch.js';
import type { TradeWord } from '../view/trade-words.js';
import { BigButtons } from './big-buttons.js';
import { type CountingActions, restOfRun } from './counting-buttons.js';
import type { Course, KnotPlace } from './course.js';
import { HandsFree } from './hands-free.js';
import { type InHand, spoken, spokenStep } from './in-hand.js';
import { tieKeyOf } from './keys.js';
import { type NoticeActions, notices, restNotice } from './notices.js';
import { nowCard } from './now-card.js';
import { progressCard } from './progress-card.js';
import { settingsCard } from './settings-card.js';
import { knotAlone, type Stage, Staging } from './stage.js';
import type { Tying } from './tying.js';
import { placeFilledIn, type WhereShown, whereCard } from './where-card.js';
import { WorkInHand } from './work-in-hand.js';

/** Minutes until a rest that was put off is called for again. */
const LATER = 5;

/**
 * Following along: the knot in hand, large and in words, until the last one is tied. How the piece
 * and its knots are shown is left to the view of each kind of work.
 */
export abstract class TieBench<H extends InHand> extends PageElement {
  static override properties = {
    session: { attribute: false },
    chosen: { state: true },
    jumpError: { state: true },
  };

  declare session: Session | null;
  declare protected chosen: Place | null;
  declare private jumpError: string;

  private store: Store | null = null;
  private readonly handsFree = new HandsFree(this, () => this.say());
  private readonly work = new WorkInHand<H>(
    {
      changed: () => this.requestUpdate(),
      moved: () => this.moved(),
      keepProject: async () => {
        if (this.session !== null) await (await keeperOf(this.session))?.keepNow();
      },
    },
    this.handsFree.rests,
  );
  private readonly big = new BigButtons(this, this.work, {
    done: () => this.act.done(),
    back: () => this.act.back(),
    runDone: () => this.act.runDone(),
    sayAgain: () => this.say(),
  });
  private readonly staging = new Staging();
  /** What the voice last said. */
  private saidFor: string | null = null;

  constructor() {
    super();
    this.session = null;
    this.chosen = null;
    this.jumpError = '';
    new SessionWatch(this, ['project', 'piece', 'busy']);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('keydown', this.onKey);
    document.addEventListener('visibilitychange', this.onVisibility);
    void this.begin();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('keydown', this.onKey);
    document.removeEventListener('visibilitychange', this.onVisibility);
    this.work.leave();
    this.staging.clear();
  }

  // ---- the work ----

  private async begin(): Promise<void> {
    const keeper = this.session === null ? null : await keeperOf(this.session);
    this.store = keeper?.store ?? (await theStore());
    await this.handsFree.begin(this.store, () => this.isConnected);
  }

  /** The piece of the open project; null while it is worked out. */
  protected abstract get piece(): { readonly id: string } | null;

  /** The piece as it is followed along. */
  protected abstract newCourse(session: Session): Course<H> | null;

  /** The piece, and a knot that was tapped in it. */
  protected abstract where(course: Course<H>): WhereShown;

  protected abstract zoom(way: 1 | -1): void;

  /** A larger picture than that of the knot alone. */
  protected abstract readonly larger: { readonly label: string };

  /** Shows the knot in hand in the larger picture; null while that is not in the page. */
  protected abstract showInLarger(hand: H, again: boolean): Stage | null;

  /** Whether the larger picture shows another row, or another piece, than that of the knot. */
  protected abstract largerIsStale(hand: H): boolean;

  /** Shows how far the piece is tied. */
  protected abstract showPiece(course: Course<H>, tying: Tying, place: KnotPlace | null): void;

  /** What else stands at the end of the page. */
  protected below(_tying: Tying): TemplateResult | typeof nothing {
    return nothing;
  }

  /** Words of the trade that are said of the knot in hand. */
  protected abstract readonly words: readonly TradeWord[];

  /** Opens the lesson about the knot in hand; null where there are none. */
  protected get lesson(): (() => void) | null {
    return null;
  }

  protected get course(): Course<H> | null {
    return this.work.course;
  }

  protected get tying(): Tying | null {
    return this.work.tying;
  }

  protected get hand(): H | null {
    return this.work.hand;
  }

  protected get place(): KnotPlace | null {
    return this.work.place;
  }

  /** Keeps up with the session: another project, another drawing, another count. */
  protected override willUpdate(): void {
    const { piece, session, store } = this;
    if (piece === null || session === null || store === null || !this.isConnected) return;
    if (this.course?.piece === piece) return;
    const course = this.newCourse(session);
    if (course === null) return;
    this.chosen = null;
    this.work.follow(course, store);
  }

  // ---- counting ----

  private readonly act: CountingActions = {
    done: () => this.work.tie(1),
    back: () => this.work.back(),
    runDone: () => {
      if (this.hand !== null) this.work.tie(restOfRun(this.hand));
    },
    rowDone: () => this.work.tieRow(),
    sayAgain: () => this.say(),
    openBig: () => this.big.show(true),
  };

  private moved(): void {
    this.chosen = null;
    this.jumpError = '';
    this.handsFree.touched();
  }

  private jump(row: string, across: string): void {
    if (this.course === null) return;
    const place = placeFilledIn(this.course, row, across);
    if (typeof place === 'string') this.jumpError = place;
    else this.goHere(place);
  }

  private goHere(place: Place): void {
    this.work.goToPlace(place);
    // On to the next knot, and not to the same place again, with the next key.
    this.querySelector<HTMLElement>('.tie-done')?.focus();
  }

  // ---- voice, keys, the page ----

  private say(): void {
    const { handsFree, hand, tying } = this;
    const { stepping } = this.big;
    if (handsFree.rests.due) handsFree.say('Time to rest your hands.');
    else if (stepping !== null) handsFree.say(spokenStep(stepping, this.work.step));
    else if (hand !== null) handsFree.say(spoken(hand));
    else if (tying?.ready && this.place === null) handsFree.say('All knots are tied.');
  }

  private readonly onKey = (event: KeyboardEvent): void => {
    // In the dialog, Escape closes it by itself.
    const key = tieKeyOf(event, this.handsFree.settings.letters);
    if (key === null || this.piece === null) return;
    event.preventDefault();
    if (key === 'done') this.big.done();
    else if (key === 'back') this.big.back();
    else if (key === 'run') this.act.runDone();
    else if (key === 'say') this.say();
    else this.big.show(!this.big.open);
  };

  private readonly onVisibility = (): void => {
    // A sleeping page hears nothing of what other windows count.
    if (document.visibilityState === 'visible') void this.tying?.takeOver();
  };

  private get noticeActions(): NoticeActions {
    const { session, tying, work } = this;
    const { rests } = this.handsFree;
    return {
      undoChange: session?.undoing == null ? null : () => session.undo(),
      accept: () => tying?.acceptDrawing(),
      goTo: (done) => work.goTo(done),
      retry: () => tying?.retry(),
      rested: () => {
        rests.rested();
        tying?.interrupt();
        this.requestUpdate();
      },
      later: () => {
        rests.later(LATER);
        this.requestUpdate();
      },
    };
  }

  // ---- what is shown ----

  protected override render(): TemplateResult {
    const { piece, course, tying, session, work, handsFree, big } = this;
    if (piece === null || course === null || tying?.ready !== true) {
      return html`<section class="card"><p>${
        session?.busy === false && piece === null
          ? 'This piece could not be worked out, so there is nothing to tie yet. Look at the Check view.'
          : 'Working it out.'
      }</p></section>`;
    }
    if (course.total === 0) {
      return html`<section class="card"><p>
        There are no knots to tie yet. Draw some, or find a way to knot the picture, in the
        <a href="#draw">Draw view</a>.
      </p></section>`;
    }
    const { rests, settings } = handsFree;
    const rest = rests.due ? restNotice(rests.minutes, this.noticeActions) : nothing;
    const told = notices(tying, course, work.elsewhere, this.noticeActions);
    return html`
      <p class="unseen" role="status">${work.news}</p>
      ${told}
      ${
        course.sound
          ? nothing
          : html`<p class="note">This piece does not knot out as drawn. See the Check view before you tie it.</p>`
      }
      ${big.open ? nothing : rest}
      <section
        class="card tie-now ${this.place === null || settings.picture === 'none' ? 'unpictured' : ''}"
        aria-labelledby="knot-name"
      >
        ${nowCard(work, tying, settings, this.act, {
          total: course.total,
          lesson: this.lesson,
          words: this.words,
          larger: { label: this.larger.label, picture: this.largerStage() },
          choose: (picture) => handsFree.set({ picture }),
        })}
      </section>
      <div class="tie-bench">
        <section class="card tie-how-far" aria-label="How far you are">
          ${progressCard(tying, course, this.place, this.store?.lasting ?? false)}
        </section>
        <section class="card tie-where" aria-labelledby="where-name">
          ${whereCard(course, this.where(course), this.place, this.jumpError, {
            hereIs: (place) => this.goHere(place),
            jump: (row, across) => this.jump(row, across),
            zoom: (way) => this.zoom(way),
          })}
        </section>
        <section class="card tie-follow" aria-labelledby="follow-name">
          ${settingsCard(settings, handsFree.voiceState, handsFree.awakeState, (change) => handsFree.set(change))}
        </section>
      </div>
      ${this.below(tying)}
      ${big.open ? big.dialog(course, settings.voice, html`${told}${rest}`) : nothing}
    `;
  }

  protected override updated(): void {
    const { course, tying } = this;
    if (course !== null && tying?.ready === true) this.showPiece(course, tying, this.place);
    this.showKnot();
    const { hand } = this;
    // Between two knots, while the next one's row is fetched, nothing is said.
    if (hand === null && this.place !== null) return;
    const saying = hand === null ? null : `${hand.knot.row}/${hand.knot.order}`;
    if (saying !== this.saidFor) {
      this.saidFor = saying;
      if (this.work.hasMoved) this.say();
    }
  }

  /** The knot in hand on the stage. */
  protected get rowStage(): HalfhitchRow | null {
    return this.querySelector('halfhitch-row');
  }

  private largerStage(): TemplateResult {
    return html`<halfhitch-row
      controls="few"
      @halfhitch-knot=${this.onKnotPlayed}
    ><span slot="caption"></span></halfhitch-row>`;
  }

  /** Of the row, only the knot in hand is played. */
  private readonly onKnotPlayed = (event: CustomEvent<TiedDetail>): void => {
    const row = event.currentTarget as HalfhitchRow;
    if (event.detail.knot !== this.hand?.knot.order) return;
    row.pause();
    // A frame goes a little beyond it, into the next knot.
    row.seekKnotDone(event.detail.knot);
  };

  private showKnot(): void {
    const { hand, handsFree } = this;
    const { picture, play } = handsFree.settings;
    if (hand === null || picture === 'none') return;
    const larger = picture === 'row';
    const again = larger && this.largerIsStale(hand);
    const showing = `${picture}/${hand.knot.row}/${hand.knot.order}`;
    this.staging.show(
      showing,
      again,
      () => (larger ? this.showInLarger(hand, again) : knotAlone(this)),
      () => play && this.work.hasMoved && !this.big.open,
    );
  }
}
