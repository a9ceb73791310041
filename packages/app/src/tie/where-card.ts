import { html, nothing, type TemplateResult } from 'lit';
import { knotInWords, type Place, type PlaceDetail } from '../view/fabric-picture.js';
import type { Tile } from '../work/fabric-tile.js';
import type { Piece } from '../work/messages.js';
import { number } from './progress-card.js';

export interface WhereActions {
  drawTile(tile: Tile): Promise<string>;
  /** A knot was tapped, or gone to by keys. */
  choose(place: Place): void;
  /** The chosen knot is the one to be tied next. */
  hereIs(place: Place): void;
  jump(row: string, string: string): void;
  zoom(way: 1 | -1): void;
}

/**
 * The piece as thread, with what is not tied yet veiled; and ways to say where one is.
 *
 * @param chosen a knot that was tapped; null while none was
 * @param next the row and base string of the knot in hand, from 1
 * @param error what is wrong with the row and string filled in
 */
export function whereCard(
  piece: Piece,
  chosen: Place | null,
  next: { readonly row: number; readonly string: number },
  error: string,
  act: WhereActions,
): TemplateResult {
  return html`
    <div class="bar">
      <h2 id="where-name">Where you are</h2>
      <div class="zoom" role="group" aria-label="Size of the picture">
        <button type="button" aria-label="Smaller" @click=${() => act.zoom(-1)}>−</button>
        <button type="button" aria-label="Larger" @click=${() => act.zoom(1)}>+</button>
      </div>
    </div>
    <halfhitch-fabric
      .drawTile=${(tile: Tile) => act.drawTile(tile)}
      @place=${(event: CustomEvent<PlaceDetail>) => act.choose(event.detail)}
    ></halfhitch-fabric>
    <div class="tie-here">
      ${
        chosen === null
          ? html`<p class="hint">
            What is not tied yet is faded. If you are somewhere else, tap the knot that you tie next,
            or go to it by the arrow keys and press <kbd>Enter</kbd>.
          </p>`
          : html`<p>${knotInWords(piece, chosen)}.</p>
            <button type="button" class="primary" @click=${() => act.hereIs(chosen)}>
              I am here: this knot is next
            </button>`
      }
    </div>
    <form
      class="tie-jump"
      novalidate
      @submit=${(event: SubmitEvent) => {
        event.preventDefault();
        const form = new FormData(event.target as HTMLFormElement);
        act.jump(String(form.get('row')), String(form.get('string')));
      }}
    >
      ${numberField('row', 'Row', next.row, piece.rows, error)}
      ${numberField('string', 'Base string', next.string, piece.columns, error)}
      <button type="submit">Go there</button>
      ${error === '' ? nothing : html`<p class="field-error" id="tie-jump-error" role="alert">${error}</p>`}
    </form>
  `;
}

function numberField(
  name: string,
  label: string,
  value: number,
  most: number,
  error: string,
): TemplateResult {
  return html`<label class="tie-field">
    <span>${label} <span class="of">of ${number(most)}</span></span>
    <input
      type="text"
      inputmode="numeric"
      name=${name}
      autocomplete="off"
      maxlength="6"
      .value=${String(value)}
      aria-invalid=${error === '' ? 'false' : 'true'}
      aria-describedby=${error === '' ? nothing : 'tie-jump-error'}
    />
  </label>`;
}

/** A whole number that was filled in, or null when it is none from 1 to `most`. */
export function readPlace(text: string, most: number): number | null {
  if (!/^\s*\d{1,6}\s*$/.test(text)) return null;
  const value = Number(text);
  return value >= 1 && value <= most ? value : null;
}
