import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { Answer, Lesson, LessonPage, Question } from '../lessons/lesson.js';
import { directionOfText, languageOf } from '../messages/catalogue.js';
import type { LessonWords } from '../messages/lesson-words.js';
import { AttributeWarnings } from './attribute-warnings.js';
import { lessonShows } from './lesson-shows.js';
import { lessonStyles } from './lesson-styles.js';

/** Of `halfhitch-answer`. */
export interface AnswerDetail {
  /** From 0. */
  readonly page: number;
  readonly choice: number;
  readonly right: boolean;
}

/**
 * `<halfhitch-lesson>`: a short sequence of pages with text, moving pictures, and questions that
 * are answered by doing; every answer shows what comes of it.
 *
 * @attr name - name of a lesson, such as turn
 * @attr page - page that is open, from 1
 * @attr hand - left for the mirror image of everything
 * @attr lang - en or de; default: the language of the page
 * @fires halfhitch-answer - a choice was made; detail: page, choice, right
 * @fires halfhitch-page - another page was opened; detail: page
 * @fires halfhitch-end - the last page has been left or its question answered rightly
 * @slot before - above the lesson
 * @slot after - below the lesson
 * @csspart shows - the pictures of a page
 * @csspart fabric - a picture of the knotted result
 * @csspart choice - a choice of a question
 * @csspart answer - what comes of a choice
 * @csspart button - a button to another page
 * @cssprop --halfhitch-ground - behind threads
 * @cssprop --halfhitch-ink - text
 * @cssprop --halfhitch-faint - text that matters less
 * @cssprop --halfhitch-panel - behind buttons and labels
 * @cssprop --halfhitch-line - edges of buttons
 * @cssprop --halfhitch-accent - what is chosen or in focus, and the button to go on
 * @cssprop --halfhitch-on-accent - text on that
 * @cssprop --halfhitch-radius - corners of pictures
 */
export class HalfhitchLesson extends LitElement {
  static override styles = lessonStyles;

  static override properties: PropertyDeclarations = {
    name: { reflect: true },
    page: { type: Number, reflect: true },
    hand: { reflect: true },
    lang: { reflect: true },
    lesson: { attribute: false, noAccessor: true },
    shown: { state: true },
    chosen: { state: true },
  };

  declare name: string;
  declare page: number;
  declare hand: 'right' | 'left';
  declare protected shown: Lesson | null;
  declare protected chosen: number;

  private readonly warnings = new AttributeWarnings(this);
  private given: Lesson | null = null;
  private say: LessonWords | null = null;
  /** Answers worked out so far, by question and choice: pictures keep their places. */
  private answers = new Map<string, Answer>();
  private wanted = '';

  constructor() {
    super();
    this.name = '';
    this.page = 1;
    this.hand = 'right';
    this.shown = null;
    this.chosen = -1;
  }

  /** A lesson made by `lessonFor` or `lessonNamed`; it goes before `name`. */
  get lesson(): Lesson | null {
    return this.given;
  }
  set lesson(lesson: Lesson | null) {
    const before = this.given;
    this.given = lesson;
    this.requestUpdate('lesson', before);
  }

  get pages(): number {
    return this.shown?.pages.length ?? 0;
  }

  next(): void {
    this.go(this.page + 1);
  }

  back(): void {
    this.go(this.page - 1);
  }

  /** Opens a page, from 1; beyond the last one the lesson ends. */
  go(page: number): void {
    if (this.shown === null) return;
    if (page > this.pages) {
      this.fire('halfhitch-end', null);
      return;
    }
    this.page = Math.max(1, page);
    this.focusHeading = true;
  }
  private focusHeading = false;

  /** Makes a choice of the question of this page, from 0. */
  choose(choice: number): void {
    const question = this.pageNow?.question ?? null;
    const chosen = question?.choices[choice];
    if (question === null || chosen === undefined) return;
    this.chosen = choice;
    const { right } = chosen;
    this.fire('halfhitch-answer', { page: this.page - 1, choice, right } satisfies AnswerDetail);
    if (right && this.page === this.pages) this.fire('halfhitch-end', null);
  }

  protected override willUpdate(changes: PropertyValues): void {
    void this.load();
    if (changes.has('hand')) this.warnings.oneOf('hand', this.hand, ['right', 'left']);
    if (changes.has('page')) {
      this.chosen = -1;
      if (!Number.isInteger(this.page) || this.page < 1) this.page = 1;
      if (this.pages > 0 && this.page > this.pages) this.page = this.pages;
      if (changes.get('page') !== undefined) this.fire('halfhitch-page', { page: this.page - 1 });
    }
  }

  protected override updated(): void {
    if (!this.focusHeading) return;
    this.focusHeading = false;
    this.renderRoot.querySelector<HTMLElement>('.page-name')?.focus();
  }

  /** Loads what lessons are made from: they are large, and most pages show none. */
  private async load(): Promise<void> {
    const language = languageOf(this);
    const key = JSON.stringify([this.given === null ? this.name : null, this.hand, language]);
    if (key === this.wanted && (this.given === null || this.given === this.shown)) return;
    this.wanted = key;
    const { isLessonName, LESSON_MESSAGES, lessonNamed } = await import('../lessons.js');
    if (key !== this.wanted) return;
    const { given, name, hand } = this;
    this.say = LESSON_MESSAGES.in(given?.language ?? language);
    this.answers = new Map();
    this.chosen = -1;
    this.shown = given ?? (isLessonName(name) ? lessonNamed(name, { lang: language, hand }) : null);
    if (this.shown !== null) this.page = Math.min(this.page, this.pages);
    this.requestUpdate();
  }

  private get pageNow(): LessonPage | undefined {
    return this.shown?.pages[this.page - 1];
  }

  protected override render(): TemplateResult | typeof nothing {
    const { say, shown, pageNow } = this;
    if (say === null) return nothing;
    if (shown === null || pageNow === undefined) return html`<p>${say('lesson.none')}</p>`;
    const { page, pages } = this;
    return html`
      <slot name="before"></slot>
      <section lang=${shown.language} dir=${directionOfText(shown.language)} aria-labelledby="title">
        <h2 id="title">${shown.title}</h2>
        <h3 class="where page-name" tabindex="-1">${say('lesson.page', { page, pages })}</h3>
        ${pageNow.text.map((paragraph) => html`<p class="text">${paragraph}</p>`)}
        ${lessonShows(pageNow.shows)}
        ${pageNow.question === null ? nothing : this.question(pageNow.question, say)}
        <nav aria-labelledby="title">
          <button
            part="button"
            aria-disabled=${page <= 1 ? 'true' : 'false'}
            @click=${() => this.back()}
          >
            ${say('lesson.before')}
          </button>
          ${
            page < pages
              ? html`<button class="next" part="button" @click=${() => this.next()}>
                ${say('lesson.next')}
              </button>`
              : html`<button part="button" @click=${() => this.go(1)}>${say('lesson.again')}</button>`
          }
        </nav>
      </section>
      <slot name="after"></slot>
    `;
  }

  private question(question: Question, say: LessonWords): TemplateResult {
    const answer = this.answerTo(question);
    return html`
      <fieldset>
        <legend>${question.prompt}</legend>
        <p class="hint">${say('lesson.choose')}</p>
        <div class="choices">
          ${question.choices.map(
            (choice, i) => html`<button
              part="choice"
              aria-pressed=${i === this.chosen ? 'true' : 'false'}
              @click=${() => this.choose(i)}
            >
              ${choice.text}
            </button>`,
          )}
        </div>
      </fieldset>
      <div class="answer ${answer?.right ? 'right' : ''}" part="answer" role="status">
        ${
          answer === null
            ? nothing
            : html`${answer.text.map((line, i) => html`<p class=${i === 0 ? 'verdict' : ''}>${line}</p>`)}
              ${
                answer.findings.length === 0
                  ? nothing
                  : html`<p>${say('lesson.check')}</p>
                    <ul>
                      ${answer.findings.map((finding) => html`<li>${finding}</li>`)}
                    </ul>`
              }`
        }
      </div>
      ${
        answer === null
          ? nothing
          : html`${
              answer.findings.length > 0
                ? html`<p class="hint">${say('lesson.marked')}</p>`
                : nothing
            }${lessonShows(answer.shows)}`
      }
    `;
  }

  private answerTo(question: Question): Answer | null {
    const choice = question.choices[this.chosen];
    if (choice === undefined) return null;
    const key = `${this.page} ${this.chosen}`;
    const answer = this.answers.get(key) ?? choice.answer();
    this.answers.set(key, answer);
    return answer;
  }

  private fire(name: string, detail: AnswerDetail | { readonly page: number } | null): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }
}
