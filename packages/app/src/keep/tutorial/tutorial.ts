import {
  type Chart,
  closingSection,
  coloursUsed,
  type InstructionPart,
  instructRow,
  KNOT_KINDS,
  type KnotKind,
  openingSections,
  type Plan,
  PlanReader,
  planAlpha,
  printable,
  type RowInstructions,
  type Section,
} from '@halfhitch/core';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { counted, figures } from '../../view/figures.js';
import { PageElement } from '../../view/page-element.js';
import '../../view/swatch.js';

/** How to knot one chart: the piece, its rows with their knots in motion and in words, its knots. */
export class Tutorial extends PageElement {
  static override properties = { chart: { attribute: false }, row: { state: true } };

  declare chart: Chart | null;
  declare private row: number;

  private plan: Plan | null = null;
  private reader: PlanReader | null = null;
  private kinds: readonly KnotKind[] = [];

  constructor() {
    super();
    this.chart = null;
    this.row = 0;
  }

  protected override willUpdate(changes: PropertyValues): void {
    if (!changes.has('chart') || this.chart === null) return;
    const { chart } = this;
    const { edge = 'straight', start = 'left' } = chart;
    this.plan = planAlpha(chart, { edge, start });
    this.reader = new PlanReader(this.plan);
    this.kinds = kindsOf(this.plan, this.reader);
    this.row = 0;
    document.title = `${titleOf(chart)}: how it is knotted`;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { chart, plan, reader } = this;
    if (chart === null || plan === null || reader === null) return nothing;
    const [hang, knots, ...care] = openingSections(plan);
    return html`
      <header>
        <h1>${titleOf(chart)}</h1>
        <p>
          ${counted(chart.rows, 'row')} of ${counted(chart.columns, 'knot')} in
          ${counted(coloursUsed(chart), 'colour')}, with ${plan.edge} edges.
        </p>
        <ul class="legend">${legend(chart)}</ul>
      </header>
      <main>
        <section>
          <h2>The piece</h2>
          <halfhitch-piece .plan=${plan}></halfhitch-piece>
        </section>
        ${care.map(section)}
        ${hang === undefined ? nothing : section(hang)}
        ${knots === undefined ? nothing : this.knots(knots)}
        ${this.rows(plan, instructRow(reader.row(this.row), plan))}
        ${section(closingSection(plan))}
      </main>
      <footer>
        <p>This page needs no connection and sends nothing anywhere.</p>
      </footer>
    `;
  }

  private knots(of: Section): TemplateResult {
    return html`<section>
      <h2>${of.title}</h2>
      ${of.paragraphs.map((text) => html`<p>${text}</p>`)}
      <div class="knots">
        ${this.kinds.map(
          (kind) => html`<figure>
            <figcaption>${kind}</figcaption>
            <halfhitch-knot kind=${kind} controls="few"></halfhitch-knot>
          </figure>`,
        )}
      </div>
      <ul>${of.points.map((text) => html`<li>${text}</li>`)}</ul>
    </section>`;
  }

  private rows(plan: Plan, row: RowInstructions): TemplateResult {
    const last = plan.rows - 1;
    const go = (to: number): void => {
      this.row = Math.max(0, Math.min(last, to));
    };
    const turn = (name: string, to: number): TemplateResult => html`<button
      type="button"
      aria-disabled=${to < 0 || to > last ? 'true' : 'false'}
      @click=${() => go(to)}
    >${name}</button>`;
    return html`<section>
      <h2>Row by row</h2>
      <nav aria-label="Rows">
        ${turn('Previous row', this.row - 1)}
        <label>
          Row
          <input
            type="number"
            min="1"
            max=${plan.rows}
            .value=${String(this.row + 1)}
            @change=${(event: Event) => go(Math.round(Number((event.target as HTMLInputElement).value) || 1) - 1)}
          />
          of ${figures(plan.rows)}
        </label>
        ${turn('Next row', this.row + 1)}
      </nav>
      <h3 aria-live="polite">${row.heading}</h3>
      <halfhitch-row .plan=${plan} .row=${this.row}></halfhitch-row>
      <ol>${row.parts.map(part)}</ol>
    </section>`;
  }
}

function part({ text, substeps, cases }: InstructionPart): TemplateResult {
  return html`<li>
    ${cases.length === 0 ? nothing : html`<strong>Colour change: ${cases.join(', ')}.</strong>`}
    ${text}
    ${
      substeps.length === 0
        ? nothing
        : html`<ol class="substeps">${substeps.map((step) => html`<li>${step}</li>`)}</ol>`
    }
  </li>`;
}

function section({ title, paragraphs, points }: Section): TemplateResult {
  return html`<section>
    <h2>${title}</h2>
    ${paragraphs.map((text) => html`<p>${text}</p>`)}
    ${points.length === 0 ? nothing : html`<ul>${points.map((text) => html`<li>${text}</li>`)}</ul>`}
  </section>`;
}

function legend(chart: Chart): TemplateResult[] {
  const drawn = new Set(chart.cells);
  return chart.colours.flatMap(({ hex, name }, i) =>
    drawn.has(i)
      ? [
          html`<li><halfhitch-swatch .colour=${hex}></halfhitch-swatch>${printable(name) || hex}</li>`,
        ]
      : [],
  );
}

/** The kinds of knot that the piece has; the first rows have all of a long one’s. */
function kindsOf(plan: Plan, reader: PlanReader): readonly KnotKind[] {
  const found = new Set<KnotKind>();
  for (let row = 0; row < Math.min(plan.rows, 50); row++) {
    for (const { kind } of reader.row(row).knots) found.add(kind);
  }
  return KNOT_KINDS.filter((kind) => found.has(kind));
}

function titleOf({ name }: Chart): string {
  return printable(name) || 'A knotted band';
}

customElements.define('halfhitch-tutorial', Tutorial);
