import { html, nothing, type TemplateResult } from 'lit';
import type { Place } from '../view/fabric-picture.js';
import { figures } from '../view/figures.js';
import type { Course, KnotPlace } from './course.js';

export interface WhereActions {
  /** The chosen knot is the one to be tied next. */
  hereIs(place: Place): void;
  jump(row: string, across: string): void;
  zoom(way: 1 | -1): void;
}

/** What is shown of the piece, and of a knot that was tapped in it. */
export interface WhereShown {
  readonly picture: TemplateResult;
  /** A knot that was tapped, and what it is; null while none was. */
  readonly chosen: { readonly place: Place; readonly inWords: string } | null;
}

/**
 * The piece, with what is not tied yet veiled; and ways to say where one is.
 *
 * @param next the knot in hand; null when all is tied
 * @param error what is wrong with the place filled in
 */
export function whereCard(
  course: Course,
  { picture, chosen }: WhereShown,
  next: KnotPlace | null,
  error: string,
  act: WhereActions,
): TemplateResult {
  const { label, most } = course.across;
  const last = course.rows - 1;
  const fields =
    next === null
      ? { row: course.rows, across: most(last) }
      : { row: next.row + 1, across: course.fieldOf(next) };
  return html`
    <div class="bar">
      <h2 id="where-name">Where you are</h2>
      <div class="zoom" role="group" aria-label="Size of the picture">
        <button type="button" aria-label="Smaller" @click=${() => act.zoom(-1)}>−</button>
        <button type="button" aria-label="Larger" @click=${() => act.zoom(1)}>+</button>
      </div>
    </div>
    ${picture}
    <div class="tie-here">
      ${
        chosen === null
          ? html`<p class="hint">
            What is not tied yet is faded. If you are somewhere else, tap the knot that you tie
            next<span class="by-keys">, or go to it by the arrow keys and press <kbd>Enter</kbd></span>.
          </p>`
          : html`<p>${chosen.inWords}.</p>
            <button type="button" class="primary" @click=${() => act.hereIs(chosen.place)}>
              I am here: this knot is next
            </button>`
      }
    </div>
    <form
      class="tie-jump"
      novalidate
      @submit=${(event: SubmitEvent) => {
        event.preventDefault();
        const form = new FormData(event.target as HTMLFormElement);
        act.jump(String(form.get('row')), String(form.get('string')));
      }}
    >
      ${numberField('row', 'Row', fields.row, course.rows, error)}
      ${numberField('string', label, fields.across, most(next?.row ?? last), error)}
      <button type="submit">Go there</button>
      ${error === '' ? nothing : html`<p class="field-error" id="tie-jump-error" role="alert">${error}</p>`}
    </form>
  `;
}

function numberField(
  name: string,
  label: string,
  value: number,
  most: number,
  error: string,
): TemplateResult {
  return html`<label class="tie-field">
    <span>${label} <span class="of">of ${figures(most)}</span></span>
    <input
      type="text"
      inputmode="numeric"
      name=${name}
      autocomplete="off"
      maxlength="6"
      .value=${String(value)}
      aria-invalid=${error === '' ? 'false' : 'true'}
      aria-describedby=${error === '' ? nothing : 'tie-jump-error'}
    />
  </label>`;
}

/** The place that was filled in, or what is wrong with it. */
export function placeFilledIn(course: Course, row: string, across: string): Place | string {
  const atRow = readPlace(row, course.rows);
  const { label, most } = course.across;
  const last = atRow === null ? most(0) : most(atRow - 1);
  const at = readPlace(across, last);
  return atRow === null || at === null
    ? `Fill in a row from 1 to ${course.rows} and a ${label.toLowerCase()} from 1 to ${last}.`
    : course.filledIn(atRow, at);
}

/** A whole number that was filled in, or null when it is none from 1 to `most`. */
function readPlace(text: string, most: number): number | null {
  if (!/^\s*\d{1,6}\s*$/.test(text)) return null;
  const value = Number(text);
  return value >= 1 && value <= most ? value : null;
}
