import { type Chart, printable, type RowInstructions, type Section } from '@halfhitch/core';
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { cutResults } from '../cut/cut-results.js';
import { CutDesk } from '../cut/desk.js';
import type { CutOutcome } from '../cut/messages.js';
import { keepDesk } from '../keep/desk.js';
import { type AlphaProject, titleOf } from '../project/project.js';
import type { Session } from '../project/session.js';
import '../view/swatch.js';
import { SessionWatch } from '../view/session-watch.js';
import { WorkError } from '../work/work-error.js';
import { layChart } from './chart-layout.js';
import { type ChartSheet, chartPage, sample } from './chart-page.js';
import { mostRows, type SheetChoice, wrongWith } from './choice.js';
import { markingsOf } from './hatches.js';
import { PAPERS, type PaperName, usualPaper } from './paper.js';
import { type PrintedPart, withoutRepeats, withRepeats } from './repeated-steps.js';
import type { Written } from './written.js';

/** What is on the sheets, worked out for one state of a project. */
interface Sheets {
  readonly of: AlphaProject;
  readonly choice: SheetChoice;
  readonly written: Written;
  readonly cut: CutOutcome | null;
}

/** Sheets for the table beside the work: chosen, looked at, and printed. */
export class SheetsPanel extends LitElement {
  static override properties = {
    session: { attribute: false },
    choice: { state: true },
    sheets: { state: true },
    busy: { state: true },
    problem: { state: true },
  };

  declare session: Session | null;
  declare private choice: SheetChoice;
  declare private sheets: Sheets | null;
  declare private busy: boolean;
  declare private problem: string;

  private readonly cutDesk = new CutDesk();
  private shownId: string | null = null;
  private asked = 0;
  private soon = false;

  constructor() {
    super();
    this.session = null;
    this.choice = {
      paper: usualPaper(),
      firstRow: 1,
      lastRow: 1,
      chart: true,
      written: true,
      cut: true,
      inColour: true,
      everyStep: false,
    };
    this.sheets = null;
    this.busy = false;
    this.problem = '';
    new SessionWatch(this, ['project']);
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('beforeprint', this.onPrint);
    addEventListener('afterprint', this.onPrinted);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('beforeprint', this.onPrint);
    removeEventListener('afterprint', this.onPrinted);
    this.onPrinted();
  }

  protected override willUpdate(_changes: PropertyValues): void {
    const project = this.session?.alpha ?? null;
    if (project === null) return;
    const { rows, columns } = project.chart;
    if (project.id !== this.shownId) {
      this.shownId = project.id;
      this.sheets = null;
      this.problem = '';
      this.choice = { ...this.choice, firstRow: 1, lastRow: Math.min(rows, mostRows(columns)) };
    }
    // Shown as they were until they are made anew.
    if (this.sheets !== null && !sameSheets(this.sheets.of, project)) this.makeSoon();
  }

  private choose(change: Partial<SheetChoice>): void {
    this.choice = { ...this.choice, ...change };
    this.problem = '';
    if (this.sheets !== null) void this.make();
  }

  private makeSoon(): void {
    if (this.soon) return;
    this.soon = true;
    queueMicrotask(() => {
      this.soon = false;
      void this.make();
    });
  }

  /** @returns whether the sheets are there */
  private async make(): Promise<boolean> {
    const project = this.session?.alpha;
    if (project == null) return false;
    const { chart, choice: knots, cut: settings } = project;
    const { choice } = this;
    const wrong = wrongWith(choice, chart.rows, chart.columns);
    if (wrong !== null) {
      this.problem = wrong;
      this.sheets = null;
      return false;
    }
    const asked = ++this.asked;
    this.busy = true;
    this.problem = '';
    try {
      const rows = { first: choice.firstRow - 1, end: choice.lastRow };
      const [text, cut] = await Promise.all([
        keepDesk.ask({
          ask: 'written',
          chart,
          choice: knots,
          rows: choice.written ? rows : { first: 0, end: 0 },
        }),
        choice.cut ? this.cutDesk.ask({ chart, choice: knots, settings }) : null,
      ]);
      if (asked !== this.asked) return false;
      this.sheets = { of: project, choice, written: text, cut };
    } catch (error) {
      if (asked !== this.asked) return false;
      this.problem =
        error instanceof WorkError ? error.message : 'The sheets could not be made. Try again.';
    }
    this.busy = false;
    await this.updateComplete;
    return this.sheets !== null;
  }

  private async show(): Promise<void> {
    if (!(await this.make())) return;
    this.querySelector<HTMLElement>('.sheets')?.focus();
  }

  private async print(): Promise<void> {
    const { sheets } = this;
    const project = this.session?.alpha;
    const ready = sheets !== null && project != null && sameSheets(sheets.of, project);
    if (!ready && !(await this.make())) return;
    await this.updateComplete;
    window.print();
  }

  /** By the button and by the browser's own command alike: the sheets alone, once they are shown. */
  private readonly onPrint = (): void => {
    if (this.sheets !== null && document.documentElement.dataset['print'] === undefined) {
      document.documentElement.dataset['print'] = 'sheets';
    }
  };

  private readonly onPrinted = (): void => {
    if (document.documentElement.dataset['print'] === 'sheets') {
      delete document.documentElement.dataset['print'];
    }
  };

  // ---- what is shown ----

  protected override render(): TemplateResult | typeof nothing {
    const project = this.session?.alpha;
    if (project == null) return nothing;
    const { sheets, busy } = this;
    return html`
      <div class="bar">
        <h2 id="sheets-name">Print sheets</h2>
        <div class="sheet-buttons">
          <button type="button" @click=${() => void this.show()}>${sheets === null ? 'Show the sheets' : 'Make them anew'}</button>
          <button type="button" class="primary" @click=${() => void this.print()}>Print</button>
        </div>
      </div>
      ${this.form(project.chart)}
      ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
      <p class="unseen" role="status">${busy ? 'Making the sheets.' : sheets === null ? '' : 'The sheets are below.'}</p>
      ${sheets === null ? nothing : this.paper(sheets)}
    `;
  }

  private form(chart: Chart): TemplateResult {
    const { choice } = this;
    const row = (
      name: 'firstRow' | 'lastRow',
      label: string,
    ): TemplateResult => html`<div class="field">
      <label for="sheet-${name}">${label}</label>
      <input
        id="sheet-${name}"
        type="text"
        inputmode="numeric"
        autocomplete="off"
        maxlength="5"
        .value=${String(choice[name])}
        @change=${(event: Event) => this.choose({ [name]: Number((event.target as HTMLInputElement).value) })}
      />
    </div>`;
    const check = (
      name: 'chart' | 'written' | 'cut' | 'inColour' | 'everyStep',
      label: string,
    ): TemplateResult =>
      html`<label class="check">
        <input
          type="checkbox"
          .checked=${choice[name]}
          @change=${(event: Event) => this.choose({ [name]: (event.target as HTMLInputElement).checked })}
        />
        ${label}
      </label>`;
    return html`<form class="sheet-form" @submit=${(event: Event) => event.preventDefault()}>
      <div class="field">
        <label for="sheet-paper">Paper</label>
        <select
          id="sheet-paper"
          @change=${(event: Event) => this.choose({ paper: (event.target as HTMLSelectElement).value as PaperName })}
        >
          ${Object.values(PAPERS).map(
            ({ name, label }) =>
              html`<option value=${name} .selected=${choice.paper === name}>${label}</option>`,
          )}
        </select>
      </div>
      ${row('firstRow', 'First row')} ${row('lastRow', `Last row, of ${chart.rows.toLocaleString('en-GB')}`)}
      <fieldset class="sheet-parts">
        <legend class="unseen">What is printed</legend>
        ${check('chart', 'Chart')} ${check('written', 'Written rows')} ${check('cut', 'Cut list')}
        ${check('inColour', 'Colours under the marks')}
        ${check('everyStep', 'All steps of every colour change')}
      </fieldset>
    </form>`;
  }

  private paper(sheets: Sheets): TemplateResult {
    const { of, choice, written, cut } = sheets;
    const { chart } = of;
    const paper = PAPERS[choice.paper];
    const markings = markingsOf(chart);
    const title = printable(chart.name) || titleOf(of);
    const layout = layChart(
      { first: choice.firstRow - 1, end: choice.lastRow },
      chart.columns,
      markings.length,
      paper,
    );
    const { edges } = written;
    const parts = choice.everyStep ? withRepeats(written.rows) : withoutRepeats(written.rows);
    const start = of.choice.start;
    const sheet: ChartSheet = {
      chart,
      start,
      layout,
      markings,
      edges,
      inColour: choice.inColour,
      title,
    };
    return html`<div
      class="sheets"
      data-paper=${choice.paper}
      tabindex="0"
      role="region"
      aria-label="The sheets"
    >
      <section class="sheet-first">
        <h2>${title}</h2>
        <p>
          ${many(chart.rows, 'row')} of ${many(chart.columns, 'knot')}, with ${of.choice.edge} edges;
          the first row goes to the ${start === 'left' ? 'right' : 'left'}.
          ${written.ok ? 'It knots out as drawn.' : html`<strong>It does not knot out as drawn: see the findings in the workbench first.</strong>`}
        </p>
        ${this.legendTable(sheet)}
        ${cautions()}
        ${written.opening.slice(0, 2).map(section)}
      </section>
      ${choice.chart ? layout.parts.map((part) => chartPage(sheet, part)) : nothing}
      ${
        choice.written
          ? html`<section class="sheet-rows">
              <h2>Row by row</h2>
              <div class="sheet-columns">
                ${written.rows.map((row, i) => rowInWords(row, parts[i] ?? []))}
              </div>
              ${choice.lastRow === chart.rows ? section(written.closing) : nothing}
            </section>`
          : nothing
      }
      ${cut === null ? nothing : this.cutPart(cut, of)}
    </div>`;
  }

  private legendTable(sheet: ChartSheet): TemplateResult {
    const { chart, markings } = sheet;
    return html`<table class="sheet-table">
      <caption>Colours</caption>
      <thead>
        <tr><th scope="col">Mark</th><th scope="col">Key</th><th scope="col">Colour</th><th scope="col">Number</th></tr>
      </thead>
      <tbody>
        ${markings.map((marking) => {
          const colour = chart.colours[marking.colour];
          return html`<tr>
            <td>${sample(sheet, marking)}</td>
            <td>${printable(colour?.key ?? '')}</td>
            <th scope="row">${printable(colour?.name ?? '') || 'without a name'}</th>
            <td>${colour?.hex}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }

  private cutPart(cut: CutOutcome, { cut: settings }: AlphaProject): TemplateResult {
    return html`<section class="sheet-cut cut-list">
      <h2>Cut list</h2>
      ${
        'sheet' in cut
          ? cutResults(cut, settings)
          : html`<p>
              There is no cut list, since something is filled in wrongly for it:
              ${Object.values(cut.errors).join(' ')}
            </p>`
      }
    </section>`;
  }
}

/** Whether nothing that is printed has changed. */
function sameSheets(one: AlphaProject, other: AlphaProject): boolean {
  return one.chart === other.chart && one.choice === other.choice && one.cut === other.cut;
}

function rowInWords({ heading }: RowInstructions, parts: readonly PrintedPart[]): TemplateResult {
  return html`<section class="sheet-row">
    <h3>${heading}</h3>
    <ol>
      ${parts.map(
        ({ text, substeps, like }) => html`<li>
          ${text}
          ${like === null ? nothing : html`<em>Steps as in row ${like.row}, number ${like.part}.</em>`}
          ${
            substeps.length === 0
              ? nothing
              : html`<ol class="sheet-steps">${substeps.map((step) => html`<li>${step}</li>`)}</ol>`
          }
        </li>`,
      )}
    </ol>
  </section>`;
}

function section({ title, paragraphs, points }: Section): TemplateResult {
  return html`<section class="sheet-text">
    <h3>${title}</h3>
    ${paragraphs.map((text) => html`<p>${text}</p>`)}
    ${points.length === 0 ? nothing : html`<ul>${points.map((text) => html`<li>${text}</li>`)}</ul>`}
  </section>`;
}

function cautions(): TemplateResult {
  return html`<section class="sheet-text sheet-care">
    <h3>Take care</h3>
    <ul>
      <li>Hands: rest every half hour, and stop when something aches or goes numb.</li>
      <li>
        Small children: a cord can strangle, and a short end can be swallowed. Keep threads away from
        them; make a child's bracelet so that it opens under a pull.
      </li>
      <li>
        Ends: cut away from your fingers. Singe only synthetic thread, away from hair and curtains,
        with water at hand; cotton burns on, so sew its ends in.
      </li>
    </ul>
  </section>`;
}

function many(count: number, what: string): string {
  return `${count.toLocaleString('en-GB')} ${what}${count === 1 ? '' : 's'}`;
}

customElements.define('halfhitch-sheets', SheetsPanel);
