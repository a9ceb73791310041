import { html, nothing, type TemplateResult } from 'lit';
import type { OwnThread } from '../picture/match-threads.js';
import { numberField } from '../picture/number-field.js';
import { BORDERS, type BorderKind } from './border.js';
import { ALPHABETS } from './letter.js';
import { errorOf, type Figure, type Typed } from './measures.js';
import { usualGaps } from './set-text.js';
import {
  ALIGNMENTS,
  type Alignment,
  DIRECTIONS,
  LETTER_SIZES,
  LETTERING_LIMITS,
  type LetteringOptions,
  type LetterSize,
  type TextDirection,
} from './settings.js';

/** What is filled in, and what changes it. */
export interface LetteringWish {
  readonly options: LetteringOptions;
  readonly typed: Typed;
  /** To choose colours from. */
  readonly threads: readonly OwnThread[];
  write(text: string): void;
  /** Puts a sign where the cursor is. */
  insert(sign: string): void;
  choose(change: Partial<LetteringOptions>): void;
  fill(figure: Figure, text: string): void;
}

const SIZE_WORDS: Readonly<Record<LetterSize, string>> = {
  small: 'Small, 5',
  medium: 'Medium, 7',
  large: 'Large, 9',
};

const DIRECTION_WORDS: Readonly<Record<TextDirection, string>> = {
  across: 'Across',
  downwards: 'Downwards',
  upwards: 'Upwards',
};

const ALIGNMENT_WORDS: Readonly<Record<Alignment, string>> = {
  start: 'at the beginning',
  middle: 'in the middle',
  end: 'at the end',
};

/** Signs that few keyboards have. */
const SIGNS = ['♥', '★', '⚓'] as const;

/** What is written, in letters of which size. */
export function textFields(text: string, wish: LetteringWish): TemplateResult {
  return html`<fieldset>
    <legend>Words</legend>
    <div class="field">
      <label for="lettering-text">What to write</label>
      <textarea
        id="lettering-text"
        rows="2"
        maxlength=${LETTERING_LIMITS.maxText}
        autocomplete="off"
        spellcheck="false"
        aria-describedby="lettering-text-hint"
        .value=${text}
        @input=${(event: Event) => wish.write((event.target as HTMLTextAreaElement).value)}
      ></textarea>
      <p class="hint" id="lettering-text-hint">Each line is a line of its own.</p>
    </div>
    <div class="lettering-signs">
      ${SIGNS.map(
        (sign, i) => html`<button
          type="button"
          aria-label=${`Put in a ${['heart', 'star', 'anchor'][i]}`}
          @click=${() => wish.insert(sign)}
        >
          ${sign}
        </button>`,
      )}
    </div>
    ${choice(wish, 'size', 'Height of capitals, in knots', LETTER_SIZES, SIZE_WORDS)}
  </fieldset>`;
}

/** How the words lie on the bracelet, and how large the chart is. */
export function layFields(wish: LetteringWish): TemplateResult {
  return html`<fieldset>
    <legend>On the bracelet</legend>
    ${choice(wish, 'direction', 'Words run across the bracelet, or along it', DIRECTIONS, DIRECTION_WORDS)}
    <div class="fields">
      ${number(wish, 'columns', 'Whole width', 'columns', 'Empty: what the words take.')}
      ${number(wish, 'rows', 'Whole length', 'rows', 'Empty: what the words take.')}
      ${number(wish, 'times', 'How often', 'times')}
      ${wish.typed.times.trim() === '1' ? nothing : number(wish, 'timesGap', 'Between one time and the next', 'knots')}
    </div>
    <div class="field">
      <label for="lettering-align">Shorter lines, and words with room to spare, stand</label>
      <select
        id="lettering-align"
        @change=${(event: Event) =>
          wish.choose({ align: (event.target as HTMLSelectElement).value as Alignment })}
      >
        ${ALIGNMENTS.map(
          (align) => html`<option value=${align} .selected=${wish.options.align === align}>
            ${ALIGNMENT_WORDS[align]}
          </option>`,
        )}
      </select>
    </div>
  </fieldset>`;
}

export function colourFields(wish: LetteringWish): TemplateResult {
  return html`<fieldset>
    <legend>Colours</legend>
    <div class="fields">
      ${colour(wish, 'text', 'Letters')} ${colour(wish, 'ground', 'Ground')}
      ${wish.options.border === 'none' ? nothing : colour(wish, 'borderColour', 'Border')}
    </div>
  </fieldset>`;
}

export function borderFields(wish: LetteringWish): TemplateResult {
  const { border, borderSides } = wish.options;
  return html`<fieldset>
    <legend>Border</legend>
    <div class="fields">
      <div class="field">
        <label for="lettering-border">Kind</label>
        <select
          id="lettering-border"
          @change=${(event: Event) =>
            wish.choose({ border: (event.target as HTMLSelectElement).value as BorderKind })}
        >
          ${BORDERS.map(
            (kind) => html`<option value=${kind} .selected=${border === kind}>
              ${kind === 'none' ? 'no border' : kind}
            </option>`,
          )}
        </select>
      </div>
      ${
        border === 'none'
          ? nothing
          : html`<div class="field">
              <label for="lettering-sides">Where</label>
              <select
                id="lettering-sides"
                @change=${(event: Event) =>
                  wish.choose({
                    borderSides:
                      (event.target as HTMLSelectElement).value === 'round' ? 'round' : 'two',
                  })}
              >
                <option value="two" .selected=${borderSides === 'two'}>
                  over and under the words
                </option>
                <option value="round" .selected=${borderSides === 'round'}>all round</option>
              </select>
            </div>`
      }
      ${number(wish, 'margin', 'Margin round the words', 'knots')}
    </div>
  </fieldset>`;
}

/** What is left between letters, words and lines. */
export function gapFields(wish: LetteringWish): TemplateResult {
  const usual = usualGaps(ALPHABETS[wish.options.size]);
  const wrong = (['letterGap', 'wordGap', 'lineGap'] as const).some(
    (figure) => errorOf(wish.typed, figure) !== undefined,
  );
  return html`<details class="fold" ?open=${wrong}>
    <summary>Gaps</summary>
    <fieldset>
      <legend class="unseen">Gaps</legend>
      <div class="fields">
        ${number(wish, 'letterGap', 'Between letters', 'knots', `Empty: ${usual.letter}.`)}
        ${number(wish, 'wordGap', 'Between words', 'knots', `Empty: ${usual.word}.`)}
        ${number(wish, 'lineGap', 'Between lines', 'knots', `Empty: ${usual.line}.`)}
      </div>
    </fieldset>
  </details>`;
}

function number(
  wish: LetteringWish,
  figure: Figure,
  label: string,
  unit: string,
  hint?: string,
): TemplateResult {
  return numberField({
    id: `lettering-${figure}`,
    label,
    unit,
    ...(hint === undefined ? {} : { hint }),
    value: wish.typed[figure],
    error: errorOf(wish.typed, figure),
    fill: (text) => wish.fill(figure, text),
  });
}

function choice<N extends 'size' | 'direction'>(
  wish: LetteringWish,
  name: N,
  legend: string,
  choices: readonly LetteringOptions[N][],
  words: Readonly<Record<LetteringOptions[N], string>>,
): TemplateResult {
  return html`<div class="lettering-choice" role="radiogroup" aria-labelledby="lettering-${name}">
    <p id="lettering-${name}">${legend}</p>
    <div class="switch">
      ${choices.map(
        (choice) => html`<label>
          <input
            type="radio"
            name="lettering-${name}"
            .checked=${wish.options[name] === choice}
            @change=${() => wish.choose({ [name]: choice } as Partial<LetteringOptions>)}
          />
          ${words[choice]}
        </label>`,
      )}
    </div>
  </div>`;
}

function colour(
  wish: LetteringWish,
  which: 'text' | 'ground' | 'borderColour',
  label: string,
): TemplateResult {
  const thread = wish.options[which];
  const known = wish.threads.some(({ hex }) => hex === thread.hex);
  const own = (hex: string): void => wish.choose({ [which]: { hex, name: '' } });
  return html`<div class="field lettering-colour">
    <label for="lettering-colour-${which}">${label}</label>
    <div class="lettering-thread">
      <select
        id="lettering-colour-${which}"
        @change=${(event: Event) => {
          const hex = (event.target as HTMLSelectElement).value;
          const chosen = wish.threads.find((one) => one.hex === hex);
          if (chosen === undefined) own(thread.hex);
          else wish.choose({ [which]: { hex: chosen.hex, name: chosen.name } });
        }}
      >
        ${wish.threads.map(
          ({ hex, name }) => html`<option value=${hex} .selected=${hex === thread.hex}>
            ${name || hex}
          </option>`,
        )}
        ${known ? nothing : html`<option value="own" .selected=${true}>${thread.hex}</option>`}
      </select>
      <input
        type="color"
        aria-label=${`Another colour for ${label.toLowerCase()}`}
        .value=${thread.hex}
        @input=${(event: Event) => own((event.target as HTMLInputElement).value.toLowerCase())}
      />
    </div>
  </div>`;
}
