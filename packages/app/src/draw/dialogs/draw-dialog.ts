import type { Chart } from '@halfhitch/core';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { counted } from '../../view/figures.js';
import { PageElement } from '../../view/page-element.js';
import { attempted } from '../../work/reason.js';
import type { Place } from '../edit/place.js';
import type { ChartForm } from './forms.js';
import { type ChartMade, MAKERS, type MakerName } from './makers.js';

export type DialogPage =
  | { readonly kind: 'form'; readonly form: ChartForm }
  | { readonly kind: 'maker'; readonly maker: MakerName }
  /** A chart has come from a maker: where is it to go? */
  | { readonly kind: 'made'; readonly made: ChartMade };

/** What a dialog fires as `dialog-done`. */
export interface DialogDone {
  readonly chart: Chart;
  /**
   * `open`: as another piece. `edit`: this is the open chart now. `put`: lay it into the open one;
   * `room`: and make that as large as it takes.
   */
  readonly as: 'open' | 'edit' | 'put' | 'room';
  readonly what: string;
}

/** Questions that are asked in front of the chart: a new one, another size, letters, a picture. */
export class DrawDialog extends PageElement {
  static override properties = {
    chart: { attribute: false },
    ground: { attribute: false },
    at: { attribute: false },
    aspect: { attribute: false },
    page: { state: true },
    loaded: { state: true },
    problem: { state: true },
  };

  /** The open chart, the colour of its ground, and where something would be put into it. */
  declare chart: Chart | null;
  declare ground: number;
  declare at: Place;
  /** Width of a knot by its height. */
  declare aspect: number | null;
  declare private page: DialogPage | null;
  /** Makers whose script has come. */
  declare private loaded: ReadonlySet<MakerName>;
  declare private problem: string;

  constructor() {
    super();
    this.chart = null;
    this.ground = 0;
    this.at = { row: 0, column: 0 };
    this.aspect = null;
    this.page = null;
    this.loaded = new Set();
    this.problem = '';
  }

  open(page: DialogPage): void {
    this.problem = '';
    this.page = page;
    if (page.kind === 'maker' && !this.loaded.has(page.maker)) void this.load(page.maker);
  }

  private async load(maker: MakerName): Promise<void> {
    try {
      await MAKERS[maker].load();
      this.loaded = new Set([...this.loaded, maker]);
    } catch {
      this.problem = `“${MAKERS[maker].title}” could not be loaded. Check the connection, and load the page anew.`;
    }
  }

  private close(): void {
    this.querySelector('dialog')?.close();
  }

  private done(detail: DialogDone): void {
    this.close();
    this.dispatchEvent(new CustomEvent<DialogDone>('dialog-done', { detail }));
  }

  protected override updated(changes: PropertyValues): void {
    const dialog = this.querySelector('dialog');
    if (changes.has('page') && dialog !== null && !dialog.open) dialog.showModal();
  }

  protected override render(): TemplateResult {
    const { page, chart } = this;
    if (page === null || chart === null) return html`${nothing}`;
    return html`<dialog
      class="card draw-dialog ${page.kind}"
      aria-labelledby="draw-dialog-name"
      @close=${(event: Event) => {
        // Also heard of dialogs inside.
        if (event.target === event.currentTarget) this.page = null;
      }}
    >
      <div class="bar">
        <h2 id="draw-dialog-name">${titleOf(page)}</h2>
        <button type="button" @click=${() => this.close()}>Close</button>
      </div>
      ${this.content(chart, page)}
      ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
    </dialog>`;
  }

  private content(chart: Chart, page: DialogPage): TemplateResult {
    switch (page.kind) {
      case 'form':
        return this.formOf(chart, page.form);
      case 'maker':
        return this.makerOf(chart, page.maker);
      case 'made':
        return this.whereTo(chart, page.made);
    }
  }

  private formOf(chart: Chart, form: ChartForm): TemplateResult {
    return html`<form novalidate @submit=${(event: SubmitEvent) => this.onSubmit(event, form)}>
      ${form.fields(chart)}
      <div class="draw-row"><button class="primary" type="submit">${form.button}</button></div>
    </form>`;
  }

  private onSubmit(event: SubmitEvent, form: ChartForm): void {
    event.preventDefault();
    const { chart } = this;
    if (chart === null) return;
    this.problem = attempted(() => {
      const made = form.make(chart, new FormData(event.target as HTMLFormElement), this.ground);
      this.done({ chart: made, as: form.as, what: form.what });
    });
  }

  private makerOf(chart: Chart, maker: MakerName): TemplateResult {
    return html`<div @chart-made=${(event: CustomEvent<ChartMade>) => this.onMade(event)}>
      ${
        this.loaded.has(maker)
          ? MAKERS[maker].show(chart.colours, this.aspect)
          : html`<p>${this.problem === '' ? 'One moment …' : ''}</p>`
      }
    </div>`;
  }

  private onMade(event: CustomEvent<ChartMade>): void {
    event.stopPropagation();
    this.page = { kind: 'made', made: event.detail };
  }

  private whereTo(chart: Chart, { chart: made, what }: ChartMade): TemplateResult {
    const { row, column } = this.at;
    const fits = row + made.rows <= chart.rows && column + made.columns <= chart.columns;
    return html`
      <p>
        ${counted(made.rows, 'row')} of ${counted(made.columns, 'knot')}.
      </p>
      <div class="draw-row">
        <button
          type="button"
          class="primary"
          @click=${() => this.done({ chart: made, as: 'open', what })}
        >
          Open as a new piece
        </button>
        <button type="button" @click=${() => this.done({ chart: made, as: 'put', what })}>
          Put into the open chart
        </button>
        ${
          fits
            ? nothing
            : html`<button
                type="button"
                @click=${() => this.done({ chart: made, as: 'room', what })}
              >
                Put in and make room
              </button>`
        }
      </div>
      <p class="hint">
        In the open chart its top left knot comes to row ${row + 1}, column
        ${column + 1}.${fits ? '' : ' What goes over the side is left out, unless you make room.'}
      </p>
    `;
  }
}

function titleOf(page: DialogPage): string {
  if (page.kind === 'form') return page.form.title;
  return page.kind === 'maker' ? MAKERS[page.maker].title : 'Where is it to go?';
}

customElements.define('halfhitch-draw-dialog', DrawDialog);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-draw-dialog': DrawDialog;
  }
}
