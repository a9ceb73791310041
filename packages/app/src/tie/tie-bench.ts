import '@halfhitch/simulator';
import '../view/swatch.js';
import type { HalfhitchKnot } from '@halfhitch/simulator';
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { Session } from '../project/session.js';
import { keeperOf } from '../store/keep-session.js';
import { theStore } from '../store/open-store.js';
import type { Store } from '../store/store.js';
import type { Place } from '../view/fabric-picture.js';
import { SessionWatch } from '../view/session-watch.js';
import { WorkError } from '../work/work-error.js';
import { Awake } from './awake.js';
import { bigButtons, restOfRun } from './big-buttons.js';
import { BreakClock } from './break-clock.js';
import type { Course, KnotPlace } from './course.js';
import { announced, type InHand, spoken, spokenStep } from './in-hand.js';
import { tieKeyOf } from './keys.js';
import { knotHead, knotWords } from './knot-card.js';
import { finished, type NoticeActions, notices, restNotice } from './notices.js';
import { PAUSE } from './pace.js';
import { progressCard } from './progress-card.js';
import { type TieSettings, tieSettingsFrom, USUAL_TIE_SETTINGS } from './settings.js';
import { settingsCard } from './settings-card.js';
import { timeLeft } from './time-left.js';
import { aboutTime } from './time-words.js';
import { Tying } from './tying.js';
import { Voice } from './voice.js';
import { readPlace, type WhereShown, whereCard } from './where-card.js';

const SETTINGS = 'tie';

/** Minutes until a rest that was put off is called for again. */
const LATER = 5;

/** What an animation of a knot can be told. */
export interface Stage {
  readonly updateComplete: Promise<unknown>;
  play(): void;
  pause(): void;
}

/**
 * Following along: the knot in hand, large and in words, until the last one is tied. How the piece
 * and its knots are shown is left to the view of each kind of work.
 */
export abstract class TieBench<H extends InHand> extends LitElement {
  static override properties = {
    session: { attribute: false },
    settings: { state: true },
    hand: { state: true },
    chosen: { state: true },
    jumpError: { state: true },
    big: { state: true },
    step: { state: true },
    elsewhere: { state: true },
    problem: { state: true },
    news: { state: true },
  };

  declare session: Session | null;
  declare protected settings: TieSettings;
  /** The knot in hand, once its row has come; null when all is tied. */
  declare protected hand: H | null;
  declare protected chosen: Place | null;
  declare private jumpError: string;
  declare private big: boolean;
  /** Of a colour change on the big button, from 0. */
  declare private step: number;
  /** Whether another window has counted last. */
  declare private elsewhere: boolean;
  /** Why the knot in hand can't be shown. */
  declare private problem: string;
  declare private news: string;

  private store: Store | null = null;
  protected tying: Tying | null = null;
  protected course: Course<H> | null = null;
  private readonly voice = new Voice();
  private readonly awake = new Awake();
  private readonly rests = new BreakClock(USUAL_TIE_SETTINGS.rest);
  private readonly calm = matchMedia('(prefers-reduced-motion: reduce)');
  /** What the stage and the voice last showed. */
  private staged: unknown = null;
  private saidFor: string | null = null;
  /** Whether the next knot that comes up is to be said and played: not the one it opens with. */
  private moved = false;

  constructor() {
    super();
    this.session = null;
    this.settings = USUAL_TIE_SETTINGS;
    this.hand = null;
    this.chosen = null;
    this.jumpError = '';
    this.big = false;
    this.step = 0;
    this.elsewhere = false;
    this.problem = '';
    this.news = '';
    new SessionWatch(this, ['project', 'piece', 'busy']);
  }

  /** In the page itself, so that its style sheet, find and print reach everything. */
  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('keydown', this.onKey);
    document.addEventListener('visibilitychange', this.onVisibility);
    this.voice.addEventListener('state', this.redraw);
    this.awake.addEventListener('state', this.redraw);
    void this.begin();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('keydown', this.onKey);
    document.removeEventListener('visibilitychange', this.onVisibility);
    this.voice.removeEventListener('state', this.redraw);
    this.awake.removeEventListener('state', this.redraw);
    this.voice.hush();
    this.awake.set(false);
    this.setTying(null);
    this.staged = null;
  }

  private readonly redraw = (): void => this.requestUpdate();

  // ---- the work ----

  private async begin(): Promise<void> {
    const keeper = this.session === null ? null : await keeperOf(this.session);
    this.store = keeper?.store ?? (await theStore());
    const kept = await this.store.setting(SETTINGS).catch(() => undefined);
    if (!this.isConnected) return;
    this.apply(tieSettingsFrom(kept));
    this.requestUpdate();
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
  protected abstract largerStage(): TemplateResult;

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

  /** Opens the lesson about the knot in hand; null where there are none. */
  protected get lesson(): (() => void) | null {
    return null;
  }

  protected get place(): KnotPlace | null {
    const { course, tying } = this;
    return course === null || tying === null ? null : course.placeAfter(tying.done);
  }

  /** Keeps up with the session: another project, another drawing, another count. */
  protected override willUpdate(): void {
    const { piece, session, store } = this;
    if (piece === null || session === null || store === null || !this.isConnected) return;
    if (this.course?.piece !== piece) {
      const course = this.newCourse(session);
      if (course === null) return;
      const work = { id: piece.id, rows: course };
      const other = this.tying?.id !== piece.id;
      if (other) this.setTying(new Tying(store, work, () => this.keepProject()));
      this.course = course;
      this.hand = null;
      this.chosen = null;
      if (other) void this.tying?.start();
      else this.tying?.setWork(work);
      void this.takeUp();
    }
  }

  private setTying(tying: Tying | null): void {
    this.tying?.removeEventListener('count', this.onCount);
    this.tying?.removeEventListener('elsewhere', this.onElsewhere);
    this.tying?.stop();
    this.tying = tying;
    this.hand = null;
    this.elsewhere = false;
    this.moved = false;
    this.rests.rested();
    tying?.addEventListener('count', this.onCount);
    tying?.addEventListener('elsewhere', this.onElsewhere);
  }

  private async keepProject(): Promise<void> {
    if (this.session === null) return;
    await (await keeperOf(this.session))?.keepNow();
  }

  private readonly onCount = (): void => {
    this.requestUpdate();
    void this.takeUp();
  };

  private readonly onElsewhere = (): void => {
    this.elsewhere = true;
  };

  /** Fetches what is said of the knot that is next. */
  private async takeUp(): Promise<void> {
    const { course, place, tying } = this;
    if (course === null || tying?.ready !== true) return;
    if (place === null) {
      this.hand = null;
      this.news = 'All knots are tied.';
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
      return;
    }
    const now = this.place;
    if (course !== this.course || now === null) return;
    if (now.row !== place.row || now.order !== place.order) return;
    this.problem = '';
    this.hand = hand;
    this.step = 0;
    if (hand !== null) this.news = announced(hand, course.knotsIn(place.row));
  }

  // ---- counting ----

  private readonly done = (): void => this.tie(1);

  private readonly runDone = (): void => {
    if (this.hand !== null) this.tie(restOfRun(this.hand));
  };

  private readonly rowDone = (): void => {
    const { place, course } = this;
    if (place !== null && course !== null) this.tie(course.knotsIn(place.row) - place.order);
  };

  private tie(knots: number): void {
    const { tying, course } = this;
    if (tying === null || course === null) return;
    const from = tying.done;
    const to = Math.min(course.total, from + knots);
    const counted = tying.tie(knots, course.changesBetween(from, to));
    if (counted === null) return;
    if (counted.seconds !== null) this.rests.tied(counted.seconds, PAUSE * knots);
    this.changedPlace();
  }

  private readonly back = (): void => {
    if (this.tying?.back()) this.changedPlace();
  };

  /** On the big button a colour change goes step by step, each to be read at arm's length. */
  private get stepping(): InHand | null {
    return this.big && this.hand !== null && this.hand.change !== null ? this.hand : null;
  }

  private readonly bigDone = (): void => {
    const { stepping, step } = this;
    if (stepping !== null && step + 1 < stepping.steps.length) this.toStep(step + 1);
    else this.done();
  };

  private readonly bigBack = (): void => {
    if (this.stepping !== null && this.step > 0) this.toStep(this.step - 1);
    else this.back();
  };

  private toStep(step: number): void {
    this.step = step;
    this.news = this.hand?.steps[step] ?? '';
    this.say();
  }

  private goTo(done: number): void {
    this.tying?.goTo(done);
    this.changedPlace();
  }

  private changedPlace(): void {
    this.chosen = null;
    this.elsewhere = false;
    this.jumpError = '';
    this.moved = true;
    this.awake.retry();
  }

  private jump(row: string, across: string): void {
    const { course } = this;
    if (course === null) return;
    const atRow = readPlace(row, course.rows);
    const { label, most } = course.across;
    const last = atRow === null ? most(0) : most(atRow - 1);
    const at = readPlace(across, last);
    if (atRow === null || at === null) {
      this.jumpError = `Fill in a row from 1 to ${course.rows} and a ${label.toLowerCase()} from 1 to ${last}.`;
      return;
    }
    this.goHere(course.filledIn(atRow, at), course);
  }

  private goHere(place: Place, course: Course<H>): void {
    this.goTo(course.doneBefore(place));
    // On to the next knot, and not to the same place again, with the next key.
    this.querySelector<HTMLElement>('.tie-done')?.focus();
  }

  // ---- settings, keys, the page ----

  private readonly set = (change: Partial<TieSettings>): void => {
    this.apply({ ...this.settings, ...change });
    this.store?.keepSetting(SETTINGS, this.settings).catch(() => {
      // They hold for this visit only.
    });
  };

  private apply(settings: TieSettings): void {
    const heard = settings.voice && !this.settings.voice;
    this.settings = settings;
    this.rests.every = settings.rest;
    this.voice.rate = settings.rate;
    this.awake.set(settings.awake);
    if (!settings.voice) this.voice.hush();
    else if (heard) void this.voice.start().then(() => this.say());
  }

  private readonly say = (): void => {
    if (!this.settings.voice) return;
    if (this.rests.due) this.voice.say('Time to rest your hands.');
    else if (this.stepping !== null) this.voice.say(spokenStep(this.stepping, this.step));
    else if (this.hand !== null) this.voice.say(spoken(this.hand));
    else if (this.tying?.ready && this.place === null) this.voice.say('All knots are tied.');
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    // In the dialog, Escape closes it by itself.
    const key = tieKeyOf(event, this.settings.letters);
    if (key === null || this.piece === null) return;
    event.preventDefault();
    if (key === 'done') this.bigDone();
    else if (key === 'back') this.bigBack();
    else if (key === 'run') this.runDone();
    else if (key === 'say') this.say();
    else this.big = !this.big;
  };

  /** A key that is held down presses a button again and again, and would count knots. */
  private readonly onHeldKey = (event: KeyboardEvent): void => {
    if (event.repeat && (event.key === 'Enter' || event.key === ' ')) event.preventDefault();
  };

  /** Pressed by a finger, a button gives the keys back: the next Space is for the next knot. */
  private readonly onPointed = ({ detail, target }: MouseEvent): void => {
    const button = target instanceof Element ? target.closest('button') : null;
    if (detail === 0 || button === null || button.matches('.tie-big')) return;
    const done = this.big ? '.big-done' : '.tie-done';
    this.querySelector<HTMLElement>(done)?.focus({ preventScroll: true });
  };

  private readonly onVisibility = (): void => {
    // A sleeping page hears nothing of what other windows count.
    if (document.visibilityState === 'visible') void this.tying?.takeOver();
  };

  private get noticeActions(): NoticeActions {
    const { session } = this;
    return {
      undoChange: session?.undoing == null ? null : () => session.undo(),
      accept: () => this.tying?.acceptDrawing(),
      goTo: (done) => this.goTo(done),
      retry: () => this.tying?.retry(),
      rested: () => {
        this.rests.rested();
        this.tying?.interrupt();
        this.requestUpdate();
      },
      later: () => {
        this.rests.later(LATER);
        this.requestUpdate();
      },
    };
  }

  // ---- what is shown ----

  protected override render(): TemplateResult {
    const { piece, course, tying, session } = this;
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
    const rest = this.rests.due ? restNotice(this.rests.minutes, this.noticeActions) : nothing;
    return html`
      <p class="unseen" role="status">${this.news}</p>
      ${notices(tying, course, this.elsewhere, this.noticeActions)}
      ${
        course.sound
          ? nothing
          : html`<p class="note">This piece does not knot out as drawn. See the Check view before you tie it.</p>`
      }
      ${this.big ? nothing : rest}
      <section
        class="card tie-now ${this.place === null || this.settings.picture === 'none' ? 'unpictured' : ''}"
        aria-labelledby="knot-name"
      >
        ${this.inHandOrDone(course, tying)}
      </section>
      <div class="tie-bench">
        <section class="card tie-how-far" aria-label="How far you are">
          ${this.howFar(course, tying)}
        </section>
        <section class="card tie-where" aria-labelledby="where-name">
          ${whereCard(course, this.where(course), this.place, this.jumpError, {
            hereIs: (place) => this.goHere(place, course),
            jump: (row, across) => this.jump(row, across),
            zoom: (way) => this.zoom(way),
          })}
        </section>
        <section class="card tie-follow" aria-labelledby="follow-name">
          ${settingsCard(this.settings, this.voice.state, this.awake.state, this.set)}
        </section>
      </div>
      ${this.below(tying)}
      ${this.big ? this.bigDialog(course, tying, rest) : nothing}
    `;
  }

  private inHandOrDone(course: Course<H>, tying: Tying): TemplateResult {
    const { hand, place } = this;
    if (place === null) {
      const active = tying.active > 60 ? aboutTime(tying.active) : null;
      return html`<div class="tie-words">
          ${finished(course.total, active, () => this.goTo(0))}
        </div>${this.actions(tying)}`;
    }
    const head =
      this.problem !== ''
        ? html`<h2 id="knot-name" class="tie-knot">This knot can't be shown</h2>
          <p role="alert">${this.problem}</p>`
        : hand === null
          ? html`<h2 id="knot-name" class="tie-knot">The next knot</h2>`
          : knotHead(hand);
    return html`
      <div class="tie-head">${head}</div>
      ${this.actions(tying)}
      <div class="tie-watch">${this.stage()}</div>
      ${this.moreActions()}
      <div class="tie-words">${hand === null ? nothing : knotWords(hand, this.lesson)}</div>
    `;
  }

  private actions(tying: Tying): TemplateResult {
    return html`
      <div
        class="tie-actions"
        role="group"
        aria-label="Counting"
        @keydown=${this.onHeldKey}
        @click=${this.onPointed}
      >
        <button type="button" aria-disabled=${off(tying.done === 0)} @click=${this.back}>Back</button>
        <button
          type="button"
          class="primary tie-done"
          aria-disabled=${off(this.place === null)}
          @click=${this.done}
        >Tied</button>
      </div>
    `;
  }

  private moreActions(): TemplateResult {
    const { hand, place } = this;
    const run = hand === null ? 0 : restOfRun(hand);
    return html`
      <div class="tie-more" @keydown=${this.onHeldKey} @click=${this.onPointed}>
        <button type="button" aria-disabled=${off(run < 2)} @click=${this.runDone}>
          ${run < 2 ? 'All alike tied' : `All ${run} alike tied`}
        </button>
        <button type="button" aria-disabled=${off(place === null)} @click=${this.rowDone}>
          The row is tied
        </button>
        <button type="button" class="tie-big" @click=${() => {
          this.big = true;
        }}>Big buttons</button>
        ${
          this.settings.voice
            ? html`<button type="button" @click=${this.say}>Say it again</button>`
            : nothing
        }
      </div>
    `;
  }

  private stage(): TemplateResult {
    const { hand, settings } = this;
    return html`
      ${settings.picture === 'row' ? this.largerStage() : nothing}
      ${
        settings.picture === 'knot' && hand !== null
          ? html`<halfhitch-knot
            controls="few"
            .kind=${hand.knot.kind}
            .tyingColour=${hand.knot.tying.colour}
            .heldColour=${hand.knot.held.colour}
            .tyingName=${hand.names.tying}
            .heldName=${hand.names.held}
          ><span slot="caption"></span></halfhitch-knot>`
          : nothing
      }
      <fieldset class="switch">
        <legend class="unseen">Picture</legend>
        ${this.pictureChoice('row', this.larger.label)} ${this.pictureChoice('knot', 'Alone')}
        ${this.pictureChoice('none', 'None')}
      </fieldset>
    `;
  }

  private pictureChoice(value: TieSettings['picture'], name: string): TemplateResult {
    return html`<label>
      <input
        type="radio"
        name="tie-picture"
        value=${value}
        .checked=${this.settings.picture === value}
        @change=${() => this.set({ picture: value })}
      />
      <span>${name}</span>
    </label>`;
  }

  private howFar(course: Course<H>, tying: Tying): TemplateResult {
    const { place } = this;
    const { total } = course;
    const left =
      place === null
        ? null
        : timeLeft(tying.times, {
            knots: total - tying.done,
            changes: course.changesBetween(tying.done, total),
          });
    return progressCard(tying, course, place, left, this.store?.lasting ?? false);
  }

  private bigDialog(
    course: Course<H>,
    tying: Tying,
    rest: TemplateResult | typeof nothing,
  ): TemplateResult {
    return html`<dialog
      class="big"
      aria-label="Big buttons"
      @keydown=${this.onHeldKey}
      @click=${this.onPointed}
      @close=${() => {
        this.big = false;
      }}
    >
      <p class="unseen" role="status">${this.news}</p>
      ${bigButtons(
        this.place === null ? null : this.hand,
        this.step,
        this.place === null,
        course,
        this.settings.voice,
        tying.done > 0,
        html`${notices(tying, course, this.elsewhere, this.noticeActions)}${rest}`,
        {
          done: this.bigDone,
          back: this.bigBack,
          runDone: this.runDone,
          sayAgain: this.say,
          close: () => {
            this.big = false;
          },
        },
      )}
    </dialog>`;
  }

  protected override updated(changes: PropertyValues): void {
    const { course, tying } = this;
    if (course !== null && tying?.ready === true) this.showPiece(course, tying, this.place);
    this.showKnot();
    if (changes.has('big')) {
      const dialog = this.querySelector<HTMLDialogElement>('dialog.big');
      if (dialog !== null && !dialog.open) {
        dialog.showModal();
        dialog.querySelector<HTMLElement>('.big-done')?.focus();
      }
    }
    const { hand } = this;
    // Between two knots, while the next one's row is fetched, nothing is said.
    if (hand === null && this.place !== null) return;
    const saying = hand === null ? null : `${hand.knot.row}/${hand.knot.order}`;
    if (saying !== this.saidFor) {
      this.saidFor = saying;
      if (this.moved) this.say();
    }
  }

  /** The knot in hand on the stage. */
  private showKnot(): void {
    const { hand, settings } = this;
    if (hand === null || settings.picture === 'none') return;
    const showing = `${settings.picture}/${hand.knot.row}/${hand.knot.order}`;
    const larger = settings.picture === 'row';
    const again = larger && this.largerIsStale(hand);
    if (this.staged === showing && !again) return;
    const stage = larger ? this.showInLarger(hand, again) : this.knotAlone;
    if (stage === null) return;
    this.staged = showing;
    void this.play(stage);
  }

  private get knotAlone(): HalfhitchKnot | null {
    return this.querySelector('halfhitch-knot');
  }

  private async play(stage: Stage): Promise<void> {
    // Once its new kind has reached the element.
    await stage.updateComplete;
    if (stage === this.knotAlone) this.knotAlone?.seek(0);
    const wanted = this.settings.play && this.moved && !this.big && !this.calm.matches;
    if (wanted) stage.play();
    else stage.pause();
  }
}

function off(is: boolean): 'true' | 'false' {
  return is ? 'true' : 'false';
}
