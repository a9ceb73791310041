import { html, type TemplateResult } from 'lit';
import { colourName } from '../../draw/edit/colours.js';
import { figures } from '../../view/figures.js';
import type { DiagonalPiece } from '../work/messages.js';

/** Who ties how much, string by string. */
export function sharesCard({ shares, pattern }: DiagonalPiece): TemplateResult {
  const most = Math.max(1, ...shares.map(({ ties }) => ties));
  return html`
    <h2 id="shares-name">Who ties how much</h2>
    <p class="hint">
      A string that ties needs far more thread than one that is tied onto; the Cut view has the
      lengths.
    </p>
    <div class="shares-frame" tabindex="0" role="region" aria-labelledby="shares-name">
      <table class="shares">
        <thead>
          <tr>
            <th scope="col">String</th>
            <th scope="col">Ties</th>
            <th scope="col">Is held</th>
            <th scope="col">Ends in slot</th>
          </tr>
        </thead>
        <tbody>
          ${shares.map(({ slot, colour, ties, holds, ends }) => {
            const shown = pattern.colours[colour];
            return html`<tr>
              <th scope="row">
                <halfhitch-swatch .colour=${shown?.hex ?? '#808080'}></halfhitch-swatch>
                ${slot + 1}<span class="shares-colour">, ${shown === undefined ? '' : colourName(shown)}</span>
              </th>
              <td>
                ${figures(ties)}
                <meter aria-hidden="true" min="0" max=${most} .value=${ties}></meter>
              </td>
              <td>${figures(holds)}</td>
              <td>${ends + 1}</td>
            </tr>`;
          })}
        </tbody>
      </table>
    </div>
  `;
}
