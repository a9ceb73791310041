import { html, type TemplateResult } from 'lit';
import type { Symmetry } from '../edit/symmetry.js';

const WAYS: readonly { readonly way: keyof Symmetry; readonly label: string }[] = [
  { way: 'sides', label: 'both sides' },
  { way: 'ends', label: 'both ends' },
  { way: 'turn', label: 'turned by half' },
];

/** In which ways what is drawn is drawn again elsewhere. */
export function symmetries(
  symmetry: Symmetry,
  choose: (symmetry: Symmetry) => void,
): TemplateResult {
  return html`<fieldset class="draw-symmetry">
    <legend>Drawn alike</legend>
    ${WAYS.map(
      ({ way, label }) => html`<label class="check">
        <input
          type="checkbox"
          .checked=${symmetry[way]}
          @change=${() => choose({ ...symmetry, [way]: !symmetry[way] })}
        />
        ${label}
      </label>`,
    )}
  </fieldset>`;
}
