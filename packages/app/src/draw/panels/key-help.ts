import { html, type TemplateResult } from 'lit';
import { TOOLS } from '../tools/tools.js';

/** How to draw by keys and by hand. */
export function keyHelp(): TemplateResult {
  return html`<details class="draw-keys">
    <summary><span class="by-keys">By keys, by hand</span><span class="by-hand">By hand</span></summary>
    <p class="by-keys">
      With the chart in focus: arrows from knot to knot, <kbd>Enter</kbd> or the space bar draws,
      <kbd>Shift</kbd> with arrows selects, <kbd>Alt</kbd> with arrows moves what is selected.
      ${TOOLS.map(({ label, key }) => html`<kbd>${key.toUpperCase()}</kbd> ${label}, `)} digits or
      <kbd>[</kbd> <kbd>]</kbd> choose a colour, <kbd>H</kbd> shows the signs, <kbd>+</kbd>
      <kbd>−</kbd> change the size, <kbd>Ctrl</kbd> with <kbd>C</kbd> <kbd>X</kbd> <kbd>V</kbd>
      copy, cut and paste, <kbd>Ctrl</kbd> with <kbd>Z</kbd> takes back, <kbd>Delete</kbd> empties,
      <kbd>Escape</kbd> gives up.
    </p>
    <p>
      Two fingers push and zoom. With a mouse: hold the space bar and drag, or use the wheel, with
      <kbd>Ctrl</kbd> to zoom. Each row's number stands on the side where the row begins, and the
      line beside the rows is the way of the lead from one to the next.
    </p>
  </details>`;
}
