import {
  type LessonName,
  type ListedLesson,
  lessonList,
  lessonTitle,
} from '@halfhitch/simulator/lessons';
import { html, nothing, type TemplateResult } from 'lit';
import { figures } from '../view/figures.js';
import type { LearnChoices } from './choices.js';
import type { TaughtCase, TaughtPiece } from './lesson-place.js';
import type { LessonPlace } from './show-lesson.js';
import type { LearnWords } from './words.js';

export interface ListWish {
  readonly choices: LearnChoices;
  readonly say: LearnWords;
  /** The open chart; null before it is worked out. */
  readonly piece: TaughtPiece | null;
  /** What of it there are lessons about; null where it is too large to be looked through. */
  readonly cases: readonly TaughtCase[] | null;
  openLesson(name: LessonName): void;
  /** @param from what the list returns the focus to */
  openPlace(place: LessonPlace, from: string): void;
}

/** All lessons, and those made from the open chart. */
export function lessonLists(wish: ListWish): TemplateResult {
  const { say } = wish;
  const { language, hand } = wish.choices;
  return html`
    <p class="learn-intro">${say('intro')}</p>
    ${lessonList({ lang: language, hand }).map(
      ({ title, lessons }) => html`<h3>${title}</h3>
        <ol class="lessons">
          ${lessons.map((lesson) => listed(lesson, wish))}
        </ol>`,
    )}
    <h3>${say('here')}</h3>
    ${fromChart(wish)}
  `;
}

function listed({ name, title, asks }: ListedLesson, wish: ListWish): TemplateResult {
  const learned = wish.choices.learned.includes(name);
  return html`<li>
    <button
      type="button"
      class="lesson-card"
      data-from=${name}
      @click=${() => wish.openLesson(name)}
    >
      <span class="lesson-name">${title}</span>
      <span class="lesson-asks">${asks}</span>
      ${learned ? html`<span class="lesson-learned">${wish.say('learned')}</span>` : nothing}
    </button>
  </li>`;
}

function fromChart(wish: ListWish): TemplateResult {
  const { piece, cases, choices, say } = wish;
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
                @click=${() => wish.openPlace({ row, column }, from)}
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
    ${chooser(piece, wish)}
  `;
}

function chooser(piece: TaughtPiece, { say, openPlace }: ListWish): TemplateResult {
  const field = (name: 'row' | 'column', most: number): TemplateResult => html`<label>
    ${say(name)}
    <input type="number" name=${name} inputmode="numeric" min="1" max=${most} value="1" required />
  </label>`;
  return html`<form
    class="learn-chooser"
    @submit=${(event: SubmitEvent) => {
      event.preventDefault();
      const values = new FormData(event.target as HTMLFormElement);
      const place = {
        row: Number(values.get('row')) - 1,
        column: Number(values.get('column')) - 1,
      };
      openPlace(place, 'chosen');
    }}
  >
    <fieldset>
      <legend>${say('choose')}</legend>
      ${field('row', piece.chart.rows)} ${field('column', piece.chart.columns)}
      <button type="submit" data-from="chosen">${say('show')}</button>
    </fieldset>
  </form>`;
}
