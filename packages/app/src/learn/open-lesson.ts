import { type Lesson, type LessonName, lessonList } from '@halfhitch/simulator/lessons';
import { html, nothing, type TemplateResult } from 'lit';
import type { LearnChoices } from './choices.js';
import type { TaughtPiece } from './lesson-place.js';
import type { LessonPlace } from './show-lesson.js';
import type { LearnWords } from './words.js';

/** The lesson that is open. */
export type Open =
  | { readonly from: 'list'; readonly name: LessonName }
  | {
      readonly from: 'chart';
      readonly lesson: Lesson;
      readonly place: LessonPlace;
      readonly piece: TaughtPiece;
    };

export interface LessonWish {
  readonly choices: LearnChoices;
  readonly say: LearnWords;
  /** Whether another view has asked for the lesson. */
  readonly asked: boolean;
  readonly ended: boolean;
  /** The open chart as it is now. */
  readonly piece: TaughtPiece | null;
  close(): void;
  onEnd(event: Event): void;
  /** Another page of the lesson is shown. */
  onPage(): void;
  openLesson(name: LessonName): void;
}

/** A lesson, and the ways back and on. */
export function openLesson(open: Open, wish: LessonWish): TemplateResult {
  const { say } = wish;
  const { language, hand } = wish.choices;
  return html`
    <p class="learn-ways">
      <button type="button" class="learn-back" @click=${() => wish.close()}>${say('all')}</button>
      ${
        wish.asked
          ? html`<button type="button" @click=${() => history.back()}>${say('return')}</button>`
          : nothing
      }
    </p>
    ${open.from === 'chart' ? about(open, wish) : nothing}
    <halfhitch-lesson
      class="learn-lesson"
      lang=${language}
      .name=${open.from === 'list' ? open.name : ''}
      .hand=${hand}
      .lesson=${open.from === 'chart' ? open.lesson : null}
      @halfhitch-end=${wish.onEnd}
      @halfhitch-page=${wish.onPage}
    ></halfhitch-lesson>
    <div class="learn-end" role="status">
      ${wish.ended ? html`<p>${say('end')}</p>` : nothing}
    </div>
    ${wish.ended ? onward(open, wish) : nothing}
  `;
}

function about(
  { place, piece }: Open & { readonly from: 'chart' },
  { say, choices, piece: now }: LessonWish,
): TemplateResult {
  return html`
    <p class="learn-place">${say('place', { row: place.row + 1, column: place.column + 1 })}</p>
    ${piece === now ? nothing : html`<p class="note">${say('changed')}</p>`}
    ${choices.hand === 'left' ? html`<p class="hint">${say('mirrored')}</p>` : nothing}
  `;
}

function onward(open: Open, wish: LessonWish): TemplateResult | typeof nothing {
  if (open.from === 'chart') return nothing;
  const { language, hand } = wish.choices;
  const all = lessonList({ lang: language, hand }).flatMap(({ lessons }) => lessons);
  const next = all[all.findIndex(({ name }) => name === open.name) + 1];
  if (next === undefined) return nothing;
  return html`<button type="button" class="primary" @click=${() => wish.openLesson(next.name)}>
    ${wish.say('next', { title: next.title })}
  </button>`;
}
