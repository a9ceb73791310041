import { type Chart, InputError } from '@halfhitch/core';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { colourWarnings } from '../colour/hard-to-tell.js';
import { PageElement } from '../view/page-element.js';
import '../picture/chart-preview.js';
import type { Lying } from '../picture/chart-preview.js';
import { PictureDesk } from '../picture/desk.js';
import type { OwnThread } from '../picture/match-threads.js';
import { threadChoices } from '../picture/threads-field.js';
import { USUAL_THREADS } from '../picture/usual-threads.js';
import { counted } from '../view/figures.js';
import {
  borderFields,
  colourFields,
  gapFields,
  type LetteringWish,
  layFields,
  textFields,
} from './fields.js';
import { letter } from './letter.js';
import { isAnyWrong, measuresOf, type Typed, USUAL_FIGURES } from './measures.js';
import { type LetteringOptions, type TextDirection, USUAL_LETTERING } from './settings.js';

const LYING: Readonly<Record<TextDirection, Lying>> = {
  across: 'hanging',
  downwards: 'first-row-left',
  upwards: 'first-row-right',
};

/** Makes a chart of words. Fires `chart-made` with the chart and what was done. */
export class LetteringPanel extends PageElement {
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
  declare private typed: Typed;
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
    this.typed = USUAL_FIGURES;
    this.chart = null;
    this.problem = '';
    this.tight = 1;
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

  /** Sets what is written now; what was there before stays in sight while it can't be set. */
  private set(): void {
    if (isAnyWrong(this.typed)) {
      this.problem = 'One of the figures is not right.';
      return;
    }
    try {
      this.chart = letter(this.text, { ...this.options, ...measuresOf(this.typed) });
      this.problem = '';
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      this.problem = error.message;
    }
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
    const wish: LetteringWish = {
      options,
      typed: this.typed,
      threads: this.threads,
      write: (text) => {
        this.text = text;
      },
      insert: (sign) => this.insert(sign),
      choose: (change) => {
        this.options = { ...options, ...change };
      },
      fill: (figure, text) => {
        this.typed = { ...this.typed, [figure]: text };
      },
    };
    return html`<form class="making-bench" novalidate @submit=${this.use}>
      <div class="making-side">
        <div class="making-first">${textFields(this.text, wish)}</div>
        <div class="making-rest">
          ${layFields(wish)} ${colourFields(wish)} ${borderFields(wish)} ${gapFields(wish)}
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
        ${counted(chart.rows, 'row')} of ${counted(chart.columns, 'knot')}
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
}

customElements.define('halfhitch-lettering', LetteringPanel);
