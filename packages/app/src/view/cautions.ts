import { html, type TemplateResult } from 'lit';

/**
 * What can hurt someone in this work, said where it is found but does not get in the way, and what
 * is seldom wanted.
 */
export function cautions(demo: () => void, diagonalDemo: () => void): TemplateResult {
  return html`<footer class="foot">
    <details>
      <summary>Take care</summary>
      <ul>
        <li>
          Hands: knotting is the same small movement many times. Rest every half hour, loosen your
          hands and shoulders, and stop when something aches or goes numb.
        </li>
        <li>
          Small children: keep loose threads, cords and bracelets away from them. A cord round a neck
          can strangle, and a short end can be swallowed. Make a bracelet for a child so that it
          opens under a pull, and take it off for sleep and climbing.
        </li>
        <li>
          Finishing ends: cut away from your fingers. Singe only synthetic thread, and only the very
          end, away from hair and curtains, with water at hand. Cotton burns on: sew its ends in.
        </li>
      </ul>
    </details>
    <div class="demos">
      <button type="button" @click=${demo}>Show the demo</button>
      <button type="button" @click=${diagonalDemo}>Show a diagonal piece</button>
    </div>
    <p>Everything is worked out on this device. Nothing that you draw leaves it.</p>
  </footer>`;
}
