import { CHART_LIMITS, type Chart, InputError } from '@halfhitch/core';
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { figures } from '../view/figures.js';
import '../picture/chart-preview.js';
import { colourWarnings } from '../colour/hard-to-tell.js';
import type { Lying } from '../picture/chart-preview.js';
import { PictureDesk } from '../picture/desk.js';
import type { OwnThread } from '../picture/match-threads.js';
import { numberField, readWhole } from '../picture/number-field.js';
import { threadChoices } from '../picture/threads-field.js';
import { USUAL_THREADS } from '../picture/usual-threads.js';
import { BORDERS, type BorderKind } from './border.js';
import { ALPHABETS, letter } from './letter.js';
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
  USUAL_LETTERING,
} from './settings.js';

type Figure =
  | 'letterGap'
  | 'wordGap'
  | 'lineGap'
  | 'times'
  | 'timesGap'
  | 'margin'
  | 'columns'
  | 'rows';

const LIMITS: Readonly<Record<Figure, readonly [least: number, most: number]>> = {
  letterGap: [0, LETTERING_LIMITS.maxGap],
  wordGap: [0, LETTERING_LIMITS.maxGap],
  lineGap: [0, LETTERING_LIMITS.maxGap],
  times: [1, LETTERING_LIMITS.maxTimes],
  timesGap: [0, LETTERING_LIMITS.maxGap],
  margin: [0, LETTERING_LIMITS.maxGap],
  columns: [CHART_LIMITS.minColumns, CHART_LIMITS.maxColumns],
  rows: [CHART_LIMITS.minRows, CHART_LIMITS.maxRows],
};

/** Left empty, these are as suits the letters. */
const MAY_BE_EMPTY: ReadonlySet<Figure> = new Set([
  'letterGap',
  'wordGap',
  'lineGap',
  'columns',
  'rows',
]);

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

const LYING: Readonly<Record<TextDirection, Lying>> = {
  across: 'hanging',
  downwards: 'first-row-left',
  upwards: 'first-row-right',
};

/** Makes a chart of words. Fires `chart-made` with the chart and what was done. */
export class LetteringPanel extends LitElement {
  static override properties = {
    colours: { attribute: false },
    aspect: { attribute: false },
    text: { state: true },
    options: { state: true },
    typed: { state: true },
    chart: { state: true },
    problem: { state: true },
    tight: { state: true },
  };

  /** Threads that the open chart has: its first is the ground to begin with, its second the text. */
  declare colours: readonly OwnThread[];
  /** Width of a knot by its height; null for that of tight knots of one thread. */
  declare aspect: number | null;
  declare private text: string;
  declare private options: LetteringOptions;
  declare private typed: Readonly<Record<Figure, string>>;
  declare private chart: Chart | null;
  /** Why there is no chart of what is written now; empty where there is one. */
  declare private problem: string;
  declare private tight: number;

  private readonly desk = new PictureDesk();
  private threads: readonly OwnThread[] = USUAL_THREADS;

  constructor() {
    super();
    this.colours = [];
    this.aspect = null;
    this.text = 'Heron';
    this.options = USUAL_LETTERING;
    this.typed = {
      letterGap: '',
      wordGap: '',
      lineGap: '',
      times: String(USUAL_LETTERING.times),
      timesGap: String(USUAL_LETTERING.timesGap),
      margin: String(USUAL_LETTERING.margin),
      columns: '',
      rows: '',
    };
    this.chart = null;
    this.problem = '';
    this.tight = 1;
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.aspect === null) void this.measureKnot();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.desk.close();
  }

  protected override willUpdate(changes: PropertyValues): void {
    if (changes.has('colours')) {
      this.threads = threadChoices(this.colours, USUAL_THREADS);
      const [ground, text, border] = this.colours;
      if (ground !== undefined && text !== undefined) {
        this.options = { ...this.options, ground, text, borderColour: border ?? text };
      }
    }
    if (changes.has('text') || changes.has('options') || changes.has('typed')) this.set();
  }

  private async measureKnot(): Promise<void> {
    try {
      this.tight = (await this.desk.ask({ ask: 'aspect', edge: 'straight' })) ?? this.tight;
    } catch {
      // Square knots then: the chart is the same.
    }
  }

  private errorOf(figure: Figure): string | undefined {
    const typed = this.typed[figure];
    if (typed.trim() === '' && MAY_BE_EMPTY.has(figure)) return undefined;
    const read = readWhole(typed, ...LIMITS[figure]);
    return typeof read === 'string' ? read : undefined;
  }

  /** Sets what is written now; what was there before stays in sight while it can't be set. */
  private set(): void {
    const figures = Object.keys(LIMITS) as Figure[];
    if (figures.some((figure) => this.errorOf(figure) !== undefined)) {
      this.problem = 'One of the figures is not right.';
      return;
    }
    const value = (figure: Figure): number | null =>
      this.typed[figure].trim() === '' ? null : Number(this.typed[figure]);
    try {
      this.chart = letter(this.text, {
        ...this.options,
        letterGap: value('letterGap'),
        wordGap: value('wordGap'),
        lineGap: value('lineGap'),
        times: value('times') ?? 1,
        timesGap: value('timesGap') ?? 0,
        margin: value('margin') ?? 0,
        columns: value('columns'),
        rows: value('rows'),
      });
      this.problem = '';
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      this.problem = error.message;
    }
  }

  private choose(change: Partial<LetteringOptions>): void {
    this.options = { ...this.options, ...change };
  }

  private insert(sign: string): void {
    const area = this.querySelector('textarea');
    if (area === null) return;
    area.setRangeText(sign, area.selectionStart, area.selectionEnd, 'end');
    this.text = area.value;
    area.focus();
  }

  private readonly use = (event: Event): void => {
    event.preventDefault();
    const { chart } = this;
    if (chart === null || this.problem !== '') return;
    const detail = { chart, what: `Write ${chart.name}` };
    this.dispatchEvent(new CustomEvent('chart-made', { detail, bubbles: true }));
  };

  // ---- what is shown ----

  protected override render(): TemplateResult {
    const { chart, problem, options } = this;
    const ready = chart !== null && problem === '';
    return html`<form class="making-bench" novalidate @submit=${this.use}>
      <div class="making-side">
        <div class="making-first">${this.textFields()}</div>
        <div class="making-rest">
          ${this.layFields()} ${this.colourFields()} ${this.borderFields()} ${this.gapFields()}
        </div>
      </div>
      <div class="making-result">
        <div class="making-preview">
          <h3>What it becomes</h3>
          <halfhitch-chart-preview
            .chart=${chart}
            .aspect=${this.aspect ?? this.tight}
            .desk=${this.desk}
            .lying=${LYING[options.direction]}
            ?data-old=${!ready}
          ></halfhitch-chart-preview>
          <button type="submit" class="primary" aria-disabled=${ready ? 'false' : 'true'}>
            Use this
          </button>
          ${problem === '' ? nothing : html`<p class="field-error" role="alert">${problem}</p>`}
        </div>
        <div class="making-notes">
          ${chart === null || !ready ? nothing : this.about(chart)}
        </div>
      </div>
    </form>`;
  }

  private about(chart: Chart): TemplateResult {
    const warnings = colourWarnings(chart);
    return html`
      <p class="size" role="status">
        ${figures(chart.rows)} rows of ${chart.columns} knots
      </p>
      ${
        warnings.length === 0
          ? nothing
          : html`<ul class="notices">
              ${warnings.map((warning) => html`<li>${warning}</li>`)}
            </ul>`
      }
    `;
  }

  private textFields(): TemplateResult {
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
          .value=${this.text}
          @input=${(event: Event) => {
            this.text = (event.target as HTMLTextAreaElement).value;
          }}
        ></textarea>
        <p class="hint" id="lettering-text-hint">Each line is a line of its own.</p>
      </div>
      <div class="lettering-signs">
        ${SIGNS.map(
          (sign, i) => html`<button
            type="button"
            aria-label=${`Put in a ${['heart', 'star', 'anchor'][i]}`}
            @click=${() => this.insert(sign)}
          >
            ${sign}
          </button>`,
        )}
      </div>
      ${this.choice('size', 'Height of capitals, in knots', LETTER_SIZES, SIZE_WORDS)}
    </fieldset>`;
  }

  private layFields(): TemplateResult {
    return html`<fieldset>
      <legend>On the bracelet</legend>
      ${this.choice('direction', 'Words run across the bracelet, or along it', DIRECTIONS, DIRECTION_WORDS)}
      <div class="fields">
        ${this.number('columns', 'Whole width', 'columns', 'Empty: what the words take.')}
        ${this.number('rows', 'Whole length', 'rows', 'Empty: what the words take.')}
        ${this.number('times', 'How often', 'times')}
        ${this.typed.times.trim() === '1' ? nothing : this.number('timesGap', 'Between one time and the next', 'knots')}
      </div>
      <div class="field">
        <label for="lettering-align">Shorter lines, and words with room to spare, stand</label>
        <select
          id="lettering-align"
          @change=${(event: Event) =>
            this.choose({ align: (event.target as HTMLSelectElement).value as Alignment })}
        >
          ${ALIGNMENTS.map(
            (align) => html`<option value=${align} .selected=${this.options.align === align}>
              ${ALIGNMENT_WORDS[align]}
            </option>`,
          )}
        </select>
      </div>
    </fieldset>`;
  }

  private colourFields(): TemplateResult {
    return html`<fieldset>
      <legend>Colours</legend>
      <div class="fields">
        ${this.colour('text', 'Letters')} ${this.colour('ground', 'Ground')}
        ${this.options.border === 'none' ? nothing : this.colour('borderColour', 'Border')}
      </div>
    </fieldset>`;
  }

  private borderFields(): TemplateResult {
    const { border, borderSides } = this.options;
    return html`<fieldset>
      <legend>Border</legend>
      <div class="fields">
        <div class="field">
          <label for="lettering-border">Kind</label>
          <select
            id="lettering-border"
            @change=${(event: Event) =>
              this.choose({ border: (event.target as HTMLSelectElement).value as BorderKind })}
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
                    this.choose({
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
        ${this.number('margin', 'Margin round the words', 'knots')}
      </div>
    </fieldset>`;
  }

  private gapFields(): TemplateResult {
    const usual = usualGaps(ALPHABETS[this.options.size]);
    const wrong = (['letterGap', 'wordGap', 'lineGap'] as const).some(
      (figure) => this.errorOf(figure) !== undefined,
    );
    return html`<details class="fold" ?open=${wrong}>
      <summary>Gaps</summary>
      <fieldset>
        <legend class="unseen">Gaps</legend>
        <div class="fields">
          ${this.number('letterGap', 'Between letters', 'knots', `Empty: ${usual.letter}.`)}
          ${this.number('wordGap', 'Between words', 'knots', `Empty: ${usual.word}.`)}
          ${this.number('lineGap', 'Between lines', 'knots', `Empty: ${usual.line}.`)}
        </div>
      </fieldset>
    </details>`;
  }

  private number(figure: Figure, label: string, unit: string, hint?: string): TemplateResult {
    return numberField({
      id: `lettering-${figure}`,
      label,
      unit,
      ...(hint === undefined ? {} : { hint }),
      value: this.typed[figure],
      error: this.errorOf(figure),
      fill: (text) => {
        this.typed = { ...this.typed, [figure]: text };
      },
    });
  }

  private choice<N extends 'size' | 'direction'>(
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
              .checked=${this.options[name] === choice}
              @change=${() => this.choose({ [name]: choice } as Partial<LetteringOptions>)}
            />
            ${words[choice]}
          </label>`,
        )}
      </div>
    </div>`;
  }

  private colour(which: 'text' | 'ground' | 'borderColour', label: string): TemplateResult {
    const thread = this.options[which];
    const known = this.threads.some(({ hex }) => hex === thread.hex);
    const own = (hex: string): void => this.choose({ [which]: { hex, name: '' } });
    return html`<div class="field lettering-colour">
      <label for="lettering-colour-${which}">${label}</label>
      <div class="lettering-thread">
        <select
          id="lettering-colour-${which}"
          @change=${(event: Event) => {
            const hex = (event.target as HTMLSelectElement).value;
            const chosen = this.threads.find((one) => one.hex === hex);
            if (chosen === undefined) own(thread.hex);
            else this.choose({ [which]: { hex: chosen.hex, name: chosen.name } });
          }}
        >
          ${this.threads.map(
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
}

customElements.define('halfhitch-lettering', LetteringPanel);
