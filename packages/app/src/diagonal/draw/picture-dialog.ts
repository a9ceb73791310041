import type { Chart, ChartColour } from '@halfhitch/core';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { type ChartMade, MAKERS } from '../../draw/dialogs/makers.js';
import { PageElement } from '../../view/page-element.js';

/** Makes a picture for the lattice from any image. Fires `picture-made` (Chart). */
export class PictureDialog extends PageElement {
  static override properties = {
    colours: { attribute: false },
    shown: { state: true },
    loaded: { state: true },
    problem: { state: true },
  };

  declare colours: readonly ChartColour[];
  declare private shown: boolean;
  declare private loaded: boolean;
  declare private problem: string;

  constructor() {
    super();
    this.colours = [];
    this.shown = false;
    this.loaded = false;
    this.problem = '';
  }

  open(): void {
    this.problem = '';
    this.shown = true;
    MAKERS.picture.load().then(
      () => {
        this.loaded = true;
      },
      () => {
        this.problem =
          'This part could not be loaded. Check the connection, and load the page anew.';
      },
    );
  }

  protected override updated(changes: PropertyValues): void {
    const dialog = this.querySelector('dialog');
    if (changes.has('shown') && dialog !== null && !dialog.open) dialog.showModal();
  }

  private close(): void {
    this.querySelector('dialog')?.close();
  }

  protected override render(): TemplateResult {
    if (!this.shown) return html`${nothing}`;
    return html`<dialog
      class="card draw-dialog maker"
      aria-labelledby="picture-dialog-name"
      @close=${(event: Event) => {
        if (event.target === event.currentTarget) this.shown = false;
      }}
      @chart-made=${(event: CustomEvent<ChartMade>) => this.made(event)}
    >
      <div class="bar">
        <h2 id="picture-dialog-name">From a picture</h2>
        <button type="button" @click=${() => this.close()}>Close</button>
      </div>
      <p class="hint">
        The chart made here is laid over the lattice, whatever its size: each knot takes the colour
        at its middle. Then a way to knot it can be looked for.
      </p>
      ${this.loaded ? MAKERS.picture.show(this.colours, 1) : html`<p>${this.problem === '' ? 'One moment …' : ''}</p>`}
      ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
    </dialog>`;
  }

  private made(event: CustomEvent<ChartMade>): void {
    event.stopPropagation();
    this.close();
    const { chart } = event.detail;
    this.dispatchEvent(new CustomEvent<Chart>('picture-made', { detail: chart }));
  }
}

customElements.define('halfhitch-diagonal-picture', PictureDialog);
