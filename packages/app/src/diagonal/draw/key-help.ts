import { KNOT_KINDS } from '@halfhitch/core';
import { html, type TemplateResult } from 'lit';
import { DRAW_TOOLS } from './tools.js';

/** How to draw on the lattice by keys and by hand. */
export function keyHelp(): TemplateResult {
  return html`<details class="draw-keys">
    <summary><span class="by-keys">By keys, by hand</span><span class="by-hand">By hand</span></summary>
    <p class="by-keys">
      With the pattern in focus: arrows from knot to knot, <kbd>Enter</kbd> or the space bar draws.
      ${DRAW_TOOLS.map(({ label, key }) => html`<kbd>${key.toUpperCase()}</kbd> ${label}, `)} digits
      choose a colour or a kind of knot (${KNOT_KINDS.map((kind, at) => `${at + 1} ${kind}`).join(', ')}),
      <kbd>A</kbd> any colour, <kbd>0</kbd> no knot, <kbd>H</kbd> shows the signs, <kbd>+</kbd>
      <kbd>−</kbd> change the size, <kbd>Ctrl</kbd> with <kbd>Z</kbd> takes back.
    </p>
    <p>
      Two fingers push and zoom; with a mouse, use the wheel, with <kbd>Ctrl</kbd> to zoom. The
      strings hang down from above; each knot is a lozenge on the two strings it is tied with.
    </p>
  </details>`;
}
