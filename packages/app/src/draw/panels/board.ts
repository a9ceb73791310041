import { html, nothing, type TemplateResult } from 'lit';

/** A sheet that can be seen larger and smaller. */
export interface Zoomed {
  zoomBy(way: 1 | -1): void;
  fit(): void;
}

/** @param sheet looked for when a button is pressed: it may not be in the page before */
export function zoomButtons(sheet: () => Zoomed | null): TemplateResult {
  return html`
    <button
      type="button"
      aria-label="Smaller"
      title="Smaller (−)"
      @click=${() => sheet()?.zoomBy(-1)}
    >−</button>
    <button
      type="button"
      aria-label="Larger"
      title="Larger (+)"
      @click=${() => sheet()?.zoomBy(1)}
    >+</button>
    <button type="button" @click=${() => sheet()?.fit()}>Whole width</button>
  `;
}

/** Switches a way in which what is drawn is shown. */
export function lookButton(
  label: string,
  about: string,
  on: boolean,
  toggle: () => void,
): TemplateResult {
  return html`<button
    type="button"
    title=${about}
    aria-pressed=${String(on)}
    @click=${toggle}
  >${label}</button>`;
}

/** The knot that has the cursor, what was done, and what could not be. */
export function boardWords(here: string, said: string, problem: string): TemplateResult {
  return html`
    <p class="draw-here">${here}</p>
    <p class="draw-said" role="status">${said}</p>
    ${
      problem === ''
        ? nothing
        : html`<p class="field-error draw-problem" role="alert">${problem}</p>`
    }
  `;
}
