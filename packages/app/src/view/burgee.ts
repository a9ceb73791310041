import { html, type TemplateResult } from 'lit';

/** The club's flag: the mark of the page. */
export function burgee(): TemplateResult {
  return html`<svg class="burgee" viewBox="0 0 44 32" aria-hidden="true" focusable="false">
    <path d="M4 2v29" fill="none" stroke="currentColor" stroke-width="2.6" stroke-linecap="round" />
    <path d="M6.5 4 41 13 6.5 22z" fill="currentColor" />
    <path class="stripe" d="M6.5 10.4 31 13 6.5 15.6z" />
  </svg>`;
}
