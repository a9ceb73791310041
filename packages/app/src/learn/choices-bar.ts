import { html, type TemplateResult } from 'lit';
import { LANGUAGES, type Language, type LearnChoices } from './choices.js';
import type { LearnWords } from './words.js';

const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: 'English', de: 'Deutsch' };

/** The language and the hand of the lessons. */
export function choicesBar(
  choices: LearnChoices,
  say: LearnWords,
  choose: (change: Partial<LearnChoices>) => void,
): TemplateResult {
  return html`<div class="learn-choices">
    <label>
      ${say('language')}
      <select
        @change=${(event: Event) => {
          const { value } = event.target as HTMLSelectElement;
          choose({ language: LANGUAGES.find((one) => one === value) ?? 'en' });
        }}
      >
        ${LANGUAGES.map(
          (one) => html`<option value=${one} lang=${one} ?selected=${one === choices.language}>
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
          choose({
            hand: (event.target as HTMLInputElement).checked ? 'left' : 'right',
          });
        }}
      />
      ${say('left')}
    </label>
  </div>`;
}
