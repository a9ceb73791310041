import { html, nothing, type TemplateResult } from 'lit';
import { figures } from '../view/figures.js';

export interface NumberField {
  /** Unlike any other in the page. */
  readonly id: string;
  readonly label: string;
  readonly unit?: string;
  /** As typed. */
  readonly value: string;
  readonly error?: string | undefined;
  readonly hint?: string;
  readonly fill: (text: string) => void;
}

/** A field for a whole number, with what is wrong with it below. */
export function numberField({
  id,
  label,
  unit,
  value,
  error,
  hint,
  fill,
}: NumberField): TemplateResult {
  const described = [
    error === undefined ? '' : `${id}-error`,
    hint === undefined ? '' : `${id}-hint`,
  ]
    .join(' ')
    .trim();
  return html`<div class="field ${error === undefined ? '' : 'wrong'}">
    <label for=${id}>${label}${unit === undefined ? nothing : html`<span class="unit">, ${unit}</span>`}</label>
    <input
      id=${id}
      type="text"
      inputmode="numeric"
      autocomplete="off"
      maxlength="8"
      aria-invalid=${error === undefined ? 'false' : 'true'}
      aria-describedby=${described === '' ? nothing : described}
      .value=${value}
      @input=${(event: Event) => fill((event.target as HTMLInputElement).value)}
    />
    ${error === undefined ? nothing : html`<p class="field-error" id="${id}-error" role="alert">${error}</p>`}
    ${hint === undefined ? nothing : html`<p class="hint" id="${id}-hint">${hint}</p>`}
  </div>`;
}

/** A whole number within its limits, or what is wrong. */
export function readWhole(text: string, least: number, most: number): number | string {
  const tidy = text.trim();
  const number = Number(tidy);
  if (/^\d+$/.test(tidy) && number >= least && number <= most) return number;
  const limits = `from ${figures(least)} to ${figures(most)}`;
  return tidy === '' ? `A whole number ${limits} is missing.` : `Give a whole number ${limits}.`;
}
