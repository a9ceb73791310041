import type { Chart } from '@halfhitch/core';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import {
  colourAdded,
  colourDeleted,
  colourMerged,
  colourMoved,
  colourName,
  colourRenamed,
  colourReplaced,
  knotsByColour,
  recoloured,
} from '../edit/colours.js';
import './sample.js';

/** What the palette fires as `palette-edit`. */
export interface PaletteEdit {
  readonly chart: Chart;
  readonly what: string;
  /** The colour to draw with afterwards, by its place in the legend. */
  readonly colour: number;
  /** Where each colour is afterwards; not given where none has moved. */
  readonly places?: readonly number[];
}

/** Shades that a new colour begins with, each until it is taken. */
const NEW_SHADES = ['#b8323a', '#e0b73c', '#6b4a86', '#2f8f8b', '#8a5a3c', '#d98fa3', '#1b2530'];

/** The legend, to be changed: names, shades, order, and colours drawn in other colours. */
export class Palette extends LitElement {
  static override properties = {
    chart: { attribute: false },
    colour: { attribute: false },
    ground: { attribute: false },
    other: { state: true },
    problem: { state: true },
  };

  declare chart: Chart | null;
  declare colour: number;
  declare ground: number;
  declare private other: number | null;
  declare private problem: string;

  private counted: { of: Uint8Array; many: readonly number[] } | null = null;

  constructor() {
    super();
    this.chart = null;
    this.colour = 0;
    this.ground = 0;
    this.other = null;
    this.problem = '';
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  private edit(make: () => Omit<PaletteEdit, 'what'>, what: string): void {
    const { chart } = this;
    if (chart === null) return;
    try {
      const made = make();
      this.problem = '';
      if (made.chart === chart) return;
      const detail: PaletteEdit = { ...made, what };
      this.dispatchEvent(new CustomEvent<PaletteEdit>('palette-edit', { detail }));
    } catch (error) {
      this.problem = error instanceof Error ? error.message : String(error);
    }
  }

  protected override render(): TemplateResult {
    const { chart, colour: index } = this;
    const colour = chart?.colours[index];
    if (chart === null || colour === undefined) return html`${nothing}`;
    const many = this.manyOf(chart, index);
    return html`
      <h3>
        <halfhitch-sample .colour=${{ hex: colour.hex, place: index }}></halfhitch-sample>
        Colour ${index + 1}, ${colourName(colour)}
      </h3>
      <p class="hint">
        Drawn in ${many.toLocaleString('en-GB')} ${many === 1 ? 'knot' : 'knots'}.
      </p>
      <div class="fields">
        <label>
          Name
          <input
            type="text"
            maxlength="200"
            .value=${colour.name}
            @change=${(event: Event) => this.rename(event)}
          />
        </label>
        <label>
          Shade
          <input
            type="color"
            .value=${colour.hex}
            @change=${(event: Event) => this.recolour(event)}
          />
        </label>
      </div>
      <div class="draw-row" role="group" aria-label="Place in the legend">
        <button type="button" aria-disabled=${String(index === 0)} @click=${() => this.move(-1)}>
          Earlier
        </button>
        <button
          type="button"
          aria-disabled=${String(index === chart.colours.length - 1)}
          @click=${() => this.move(1)}
        >
          Later
        </button>
        <button type="button" aria-disabled=${String(many > 0)} @click=${() => this.deleteColour()}>
          Delete
        </button>
      </div>
      ${chart.colours.length > 1 ? this.intoAnother(chart, index) : nothing}
      ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
      <div class="draw-row">
        <button type="button" @click=${() => this.add()}>Add a colour</button>
      </div>
      <label class="draw-ground">
        Ground: left where something is taken away
        <select @change=${(event: Event) => this.chooseGround(event)}>
          ${this.choices(chart, this.ground)}
        </select>
      </label>
    `;
  }

  private intoAnother(chart: Chart, index: number): TemplateResult {
    const other = this.otherOf(chart, index);
    return html`<div class="draw-into">
      <label>
        Draw all of it in
        <select
          @change=${(event: Event) => {
            this.other = Number((event.target as HTMLSelectElement).value);
          }}
        >
          ${this.choices(chart, other, index)}
        </select>
      </label>
      <div class="draw-row">
        <button
          type="button"
          @click=${() =>
            this.edit(
              () => ({ chart: colourReplaced(chart, index, other), colour: index }),
              'Replace a colour',
            )}
        >
          Replace
        </button>
        <button type="button" @click=${() => this.merge(chart, index, other)}>
          Merge and delete
        </button>
      </div>
    </div>`;
  }

  private choices(chart: Chart, chosen: number, without = -1): TemplateResult[] {
    return chart.colours.flatMap((colour, place) =>
      place === without
        ? []
        : [
            html`<option value=${place} .selected=${place === chosen}>
              ${place + 1} ${colourName(colour)}
            </option>`,
          ],
    );
  }

  private otherOf(chart: Chart, index: number): number {
    const { other } = this;
    if (other !== null && other !== index && other < chart.colours.length) return other;
    return index === 0 ? 1 : 0;
  }

  private manyOf(chart: Chart, index: number): number {
    if (this.counted?.of !== chart.cells) {
      this.counted = { of: chart.cells, many: knotsByColour(chart) };
    }
    return this.counted.many[index] ?? 0;
  }

  private rename(event: Event): void {
    const name = (event.target as HTMLInputElement).value;
    const { chart, colour } = this;
    if (chart === null) return;
    this.edit(() => ({ chart: colourRenamed(chart, colour, name), colour }), 'Rename a colour');
  }

  private recolour(event: Event): void {
    const input = event.target as HTMLInputElement;
    const { chart, colour } = this;
    if (chart === null) return;
    this.edit(() => ({ chart: recoloured(chart, colour, input.value), colour }), 'Change a shade');
    input.value = this.chart?.colours[colour]?.hex ?? input.value;
  }

  private move(by: 1 | -1): void {
    const { chart, colour } = this;
    const to = colour + by;
    if (chart === null || to < 0 || to >= chart.colours.length) return;
    const places = chart.colours.map((_, place) =>
      place === colour ? to : place === to ? colour : place,
    );
    this.edit(
      () => ({ chart: colourMoved(chart, colour, to), colour: to, places }),
      'Change the order of the colours',
    );
  }

  private merge(chart: Chart, from: number, into: number): void {
    const places = chart.colours.map((_, place) => {
      const now = place === from ? into : place;
      return now > from ? now - 1 : now;
    });
    const colour = places[into] as number;
    this.edit(
      () => ({ chart: colourMerged(chart, from, into), colour, places }),
      'Merge two colours',
    );
  }

  private deleteColour(): void {
    const { chart, colour } = this;
    if (chart === null) return;
    const places = chart.colours.map((_, place) => (place > colour ? place - 1 : place));
    this.edit(
      () => ({ chart: colourDeleted(chart, colour), colour: Math.max(0, colour - 1), places }),
      'Delete a colour',
    );
  }

  private add(): void {
    const { chart } = this;
    if (chart === null) return;
    const taken = new Set(chart.colours.map(({ hex }) => hex));
    const shade = [...NEW_SHADES, ...greys()].find((hex) => !taken.has(hex)) ?? '#000000';
    this.edit(
      () => ({ chart: colourAdded(chart, shade, ''), colour: chart.colours.length }),
      'Add a colour',
    );
  }

  private chooseGround(event: Event): void {
    const detail = Number((event.target as HTMLSelectElement).value);
    this.dispatchEvent(new CustomEvent<number>('palette-ground', { detail }));
  }
}

/** More greys than a chart can have colours. */
function greys(): string[] {
  return Array.from({ length: 72 }, (_, i) => {
    const level = (24 + 3 * i).toString(16).padStart(2, '0');
    return `#${level}${level}${level}`;
  });
}

customElements.define('halfhitch-palette', Palette);
