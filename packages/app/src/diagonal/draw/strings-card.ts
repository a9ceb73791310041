import type { ChartColour } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import '../../view/swatch.js';
import { colourName } from '../../draw/edit/colours.js';

/** More strings are scrolled, by keys as well. */
export const MANY = 40;

/** The colours in which the strings hang, each to be given the colour in hand. */
export function stringsCard(
  colours: readonly ChartColour[],
  start: Uint8Array,
  colour: number,
  choose: (colour: number) => void,
  set: (slot: number) => void,
): TemplateResult {
  const inHand = colours[colour];
  return html`
    <h2 id="strings-name">Strings at the start</h2>
    <label class="strings-colour">
      Colour in hand
      <select @change=${(event: Event) => choose(Number((event.target as HTMLSelectElement).value))}>
        ${colours.map(
          (one, place) =>
            html`<option value=${place} .selected=${place === colour}>${place + 1} ${colourName(one)}</option>`,
        )}
      </select>
    </label>
    <p class="hint">
      Choose a string to hang it in ${inHand === undefined ? 'that colour' : colourName(inHand)}.
    </p>
    <ol class="strings">
      ${Array.from(start, (one, slot) => {
        const shown = colours[one];
        const name = shown === undefined ? 'no colour' : colourName(shown);
        return html`<li>
          <button
            type="button"
            title=${name}
            aria-label=${`String ${slot + 1}: ${name}`}
            @click=${() => set(slot)}
          ><halfhitch-swatch .colour=${shown?.hex ?? '#808080'}></halfhitch-swatch><span aria-hidden="true">${slot + 1}</span></button>
        </li>`;
      })}
    </ol>
  `;
}

/** How the strings hang after a row, named by where they hung at the start. */
export function orderCard(
  colours: readonly ChartColour[],
  start: Uint8Array,
  order: Uint16Array,
  row: number,
): TemplateResult {
  const strings = start.length;
  const after = order.subarray((row + 1) * strings, (row + 2) * strings);
  return html`
    <h3>After row ${row + 1}</h3>
    <ol class="strings plain" tabindex=${strings > MANY ? '0' : nothing}>
      ${Array.from(after, (string) => {
        const shown = colours[start[string] ?? 0];
        return html`<li>
          <halfhitch-swatch .colour=${shown?.hex ?? '#808080'}></halfhitch-swatch><span>${string + 1}</span>
          ${shown === undefined ? nothing : html`<span class="unseen">, ${colourName(shown)}</span>`}
        </li>`;
      })}
    </ol>
  `;
}
