import type { ChartColour } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { PageElement } from '../../view/page-element.js';
import { reasonOf } from '../../work/reason.js';
import {
  colourName,
  type LegendEdit,
  withColour,
  withDeleted,
  withMerged,
  withMoved,
  withName,
  withReplaced,
  withShade,
} from '../edit/legend.js';
import './sample.js';

/** What the palette fires as `palette-edit`. */
export interface PaletteEdit extends LegendEdit {
  readonly what: string;
  /** The colour to draw with afterwards, by its place in the legend. */
  readonly colour: number;
}

/** How often each colour is used. */
export interface ColourUses {
  /** By the place of the colour in the legend. */
  readonly many: readonly number[];
  /** "Drawn in 3 knots." */
  readonly inWords: (many: number) => string;
  /** A knot that has a colour, from 1; null where none has. */
  readonly first: (colour: number) => { readonly row?: number; readonly column?: number } | null;
}

/** Shades that a new colour begins with, each until it is taken. */
const NEW_SHADES = ['#b8323a', '#e0b73c', '#6b4a86', '#2f8f8b', '#8a5a3c', '#d98fa3', '#1b2530'];

/** The legend, to be changed: names, shades, order, and colours drawn in other colours. */
export class Palette extends PageElement {
  static override properties = {
    colours: { attribute: false },
    uses: { attribute: false },
    colour: { attribute: false },
    ground: { attribute: false },
    other: { state: true },
    problem: { state: true },
  };

  declare colours: readonly ChartColour[];
  declare uses: ColourUses | null;
  declare colour: number;
  /** Null where none is asked for. */
  declare ground: number | null;
  declare private other: number | null;
  declare private problem: string;

  constructor() {
    super();
    this.colours = [];
    this.uses = null;
    this.colour = 0;
    this.ground = 0;
    this.other = null;
    this.problem = '';
  }

  private edit(make: () => LegendEdit, what: string, colourOf: (made: LegendEdit) => number): void {
    const { colours } = this;
    try {
      const made = make();
      this.problem = '';
      if (made.colours === colours && made.places.every((place, at) => place === at)) return;
      const detail: PaletteEdit = { ...made, what, colour: colourOf(made) };
      this.dispatchEvent(new CustomEvent<PaletteEdit>('palette-edit', { detail }));
    } catch (error) {
      this.problem = reasonOf(error);
    }
  }

  protected override render(): TemplateResult {
    const { colours, uses, colour: index } = this;
    const colour = colours[index];
    if (uses === null || colour === undefined) return html`${nothing}`;
    const many = uses.many[index] ?? 0;
    return html`
      <h3>
        <halfhitch-sample .colour=${{ hex: colour.hex, place: index }}></halfhitch-sample>
        Colour ${index + 1}, ${colourName(colour)}
      </h3>
      <p class="hint">${uses.inWords(many)}</p>
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
          aria-disabled=${String(index === colours.length - 1)}
          @click=${() => this.move(1)}
        >
          Later
        </button>
        <button type="button" aria-disabled=${String(many > 0)} @click=${() => this.deleteColour(uses)}>
          Delete
        </button>
      </div>
      ${colours.length > 1 ? this.intoAnother(index) : nothing}
      ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
      <div class="draw-row">
        <button type="button" @click=${() => this.add()}>Add a colour</button>
      </div>
      ${
        this.ground === null
          ? nothing
          : html`<label class="draw-ground">
            Ground: left where something is taken away
            <select @change=${(event: Event) => this.chooseGround(event)}>
              ${this.choices(this.ground)}
            </select>
          </label>`
      }
    `;
  }

  private intoAnother(index: number): TemplateResult {
    const { colours } = this;
    const other = this.otherOf(index);
    return html`<div class="draw-into">
      <label>
        Draw all of it in
        <select
          @change=${(event: Event) => {
            this.other = Number((event.target as HTMLSelectElement).value);
          }}
        >
          ${this.choices(other, index)}
        </select>
      </label>
      <div class="draw-row">
        <button
          type="button"
          @click=${() =>
            this.edit(
              () => withReplaced(colours, index, other),
              'Replace a colour',
              () => index,
            )}
        >
          Replace
        </button>
        <button
          type="button"
          @click=${() =>
            this.edit(
              () => withMerged(colours, index, other),
              'Merge two colours',
              ({ places }) => places[other] as number,
            )}
        >
          Merge and delete
        </button>
      </div>
    </div>`;
  }

  private choices(chosen: number, without = -1): TemplateResult[] {
    return this.colours.flatMap((colour, place) =>
      place === without
        ? []
        : [
            html`<option value=${place} .selected=${place === chosen}>
              ${place + 1} ${colourName(colour)}
            </option>`,
          ],
    );
  }

  private otherOf(index: number): number {
    const { other } = this;
    if (other !== null && other !== index && other < this.colours.length) return other;
    return index === 0 ? 1 : 0;
  }

  private rename(event: Event): void {
    const name = (event.target as HTMLInputElement).value;
    const { colours, colour } = this;
    this.edit(
      () => withName(colours, colour, name),
      'Rename a colour',
      () => colour,
    );
  }

  private recolour(event: Event): void {
    const input = event.target as HTMLInputElement;
    const { colours, colour } = this;
    this.edit(
      () => withShade(colours, colour, input.value),
      'Change a shade',
      () => colour,
    );
    input.value = this.colours[colour]?.hex ?? input.value;
  }

  private move(by: 1 | -1): void {
    const { colours, colour } = this;
    const to = colour + by;
    if (to < 0 || to >= colours.length) return;
    this.edit(
      () => withMoved(colours, colour, to),
      'Change the order of the colours',
      () => to,
    );
  }

  private deleteColour(uses: ColourUses): void {
    const { colours, colour } = this;
    this.edit(
      () => withDeleted(colours, colour, uses.first(colour)),
      'Delete a colour',
      () => Math.max(0, colour - 1),
    );
  }

  private add(): void {
    const { colours } = this;
    const taken = new Set(colours.map(({ hex }) => hex));
    const shade = [...NEW_SHADES, ...greys()].find((hex) => !taken.has(hex)) ?? '#000000';
    this.edit(
      () => withColour(colours, shade, ''),
      'Add a colour',
      () => colours.length,
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
