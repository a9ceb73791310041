/**
 * `<halfhitch-learn>`: all lessons, one of which is open at a time, and lessons made from the open
 * chart.
 *
 * - `session`: the shared session, or null before there is one; of it the view needs `piece`,
 *   `busy` and the event `piece`.
 * - `place`: set it to `{ row, column }`, from 0, and the lesson about that knot of the open chart is
 *   opened, at once or as soon as the chart has been worked out. Each new object opens it anew.
 *   Views that offer this call `showLesson` of show-lesson.ts, and need not know this element.
 *
 * Load it with `import('../learn/learn-view.js')` when its tab is first opened.
 */
import '@halfhitch/simulator';
import { InputError } from '@halfhitch/core';
import type { LessonName } from '@halfhitch/simulator/lessons';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { PageElement } from '../view/page-element.js';
import { keepChoices, keptChoices, type LearnChoices } from './choices.js';
import { choicesBar } from './choices-bar.js';
import { type ListWish, lessonLists } from './lesson-lists.js';
import { lessonPlace, type TaughtCase, type TaughtPiece, taughtCases } from './lesson-place.js';
import { takeRequest } from './lesson-requests.js';
import { type LessonWish, type Open, openLesson } from './open-lesson.js';
import { type LessonPlace, SHOW_LESSON } from './show-lesson.js';
import { type LearnWords, learnWords } from './words.js';

/** What of the shared session this view needs. */
export interface LearnSession extends EventTarget {
  readonly piece: TaughtPiece | null;
  /** Whether the chart has changed and is being worked out. */
  readonly busy: boolean;
}

export class LearnView extends PageElement {
  static override properties = {
    session: { attribute: false },
    place: { attribute: false },
    choices: { state: true },
    open: { state: true },
    ended: { state: true },
    problem: { state: true },
    piece: { state: true },
    seen: { state: true },
  };

  declare session: LearnSession | null;
  declare place: LessonPlace | null;
  declare private choices: LearnChoices;
  declare private open: Open | null;
  declare private ended: boolean;
  declare private problem: string;
  declare private piece: TaughtPiece | null;
  /** Whether the view is in sight: a chart is not searched for nobody. */
  declare private seen: boolean;

  private cases: readonly TaughtCase[] | null = [];
  private casesOf: TaughtPiece | null = null;
  /** A place that waits for the chart to be worked out. */
  private wanted: LessonPlace | null = null;
  private focusNext: 'lesson' | 'list' | null = null;
  /** What the list returns the focus to. */
  private cameFrom = '';
  private sight: IntersectionObserver | null = null;
  /** Whether another view has asked for the lesson that is open. */
  private asked = false;

  constructor() {
    super();
    this.session = null;
    this.place = null;
    this.choices = keptChoices();
    this.open = null;
    this.ended = false;
    this.problem = '';
    this.piece = null;
    this.seen = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.sight = new IntersectionObserver((entries) => {
      this.seen = entries.at(-1)?.isIntersecting ?? false;
    });
    this.sight.observe(this);
    this.listen(this.session);
    addEventListener(SHOW_LESSON, this.onRequest);
    this.onRequest();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sight?.disconnect();
    this.sight = null;
    this.listen(null);
    removeEventListener(SHOW_LESSON, this.onRequest);
  }

  private readonly onRequest = (): void => {
    const place = takeRequest();
    if (place === null) return;
    this.asked = true;
    this.cameFrom = '';
    this.openPlace(place);
  };

  /** Opens one of the lessons of the list. */
  openLesson(name: LessonName): void {
    this.open = { from: 'list', name };
    this.asked = false;
    this.ended = false;
    this.problem = '';
    this.wanted = null;
    this.cameFrom = name;
    this.focusNext = 'lesson';
  }

  /** Opens the lesson about a knot of the open chart, once that is worked out. */
  openPlace(place: LessonPlace): void {
    this.wanted = place;
    this.problem = '';
    this.takePiece();
  }

  private listened: LearnSession | null = null;

  private listen(session: LearnSession | null): void {
    this.listened?.removeEventListener('piece', this.takePiece);
    this.listened?.removeEventListener('busy', this.takePiece);
    this.listened = session;
    session?.addEventListener('piece', this.takePiece);
    session?.addEventListener('busy', this.takePiece);
    this.takePiece();
  }

  private readonly takePiece = (): void => {
    const { session, wanted } = this;
    this.piece = session?.piece ?? null;
    if (wanted === null || this.piece === null || session === null || session.busy) return;
    this.wanted = null;
    this.make(wanted, this.piece);
  };

  private make(place: LessonPlace, piece: TaughtPiece): void {
    try {
      const lesson = lessonPlace(piece, place, { lang: this.choices.language });
      this.open = { from: 'chart', lesson, place, piece };
      this.ended = false;
      this.problem = '';
      this.focusNext = 'lesson';
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      this.problem = error.message;
    }
  }

  protected override willUpdate(changes: PropertyValues): void {
    if (changes.has('session') && this.isConnected) this.listen(this.session);
    if (changes.has('place') && this.place !== null) this.openPlace(this.place);
    if (this.open !== null || !this.seen || this.piece === this.casesOf) return;
    this.casesOf = this.piece;
    try {
      this.cases = this.piece === null ? [] : taughtCases(this.piece);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      this.cases = [];
    }
  }

  protected override updated(): void {
    const { focusNext } = this;
    if (focusNext === null) return;
    this.focusNext = null;
    const back = this.querySelector<HTMLElement>(
      focusNext === 'lesson' ? '.learn-back' : `[data-from="${CSS.escape(this.cameFrom)}"]`,
    );
    (back ?? this.querySelector<HTMLElement>('.learn-title'))?.focus();
    if (focusNext === 'lesson') this.scrollIntoView({ block: 'start' });
  }

  private choose(choices: Partial<LearnChoices>): void {
    this.choices = { ...this.choices, ...choices };
    keepChoices(this.choices);
    const { open } = this;
    if (open?.from === 'chart' && choices.language !== undefined) this.make(open.place, open.piece);
  }

  private close(): void {
    this.open = null;
    this.asked = false;
    this.wanted = null;
    this.focusNext = 'list';
  }

  private readonly onEnd = (event: Event): void => {
    // Pictures in the lesson end too.
    if (!(event.target instanceof HTMLElement) || event.target.localName !== 'halfhitch-lesson') {
      return;
    }
    this.ended = true;
    const { open, choices } = this;
    if (open?.from !== 'list' || choices.learned.includes(open.name)) return;
    this.choose({ learned: [...choices.learned, open.name] });
  };

  private listed(say: LearnWords): ListWish {
    const { choices, piece, cases } = this;
    return {
      choices,
      say,
      piece,
      cases,
      openLesson: (name) => this.openLesson(name),
      openPlace: (place, from) => {
        this.cameFrom = from;
        this.openPlace(place);
      },
    };
  }

  private shown(say: LearnWords): LessonWish {
    const { choices, asked, ended, piece } = this;
    return {
      choices,
      say,
      asked,
      ended,
      piece,
      close: () => this.close(),
      onEnd: this.onEnd,
      onPage: () => {
        this.ended = false;
      },
      openLesson: (name) => this.openLesson(name),
    };
  }

  protected override render(): TemplateResult {
    const { open, choices, problem } = this;
    const say = learnWords(choices.language);
    return html`<section class="card learn" lang=${choices.language} aria-labelledby="learn-title">
      <div class="bar">
        <h2 id="learn-title" class="learn-title" tabindex="-1">${say('title')}</h2>
        ${choicesBar(choices, say, (change) => this.choose(change))}
      </div>
      <div role="status">
        ${problem === '' ? nothing : html`<p class="problem">${problem}</p>`}
        ${this.wanted === null ? nothing : html`<p class="hint">${say('wait')}</p>`}
      </div>
      ${open === null ? lessonLists(this.listed(say)) : openLesson(open, this.shown(say))}
    </section>`;
  }
}

if (!customElements.get('halfhitch-learn')) customElements.define('halfhitch-learn', LearnView);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-learn': LearnView;
  }
}
