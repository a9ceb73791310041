import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { figures } from '../view/figures.js';
import { PageElement } from '../view/page-element.js';
import type { KnotPair, KnotTied, MistakenView } from './messages.js';

/** Least width of a knot on the screen, px: below it knots can't be told apart. */
const LEAST_KNOT = 13;

/** A mistaken piece next to what was drawn, as thread, and what follows from it in words. */
export class Compare extends PageElement {
  static override properties = {
    view: { attribute: false },
    mirror: { type: Boolean },
    watching: { type: Boolean },
  };

  declare view: MistakenView | null;
  /** Whether the knot is shown in the mirror, for the left hand. */
  declare mirror: boolean;
  /** Whether the knot is to be watched at once. */
  declare watching: boolean;
  private addresses: string[] = [];

  constructor() {
    super();
    this.view = null;
    this.mirror = false;
    this.watching = false;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.forget();
  }

  protected override updated(changes: PropertyValues): void {
    if (!changes.has('view')) return;
    this.forget();
    const { view } = this;
    if (view === null) return;
    const images = this.querySelectorAll('img');
    for (const [place, svg] of [view.drawn, view.made].entries()) {
      const image = images[place];
      if (image === undefined) continue;
      const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
      this.addresses.push(address);
      image.src = address;
      // Set from here, since the page's policy allows no style in markup.
      const columns = view.columns.last - view.columns.first + 1;
      image.style.minInlineSize = `${columns * LEAST_KNOT}px`;
      image.style.maxInlineSize = `${(columns + 4) * 32}px`;
    }
  }

  /** Drawn in 3D only once it is asked for. */
  private knots({ knot }: MistakenView): TemplateResult | typeof nothing {
    if (knot === null) return nothing;
    const { mirror, watching } = this;
    return html`<details
      class="fold"
      .open=${watching}
      @toggle=${(event: Event) => {
        this.watching = (event.target as HTMLDetailsElement).open;
      }}
    >
      <summary>The knot in row ${knot.row + 1}, column ${knot.column + 1}, in 3D</summary>
      ${
        watching
          ? html`<div class="pictures">
            <section class="pair">
              <h4>As it belongs</h4>
              ${knotIn3d(knot.drawn, knot, mirror)}
            </section>
            <section class="pair">
              <h4>With the mistake</h4>
              ${typeof knot.made === 'string' ? html`<p>${knot.made}</p>` : knotIn3d(knot.made, knot, mirror)}
            </section>
          </div>
          ${mirror ? html`<p class="hint">In 3D: the mirror image, for the left hand.</p>` : nothing}`
          : nothing
      }
    </details>`;
  }

  private forget(): void {
    for (const address of this.addresses) URL.revokeObjectURL(address);
    this.addresses = [];
  }

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const rows = inWords('row', view.rows);
    const columns = inWords('column', view.columns);
    return html`
      <div class="pictures">
        ${picture('As drawn', `As drawn: ${rows}, ${columns}`)}
        ${picture('With the mistake', `With the mistake: ${rows}, ${columns}. ${view.what.join(' ')}`)}
      </div>
      <p class="hint">
        Heavy box: the mistake. Dashed box: looks other than drawn. A bow beside the edge: it steps
        out or pulls in.
      </p>
      <div class="consequences">
        <section>
          <h4>What happens</h4>
          ${view.what.map((sentence) => html`<p>${sentence}</p>`)}
          <h4>What you would see</h4>
          <ul>${view.seen.map((sentence) => html`<li>${sentence}</li>`)}</ul>
          ${findings(view)}
        </section>
        <section>
          <h4>How to put it right</h4>
          <ol>
            ${view.undo.map((sentence) => html`<li>${sentence}</li>`)}
            <li>${view.goOn}</li>
          </ol>
        </section>
      </div>
      ${this.knots(view)}
    `;
  }
}

function knotIn3d(knot: KnotTied, { base, column }: KnotPair, mirror: boolean): TemplateResult {
  return html`
    <p>${knot.kind} knot, ${knot.name}</p>
    <halfhitch-knot
      position="2"
      ?mirror=${mirror}
      .kind=${knot.kind}
      .tyingColour=${knot.colour}
      .heldColour=${base.colour}
      .tyingName=${`lead ${knot.lead}`}
      .heldName=${`base string ${column + 1}`}
    ></halfhitch-knot>
  `;
}

function picture(name: string, description: string): TemplateResult {
  return html`<figure>
    <figcaption>${name}</figcaption>
    <div class="picture" role="region" aria-label=${`${name}, picture`} tabindex="0">
      <img alt=${description} />
    </div>
  </figure>`;
}

function findings(view: MistakenView): TemplateResult | typeof nothing {
  if (view.findings.length === 0) return nothing;
  const { moreFindings: more } = view;
  return html`<details class="fold">
    <summary>What checking the steps finds: ${view.findings.length + more}</summary>
    <ul>
      ${view.findings.map((sentence) => html`<li>${sentence}</li>`)}
      ${more === 0 ? nothing : html`<li>And ${figures(more)} more.</li>`}
    </ul>
  </details>`;
}

function inWords(name: string, { first, last }: { first: number; last: number }): string {
  return first === last ? `${name} ${first}` : `${name}s ${first} to ${last}`;
}

customElements.define('halfhitch-compare', Compare);
