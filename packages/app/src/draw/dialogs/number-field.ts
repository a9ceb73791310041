import { html, type TemplateResult } from 'lit';

/** A field for a whole number. What is wrong with it is said when the form is sent. */
export function numberField(
  name: string,
  label: string,
  value: number,
  most: number,
): TemplateResult {
  return html`<label>
    ${label}
    <input
      type="number"
      inputmode="numeric"
      name=${name}
      min="1"
      max=${most}
      step="1"
      required
      .value=${String(value)}
    />
  </label>`;
}

/** NaN where nothing or no number is filled in. */
export function numberIn(form: FormData, name: string): number {
  const text = String(form.get(name) ?? '').trim();
  return text === '' ? Number.NaN : Number(text);
}
