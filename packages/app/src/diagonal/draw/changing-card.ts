import { DIAGONAL_LIMITS, type Lattice } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { numberField, numberIn } from '../../draw/dialogs/number-field.js';
import { checkName } from '../../draw/edit/names.js';
import type { Symmetry } from '../../draw/edit/symmetry.js';
import { type DiagonalChange, type DiagonalProject, diagonalNamed } from '../../project/project.js';
import { doubled, OPERATIONS, operated } from '../edit/operations.js';

export interface ChangingWish {
  readonly project: DiagonalProject;
  readonly symmetry: Symmetry;
  /** What the lattice has. */
  readonly has: Symmetry;
  readonly choose: (symmetry: Symmetry) => void;
  readonly relay: (lattice: Lattice) => void;
  readonly edit: (make: () => DiagonalChange, what: string) => void;
}

const WAYS: readonly {
  readonly way: keyof Symmetry;
  readonly label: string;
  readonly needs: string;
}[] = [
  { way: 'sides', label: 'both sides', needs: 'needs an even number of strings' },
  { way: 'ends', label: 'both ends', needs: 'needs an odd number of rows' },
  { way: 'turn', label: 'turned by half', needs: 'needs strings and rows of which one is odd' },
];

/** Drawing alike, and changes of the whole pattern. */
export function changingCard(wish: ChangingWish): TemplateResult {
  return html`
    <h2 id="changing-name">Change</h2>
    ${drawnAlike(wish)}
    <h3>Whole pattern</h3>
    <div class="draw-row">
      ${OPERATIONS.map(
        (operation) => html`<button
          type="button"
          @click=${() => wish.edit(() => operated(wish.project, operation), operation.what)}
        >${operation.label}</button>`,
      )}
      <button
        type="button"
        title="The knots once more below themselves"
        @click=${() => wish.edit(() => doubled(wish.project), 'Make it twice as long')}
      >Twice as long</button>
    </div>
    ${nameField(wish)}
    ${sizeForm(wish)}
  `;
}

function drawnAlike({ symmetry, has, choose }: ChangingWish): TemplateResult {
  return html`<fieldset class="draw-symmetry">
    <legend>Drawn alike</legend>
    ${WAYS.map(
      ({ way, label, needs }) => html`<label class="check">
        <input
          type="checkbox"
          .checked=${symmetry[way] && has[way]}
          ?disabled=${!has[way]}
          @change=${() => choose({ ...symmetry, [way]: !symmetry[way] })}
        />
        <span>${label}${has[way] ? nothing : html`<span class="hint">${needs}</span>`}</span>
      </label>`,
    )}
  </fieldset>`;
}

function nameField({ project, edit }: ChangingWish): TemplateResult {
  const { name } = project.pattern;
  return html`<label class="lattice-name">
    Name
    <input
      type="text"
      autocomplete="off"
      maxlength=${DIAGONAL_LIMITS.maxName}
      .value=${name}
      @change=${(event: Event) => {
        const written = (event.target as HTMLInputElement).value.trim();
        if (written === name) return;
        edit(() => diagonalNamed(project, checkName(written, 'name')), 'Rename');
      }}
    />
  </label>`;
}

function sizeForm({ project, relay }: ChangingWish): TemplateResult {
  const { strings, rows, first } = project.pattern;
  return html`<form
    class="lattice-size"
    novalidate
    @submit=${(event: SubmitEvent) => {
      event.preventDefault();
      const answers = new FormData(event.target as HTMLFormElement);
      relay({
        strings: numberIn(answers, 'strings'),
        rows: numberIn(answers, 'rows'),
        first: answers.get('first') === '2' ? 1 : 0,
      });
    }}
  >
    <h3>Size</h3>
    <div class="fields">
      ${numberField('strings', 'Strings', strings, DIAGONAL_LIMITS.maxStrings)}
      ${numberField('rows', 'Rows', rows, DIAGONAL_LIMITS.maxRows)}
      <label>
        First knot on slots
        <select name="first">
          <option value="1" .selected=${first === 0}>1 and 2</option>
          <option value="2" .selected=${first === 1}>2 and 3</option>
        </select>
      </label>
    </div>
    <div class="draw-row"><button type="submit">Change the size</button></div>
  </form>`;
}
