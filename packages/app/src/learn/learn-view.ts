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
import { figures } from '../view/figures.js';
import '@halfhitch/simulator';
import { InputError } from '@halfhitch/core';
import {
  type Lesson,
  type LessonName,
  type ListedLesson,
  lessonList,
  lessonTitle,
} from '@halfhitch/simulator/lessons';
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import {
  keepChoices,
  keptChoices,
  LANGUAGES,
  type Language,
  type LearnChoices,
} from './choices.js';
import { lessonPlace, type TaughtCase, type TaughtPiece, taughtCases } from './lesson-place.js';
import { takeRequest } from './lesson-requests.js';
import { type LessonPlace, SHOW_LESSON } from './show-lesson.js';
import { type LearnWords, learnWords } from './words.js';

/** What of the shared session this view needs. */
export interface LearnSession extends EventTarget {
  readonly piece: TaughtPiece | null;
  /** Whether the chart has changed and is being worked out. */
  readonly busy: boolean;
}

/** The lesson that is open. */
type Open =
  | { readonly from: 'list'; readonly name: LessonName }
  | {
      readonly from: 'chart';
      readonly lesson: Lesson;
      readonly place: LessonPlace;
      readonly piece: TaughtPiece;
    };

const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: 'English', de: 'Deutsch' };

export class LearnView extends LitElement {
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

  /** In the page itself, as all of it is. */
  protected override createRenderRoot(): HTMLElement {
    return this;
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

  protected override render(): TemplateResult {
    const { open, choices, problem } = this;
    const say = learnWords(choices.language);
    return html`<section class="card learn" lang=${choices.language} aria-labelledby="learn-title">
      <div class="bar">
        <h2 id="learn-title" class="learn-title" tabindex="-1">${say('title')}</h2>
        <div class="learn-choices">
          <label>
            ${say('language')}
            <select
              @change=${(event: Event) => {
                const { value } = event.target as HTMLSelectElement;
                this.choose({ language: LANGUAGES.find((one) => one === value) ?? 'en' });
              }}
            >
              ${LANGUAGES.map(
                (
                  one,
                ) => html`<option value=${one} lang=${one} ?selected=${one === choices.language}>
                  ${LANGUAGE_NAMES[one]}
                </option>`,
              )}
            </select>
          </label>
          <label class="check">
            <input
              type="checkbox"
              .checked=${choices.hand === 'left'}
              @change=${(event: Event) => {
                this.choose({
                  hand: (event.target as HTMLInputElement).checked ? 'left' : 'right',
                });
              }}
            />
            ${say('left')}
          </label>
        </div>
      </div>
      <div role="status">
        ${problem === '' ? nothing : html`<p class="problem">${problem}</p>`}
        ${this.wanted === null ? nothing : html`<p class="hint">${say('wait')}</p>`}
      </div>
      ${open === null ? this.list(say) : this.lesson(open, say)}
    </section>`;
  }

  private list(say: LearnWords): TemplateResult {
    const { language, hand } = this.choices;
    return html`
      <p class="learn-intro">${say('intro')}</p>
      ${lessonList({ lang: language, hand }).map(
        ({ title, lessons }) => html`<h3>${title}</h3>
          <ol class="lessons">
            ${lessons.map((lesson) => this.listed(lesson, say))}
          </ol>`,
      )}
      <h3>${say('here')}</h3>
      ${this.fromChart(say)}
    `;
  }

  private listed({ name, title, asks }: ListedLesson, say: LearnWords): TemplateResult {
    const learned = this.choices.learned.includes(name);
    return html`<li>
      <button
        type="button"
        class="lesson-card"
        data-from=${name}
        @click=${() => this.openLesson(name)}
      >
        <span class="lesson-name">${title}</span>
        <span class="lesson-asks">${asks}</span>
        ${learned ? html`<span class="lesson-learned">${say('learned')}</span>` : nothing}
      </button>
    </li>`;
  }

  private fromChart(say: LearnWords): TemplateResult {
    const { piece, cases, choices } = this;
    if (piece === null) return html`<p>${say('none')}</p>`;
    return html`
      <p class="learn-intro">${say('hereIntro')}</p>
      ${
        cases === null
          ? html`<p>${say('large')}</p>`
          : html`<ol class="lessons">
            ${cases.map(({ name, row, column, knots }) => {
              const at = { row: row + 1, column: column + 1, knots: figures(knots) };
              const from = `chart-${name}`;
              return html`<li>
                <button
                  type="button"
                  class="lesson-card"
                  data-from=${from}
                  @click=${() => {
                    this.cameFrom = from;
                    this.openPlace({ row, column });
                  }}
                >
                  <span class="lesson-name">
                    ${lessonTitle(name, { lang: choices.language })}
                  </span>
                  <span class="lesson-asks">${say(knots === 1 ? 'first1' : 'first', at)}</span>
                </button>
              </li>`;
            })}
          </ol>`
      }
      ${this.chooser(piece, say)}
    `;
  }

  private chooser(piece: TaughtPiece, say: LearnWords): TemplateResult {
    const field = (name: 'row' | 'column', most: number): TemplateResult => html`<label>
      ${say(name)}
      <input type="number" name=${name} inputmode="numeric" min="1" max=${most} value="1" required />
    </label>`;
    return html`<form
      class="learn-chooser"
      @submit=${(event: SubmitEvent) => {
        event.preventDefault();
        const values = new FormData(event.target as HTMLFormElement);
        this.cameFrom = 'chosen';
        this.openPlace({
          row: Number(values.get('row')) - 1,
          column: Number(values.get('column')) - 1,
        });
      }}
    >
      <fieldset>
        <legend>${say('choose')}</legend>
        ${field('row', piece.chart.rows)} ${field('column', piece.chart.columns)}
        <button type="submit" data-from="chosen">${say('show')}</button>
      </fieldset>
    </form>`;
  }

  private lesson(open: Open, say: LearnWords): TemplateResult {
    const { language, hand } = this.choices;
    return html`
      <p class="learn-ways">
        <button type="button" class="learn-back" @click=${() => this.close()}>${say('all')}</button>
        ${
          this.asked
            ? html`<button type="button" @click=${() => history.back()}>${say('return')}</button>`
            : nothing
        }
      </p>
      ${open.from === 'chart' ? this.about(open, say) : nothing}
      <halfhitch-lesson
        class="learn-lesson"
        lang=${language}
        .name=${open.from === 'list' ? open.name : ''}
        .hand=${hand}
        .lesson=${open.from === 'chart' ? open.lesson : null}
        @halfhitch-end=${this.onEnd}
        @halfhitch-page=${() => {
          this.ended = false;
        }}
      ></halfhitch-lesson>
      <div class="learn-end" role="status">
        ${this.ended ? html`<p>${say('end')}</p>` : nothing}
      </div>
      ${this.ended ? this.onward(open, say) : nothing}
    `;
  }

  private about(
    { place, piece }: Open & { readonly from: 'chart' },
    say: LearnWords,
  ): TemplateResult {
    return html`
      <p class="learn-place">${say('place', { row: place.row + 1, column: place.column + 1 })}</p>
      ${piece === this.piece ? nothing : html`<p class="note">${say('changed')}</p>`}
      ${this.choices.hand === 'left' ? html`<p class="hint">${say('mirrored')}</p>` : nothing}
    `;
  }

  private onward(open: Open, say: LearnWords): TemplateResult | typeof nothing {
    if (open.from === 'chart') return nothing;
    const { language, hand } = this.choices;
    const all = lessonList({ lang: language, hand }).flatMap(({ lessons }) => lessons);
    const next = all[all.findIndex(({ name }) => name === open.name) + 1];
    if (next === undefined) return nothing;
    return html`<button type="button" class="primary" @click=${() => this.openLesson(next.name)}>
      ${say('next', { title: next.title })}
    </button>`;
  }
}

if (!customElements.get('halfhitch-learn')) customElements.define('halfhitch-learn', LearnView);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-learn': LearnView;
  }
}
