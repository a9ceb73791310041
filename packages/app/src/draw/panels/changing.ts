import type { Chart } from '@halfhitch/core';
import { html, type nothing, type TemplateResult } from 'lit';
import { type Area, areaInWords } from '../edit/area.js';
import { type Across, deleted, duplicated, inserted } from '../edit/lines-of-knots.js';
import type { Place } from '../edit/place.js';
import type { Drawing } from '../sheet/drawing.js';

export interface ChangingWish {
  readonly chart: Chart;
  readonly selection: Area | null;
  readonly place: Place;
  readonly ground: number;
  /** Does something with the selection. */
  readonly act: (act: (drawing: Drawing) => void) => void;
  /** Changes the chart; what can't be is said. */
  readonly edit: (make: (chart: Chart) => Chart, what: string) => void;
}

/**
 * Changes of the selection, of lines of knots and of the whole chart.
 *
 * @param symmetries where they do not stand with the tools
 * @param whole buttons for changes of the whole chart
 */
export function changingCard(
  wish: ChangingWish,
  symmetries: TemplateResult | typeof nothing,
  whole: TemplateResult,
): TemplateResult {
  return html`<section class="card" aria-labelledby="changing-name">
    <h2 id="changing-name">Change</h2>
    ${symmetries} ${selectionButtons(wish)} ${lineButtons('rows', wish)}
    ${lineButtons('columns', wish)}
    <h3>Whole chart</h3>
    <div class="draw-row">${whole}</div>
  </section>`;
}

/** What is done to the selection or to the whole chart at once. */
function selectionButtons({ selection, act }: ChangingWish): TemplateResult {
  const button = (
    label: string,
    what: (drawing: Drawing) => void,
    disabled = false,
  ): TemplateResult => html`<button
    type="button"
    aria-disabled=${String(disabled)}
    @click=${() => {
      if (!disabled) act(what);
    }}
  >${label}</button>`;
  const none = selection === null;
  return html`
    <h3>Selection</h3>
    <p class="hint">Now: ${none ? 'the whole chart' : areaInWords(selection)}.</p>
    <div class="draw-row" role="group" aria-label="Selection">
      ${button('Mirror left to right', (drawing) => drawing.mirror('sides'))}
      ${button('Mirror top to bottom', (drawing) => drawing.mirror('ends'))}
      ${button('Turn by half', (drawing) => drawing.mirror('turn'))}
      ${button('Copy', (drawing) => drawing.copySelection())}
      ${button('Cut', (drawing) => drawing.cutSelection())}
      ${button('Paste', (drawing) => drawing.paste())}
      ${button('Empty', (drawing) => drawing.empty(), none)}
      ${button('Select all', (drawing) => drawing.selectAll())}
      ${button('Select nothing', (drawing) => drawing.select(null), none)}
    </div>
  `;
}

/** Rows or columns put in, doubled and taken out: the selection's, or the one of the cursor. */
function lineButtons(across: Across, wish: ChangingWish): TemplateResult {
  const { ground } = wish;
  const { at, many } = linesOf(across, wish);
  const [name, one, before, after] =
    across === 'rows'
      ? (['Rows', 'row', 'above', 'below'] as const)
      : (['Columns', 'column', 'on the left', 'on the right'] as const);
  const which = many === 1 ? `${one} ${at + 1}` : `${across} ${at + 1} to ${at + many}`;
  const button = (
    label: string,
    what: string,
    make: (chart: Chart) => Chart,
  ): TemplateResult => html`<button type="button" @click=${() => wish.edit(make, what)}>
    ${label}
  </button>`;
  return html`
    <h3>${name}</h3>
    <p class="hint">At ${which}.</p>
    <div class="draw-row" role="group" aria-label=${name}>
      ${button(`New ${before}`, `Put in ${across}`, (chart) =>
        inserted(chart, across, at, many, ground),
      )}
      ${button(`New ${after}`, `Put in ${across}`, (chart) =>
        inserted(chart, across, at + many, many, ground),
      )}
      ${button('Double', `Double ${across}`, (chart) => duplicated(chart, across, at, many))}
      ${button('Take out', `Take ${across} out`, (chart) => deleted(chart, across, at, many))}
    </div>
  `;
}

function linesOf(
  across: Across,
  { chart, selection, place }: ChangingWish,
): { readonly at: number; readonly many: number } {
  const one = across === 'rows' ? 'row' : 'column';
  if (selection !== null) return { at: selection[one], many: selection[across] };
  return { at: Math.min(chart[across] - 1, place[one]), many: 1 };
}
