import {
  type ChartColour,
  chevrons,
  DIAGONAL_LIMITS,
  type DiagonalPattern,
  diagonalStripes,
  diamonds,
  type PieceOptions,
  wave,
  zigzag,
} from '@halfhitch/core';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { numberField, numberIn } from '../../draw/dialogs/number-field.js';
import { FIRST_COLOURS } from '../../draw/edit/blank.js';
import { checkName } from '../../draw/edit/names.js';
import type { DiagonalProject } from '../../project/project.js';
import type { Session } from '../../project/session.js';
import { PageElement } from '../../view/page-element.js';
import { attempted } from '../../work/reason.js';
import { keyed } from '../edit/keyed.js';
import { emptyPattern } from '../edit/pattern.js';

type Begun = Pick<DiagonalProject, 'pattern' | 'wanted'>;

interface Beginning {
  readonly value: string;
  readonly label: string;
  readonly about: string;
  readonly make: (options: PieceOptions) => Begun;
}

const knotted = (pattern: DiagonalPattern): Begun => ({ pattern, wanted: null });

const BEGINNINGS: readonly Beginning[] = [
  {
    value: 'empty',
    label: 'Empty lattice',
    about: 'to draw a picture on, or knot by knot',
    make: ({ strings, rows = 30, colours, name = '' }) =>
      emptyPattern(name, { strings, rows, first: 0 }, colours),
  },
  {
    value: 'stripes',
    label: 'Stripes',
    about: 'all colours in turn, slanting',
    make: (options) => knotted(diagonalStripes(options)),
  },
  {
    value: 'chevrons',
    label: 'Chevrons',
    about: 'nested arrowheads that point down',
    make: (options) => knotted(chevrons(options)),
  },
  {
    value: 'diamonds',
    label: 'Diamonds',
    about: 'nested, the first colour innermost',
    make: (options) => knotted(diamonds(options)),
  },
  {
    value: 'zigzag',
    label: 'Zigzag',
    about: 'bands to the right and back to the left',
    make: (options) => knotted(zigzag(options)),
  },
  {
    value: 'wave',
    label: 'Wave',
    about: 'bands that swing to and fro',
    make: (options) => knotted(wave(options)),
  },
];

/** Questions about a new diagonal pattern, in front of the page. */
export class NewDialog extends PageElement {
  static override properties = {
    session: { attribute: false },
    colours: { attribute: false },
    shown: { state: true },
    problem: { state: true },
  };

  declare session: Session | null;
  /** Of the open piece. */
  declare colours: readonly ChartColour[];
  declare private shown: boolean;
  declare private problem: string;

  constructor() {
    super();
    this.session = null;
    this.colours = [];
    this.shown = false;
    this.problem = '';
  }

  open(): void {
    this.problem = '';
    this.shown = true;
  }

  protected override updated(changes: PropertyValues): void {
    const dialog = this.querySelector('dialog');
    if (changes.has('shown') && dialog !== null && !dialog.open) dialog.showModal();
  }

  private close(): void {
    this.querySelector('dialog')?.close();
  }

  private onSubmit(event: SubmitEvent): void {
    event.preventDefault();
    this.problem = attempted(() => {
      const { pattern, wanted } = this.begun(new FormData(event.target as HTMLFormElement));
      this.close();
      this.session?.openDiagonal(pattern, wanted);
      location.hash = 'draw';
    });
  }

  private begun(answers: FormData): Begun {
    const written = checkName(String(answers.get('name') ?? ''), 'name');
    const rows = String(answers.get('rows') ?? '').trim();
    const all = answers.get('colours') === 'same' ? this.colours : keyed(FIRST_COLOURS);
    const beginning = BEGINNINGS.find(({ value }) => value === answers.get('piece'));
    const begun = (beginning ?? BEGINNINGS[0])?.make({
      strings: numberIn(answers, 'strings'),
      colours: all.slice(0, Math.max(1, Math.min(all.length, numberIn(answers, 'many') || 1))),
      ...(rows === '' ? {} : { rows: Number(rows) }),
      ...(written === '' ? {} : { name: written }),
    });
    if (begun === undefined) throw new Error('Choose what to begin with.');
    return begun;
  }

  protected override render(): TemplateResult {
    if (!this.shown) return html`${nothing}`;
    return html`<dialog
      class="card draw-dialog form"
      aria-labelledby="new-diagonal-name"
      @close=${() => {
        this.shown = false;
      }}
    >
      <div class="bar">
        <h2 id="new-diagonal-name">A new diagonal pattern</h2>
        <button type="button" @click=${() => this.close()}>Close</button>
      </div>
      <form novalidate @submit=${(event: SubmitEvent) => this.onSubmit(event)}>
        <p class="hint">
          Every string ties and is tied; rows go on by one string each, so that colours run
          slantwise.
        </p>
        <label>
          Name
          <input type="text" name="name" maxlength=${DIAGONAL_LIMITS.maxName} autocomplete="off" />
        </label>
        <fieldset class="draw-choices">
          <legend>Begin with</legend>
          ${BEGINNINGS.map(
            ({ value, label, about }, at) => html`<label class="check">
              <input type="radio" name="piece" value=${value} ?checked=${at === 0} />
              <span>${label}: ${about}</span>
            </label>`,
          )}
        </fieldset>
        <div class="fields">
          ${numberField('strings', 'Strings', 12, DIAGONAL_LIMITS.maxStrings)}
          <label>
            Rows
            <input
              type="number"
              inputmode="numeric"
              name="rows"
              min="1"
              max=${DIAGONAL_LIMITS.maxRows}
              step="1"
              placeholder="one repeat"
            />
          </label>
          ${numberField('many', 'Colours', 3, DIAGONAL_LIMITS.maxColours)}
        </div>
        <fieldset class="draw-choices">
          <legend>The first of these colours</legend>
          <label class="check">
            <input type="radio" name="colours" value="first" checked />
            <span>${FIRST_COLOURS.map(({ name }) => name).join(', ')}</span>
          </label>
          <label class="check">
            <input type="radio" name="colours" value="same" />
            <span>those of the open piece (${this.colours.length})</span>
          </label>
        </fieldset>
        ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
        <div class="draw-row"><button class="primary" type="submit">Begin</button></div>
      </form>
    </dialog>`;
  }
}

customElements.define('halfhitch-new-diagonal', NewDialog);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-new-diagonal': NewDialog;
  }
}
