import {
  type ChartColour,
  EDGE_TECHNIQUES,
  type EdgeTechnique,
  START_SIDES,
  type StartSide,
} from '@halfhitch/core';
import { html, type TemplateResult } from 'lit';
import type { KnotChoice } from '../work/messages.js';
import './swatch.js';

/** How a piece is knotted, to be chosen, and its colours. */
export function howKnotted(
  choice: KnotChoice,
  colours: readonly ChartColour[],
  choose: (change: Partial<KnotChoice>) => void,
): TemplateResult {
  return html`<section class="card setup" aria-labelledby="setup-name">
    <h2 id="setup-name">How it is knotted</h2>
    <div class="options">
      ${select('Edges', 'edge', EDGE_TECHNIQUES, choice.edge, (edge: EdgeTechnique) =>
        choose({ edge }),
      )}
      ${select('First row from the', 'start', START_SIDES, choice.start, (start: StartSide) =>
        choose({ start }),
      )}
    </div>
    <h3 class="legend-name">Colours</h3>
    <ul class="legend">
      ${colours.map(
        (colour) => html`<li><halfhitch-swatch .colour=${colour.hex}></halfhitch-swatch>
          <span>${colour.name === '' ? colour.hex : colour.name}</span></li>`,
      )}
    </ul>
  </section>`;
}

function select<Word extends string>(
  label: string,
  name: string,
  words: readonly Word[],
  chosen: Word,
  choose: (word: Word) => void,
): TemplateResult {
  return html`<label>
    ${label}
    <select
      name=${name}
      @change=${(event: Event) => choose((event.target as HTMLSelectElement).value as Word)}
    >
      ${words.map(
        (word) => html`<option value=${word} ?selected=${word === chosen}>${word}</option>`,
      )}
    </select>
  </label>`;
}
