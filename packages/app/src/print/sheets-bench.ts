import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { Project } from '../project/project.js';
import type { Session } from '../project/session.js';
import { figures } from '../view/figures.js';
import { PageElement } from '../view/page-element.js';
import '../view/swatch.js';
import { SessionWatch } from '../view/session-watch.js';
import { WorkError } from '../work/work-error.js';
import { mostRows, type SheetChoice, wrongWith } from './choice.js';
import { PAPERS, type PaperName, usualPaper } from './paper.js';
import { SheetScale } from './sheet-scale.js';

/** What is on the sheets, worked out for one state of a project. */
export interface Sheets<P extends Project, Made> {
  readonly of: P;
  readonly choice: SheetChoice;
  readonly made: Made;
}

/** What can be chosen to be printed, and what it is called. */
export type SheetChecks = readonly (readonly [
  'chart' | 'written' | 'cut' | 'inColour' | 'everyStep',
  string,
])[];

/** Sheets for the table beside the work: chosen, looked at, and printed. */
export abstract class SheetsBench<P extends Project, Made> extends PageElement {
  static override properties = {
    session: { attribute: false },
    choice: { state: true },
    sheets: { state: true },
    busy: { state: true },
    problem: { state: true },
    real: { state: true },
  };

  declare session: Session | null;
  declare private choice: SheetChoice;
  declare private sheets: Sheets<P, Made> | null;
  declare private busy: boolean;
  declare private problem: string;
  /** Looked at as large as on paper, though the page has less room. */
  declare private real: boolean;

  private readonly scale = new SheetScale(this);
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
    this.real = false;
    new SessionWatch(this, ['project']);
  }

  protected abstract get project(): P | null;

  /** Rows, and knots in a row. */
  protected abstract sizeOf(project: P): { readonly rows: number; readonly columns: number };

  protected abstract readonly checks: SheetChecks;

  /** Whether nothing that is printed has changed. */
  protected abstract same(one: P, other: P): boolean;

  /** Works out what is on the sheets. @throws WorkError */
  protected abstract work(project: P, choice: SheetChoice): Promise<Made>;

  protected abstract paper(sheets: Sheets<P, Made>): TemplateResult;

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
    const { project } = this;
    if (project === null) return;
    const { rows, columns } = this.sizeOf(project);
    if (project.id !== this.shownId) {
      this.shownId = project.id;
      this.sheets = null;
      this.problem = '';
      this.choice = { ...this.choice, firstRow: 1, lastRow: Math.min(rows, mostRows(columns)) };
    }
    // Shown as they were until they are made anew.
    if (this.sheets !== null && !this.same(this.sheets.of, project)) this.makeSoon();
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
    const { project, choice } = this;
    if (project === null) return false;
    const { rows, columns } = this.sizeOf(project);
    const wrong = wrongWith(choice, rows, columns);
    if (wrong !== null) {
      this.problem = wrong;
      this.sheets = null;
      return false;
    }
    const asked = ++this.asked;
    this.busy = true;
    this.problem = '';
    try {
      const made = await this.work(project, choice);
      if (asked !== this.asked) return false;
      this.sheets = { of: project, choice, made };
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
    const { sheets, project } = this;
    const ready = sheets !== null && project !== null && this.same(sheets.of, project);
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
    const { sheets, busy, project } = this;
    if (project === null) return nothing;
    return html`
      <div class="bar">
        <h2 id="sheets-name">Print sheets</h2>
        <div class="sheet-buttons">
          <button type="button" @click=${() => void this.show()}>${sheets === null ? 'Show the sheets' : 'Make them anew'}</button>
          <button type="button" class="primary" @click=${() => void this.print()}>Print</button>
        </div>
      </div>
      ${this.form(this.sizeOf(project).rows)}
      ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
      <p class="unseen" role="status">${busy ? 'Making the sheets.' : sheets === null ? '' : 'The sheets are below.'}</p>
      ${sheets !== null && this.scale.narrow ? this.realSize() : nothing}
      ${sheets === null ? nothing : html`<div class=${this.real ? 'sheets-real' : 'sheets-fitted'}>${this.paper(sheets)}</div>`}
    `;
  }

  private realSize(): TemplateResult {
    return html`<label class="check">
      <input
        type="checkbox"
        .checked=${this.real}
        @change=${(event: Event) => {
          this.real = (event.target as HTMLInputElement).checked;
        }}
      />
      As large as on paper, to be moved about
    </label>`;
  }

  private form(rows: number): TemplateResult {
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
    const check = ([name, label]: SheetChecks[number]): TemplateResult =>
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
      ${row('firstRow', 'First row')} ${row('lastRow', `Last row, of ${figures(rows)}`)}
      <fieldset class="sheet-parts">
        <legend class="unseen">What is printed</legend>
        ${this.checks.map(check)}
      </fieldset>
    </form>`;
  }
}
