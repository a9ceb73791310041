import type { WorthSwapping } from '@halfhitch/geometry';
import { html, nothing, type TemplateResult } from 'lit';
import { figures } from '../view/figures.js';
import { millimetres } from './in-words.js';
import type { CutSheet } from './sheet.js';

/** Strings of one colour that share their knots unevenly, and where to swap them. */
export function swaps(
  { swaps: found }: CutSheet,
  swap: (one: WorthSwapping) => void,
): TemplateResult | typeof nothing {
  if (found.length === 0) return nothing;
  return html`<section class="cut-swaps" aria-labelledby="cut-swaps-name">
    <h3 id="cut-swaps-name">Shared out more evenly</h3>
    <ul>
      ${found.map(
        (one) => html`<li>
          <p>
            ${one.strings[0]} and ${one.strings[1]} have one colour and meet in row
            ${figures(one.row + 1)}, knot ${figures(one.place + 1)}. Tied ${one.instead} in place of
            ${one.kind} there, they go on in each other’s place: the picture stays, and the longer
            one becomes ${millimetres(one.saves)} shorter.
          </p>
          <button type="button" @click=${() => swap(one)}>Swap them there</button>
        </li>`,
      )}
    </ul>
  </section>`;
}
