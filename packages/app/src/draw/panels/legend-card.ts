import type { Chart } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { counted } from '../../view/figures.js';
import { firstDrawn, knotsByColour } from '../edit/colours.js';
import '../palette/palette.js';
import type { ColourUses, PaletteEdit } from '../palette/palette.js';

/** Warnings that are listed. */
const MOST_LISTED = 20;

/** Up to so many are laid open. */
const FEW = 2;

export interface LegendWish {
  readonly chart: Chart;
  readonly uses: ColourUses;
  readonly colour: number;
  readonly ground: number;
  /** Colours that are hard to tell apart, in sentences. */
  readonly warnings: readonly string[];
  edit(edit: PaletteEdit): void;
  setGround(ground: number): void;
}

/** The colours of a chart, and what is hard to tell apart. */
export function legendCard(wish: LegendWish): TemplateResult {
  const { warnings } = wish;
  return html`<section class="card draw-legend" aria-labelledby="legend-name">
    <h2 id="legend-name">Colours</h2>
    <halfhitch-palette
      .colours=${wish.chart.colours}
      .uses=${wish.uses}
      .colour=${wish.colour}
      .ground=${wish.ground}
      @palette-edit=${({ detail }: CustomEvent<PaletteEdit>) => wish.edit(detail)}
      @palette-ground=${({ detail }: CustomEvent<number>) => wish.setGround(detail)}
    ></halfhitch-palette>
    ${
      warnings.length === 0
        ? nothing
        : html`<details class="draw-warnings" ?open=${warnings.length <= FEW}>
          <summary>Hard to tell apart: ${warnings.length}</summary>
          <ul class="notices">
            ${warnings.slice(0, MOST_LISTED).map((warning) => html`<li>${warning}</li>`)}
          </ul>
        </details>`
    }
  </section>`;
}

/** How often each colour of a chart is drawn, and where. */
export function usesOf(chart: Chart): ColourUses {
  return {
    many: knotsByColour(chart),
    inWords: (many) => `Drawn in ${counted(many, 'knot')}.`,
    first: (colour) => firstDrawn(chart, colour),
  };
}
