import { html, nothing, type TemplateResult } from 'lit';
import type { Project } from '../project/project.js';
import type { CutErrors } from './read-settings.js';
import { type CutField, type CutSettings, MOST_LETTERS } from './settings.js';

interface Figure {
  readonly field: CutField;
  readonly label: string;
  readonly unit: string;
  readonly hint?: string;
}

const STRANDS: Figure = {
  field: 'strands',
  label: 'Strands together',
  unit: '',
  hint: 'Knotted as one string.',
};

const THREAD: Readonly<Record<CutSettings['thread'], readonly Figure[]>> = {
  assumed: [],
  diameter: [
    {
      field: 'diameter',
      label: 'Thickness of one strand',
      unit: 'mm',
      hint: 'Wind it twenty times round a pencil, close but not squeezed; measure and divide.',
    },
    STRANDS,
  ],
  tex: [
    {
      field: 'tex',
      label: 'Fineness of one strand',
      unit: 'tex',
      hint: 'Grams to the kilometre; the thickness is worked out as for cotton.',
    },
    STRANDS,
  ],
};

const SPAN: Readonly<Record<CutSettings['span'], readonly Figure[]>> = {
  chart: [],
  length: [
    {
      field: 'length',
      label: 'Knotted length',
      unit: 'mm',
      hint: 'The chart is knotted again and again until it is so long.',
    },
  ],
  wrist: [
    {
      field: 'wrist',
      label: 'Round the wrist',
      unit: 'mm',
      hint: 'Measure close to the skin. The chart is knotted again and again until it is long enough.',
    },
  ],
};

const EASE: Figure = {
  field: 'ease',
  label: 'Ease',
  unit: 'mm',
  hint: 'Room between skin and band: 10 for a finger.',
};

const PLAIT: Figure = { field: 'plait', label: 'Length of a plait', unit: 'mm' };

const CLOSING: Readonly<Record<CutSettings['closing'], readonly Figure[]>> = {
  meet: [],
  ties: [PLAIT, { field: 'gap', label: 'Gap that the tied plaits fill', unit: 'mm' }],
  loop: [{ field: 'loop', label: 'Length of the loop', unit: 'mm' }, PLAIT],
  buckle: [
    { field: 'buckleWidth', label: 'Widest band it takes', unit: 'mm' },
    { field: 'buckle', label: 'What the buckle fills', unit: 'mm', hint: 'From bar to pin.' },
    { field: 'turnOver', label: 'Turned over the bar', unit: 'mm' },
    { field: 'overlap', label: 'Through it, lying double', unit: 'mm' },
  ],
  bead: [],
};

const PIECES: readonly Figure[] = [
  { field: 'tails', label: 'Tail at each end', unit: 'mm', hint: 'To begin and to finish with.' },
  { field: 'margin', label: 'Margin for safety', unit: '%' },
  {
    field: 'workable',
    label: 'Longest lead to work with',
    unit: 'm',
    hint: 'A longer one is joined from two or more.',
  },
  { field: 'putUp', label: 'One put-up', unit: 'm', hint: 'Thread on a skein, card or ball.' },
];

const SWATCH: readonly Figure[] = [
  { field: 'swatchRows', label: 'Rows', unit: '' },
  { field: 'swatchColumns', label: 'Columns', unit: '' },
  { field: 'swatchWidth', label: 'Width', unit: 'mm' },
  { field: 'swatchLength', label: 'Length', unit: 'mm' },
];

/** In diagonal work there is no lead, and a swatch is as wide as it has strings. */
const FOR_DIAGONAL: Partial<Record<CutField, Partial<Figure> | null>> = {
  workable: null,
  swatchColumns: { label: 'Strings' },
};

function figuresFor(kind: Project['kind'], all: readonly Figure[]): readonly Figure[] {
  if (kind === 'alpha') return all;
  return all.flatMap((figure) => {
    const change = FOR_DIAGONAL[figure.field];
    return change === null ? [] : [{ ...figure, ...change }];
  });
}

const THREAD_CHOICES: Readonly<Record<CutSettings['thread'], string>> = {
  assumed: 'six-strand cotton, not measured',
  diameter: 'by thickness in mm',
  tex: 'by fineness in tex',
};

const SPAN_CHOICES: Readonly<Record<CutSettings['span'], string>> = {
  chart: 'as drawn, once',
  length: 'a length',
  wrist: 'to go round a wrist',
};

const CLOSING_CHOICES: Readonly<Record<CutSettings['closing'], string>> = {
  meet: 'ends that meet, not decided',
  ties: 'two plaits, tied',
  loop: 'a loop, and plaits through it',
  buckle: 'a buckle',
  bead: 'a bead',
};

export interface CutFormParts {
  readonly kind: Project['kind'];
  readonly settings: CutSettings;
  readonly errors: CutErrors;
  readonly fill: (change: Partial<CutSettings>) => void;
  /** A field is left, or a choice made. */
  readonly done: () => void;
  readonly reset: () => void;
}

/** What is asked of the maker. Fields that few need are folded away until they are wrong. */
export function cutForm(parts: CutFormParts): TemplateResult {
  const { settings, errors, kind } = parts;
  const pieces = figuresFor(kind, PIECES);
  const swatch = figuresFor(kind, SWATCH);
  const wrongIn = (figures: readonly Figure[]): boolean =>
    figures.some(({ field }) => errors[field] !== undefined);
  return html`<form class="cut-form" novalidate @change=${parts.done} @submit=${(event: Event) => event.preventDefault()}>
    <fieldset>
      <legend>Thread</legend>
      ${choiceOf('thread', 'Thread given', THREAD_CHOICES, parts)}
      ${figureFields(THREAD[settings.thread], parts)}
    </fieldset>
    <fieldset>
      <legend>Length</legend>
      ${choiceOf('span', 'Knotted part', SPAN_CHOICES, parts)}
      ${figureFields(SPAN[settings.span], parts)}
    </fieldset>
    <fieldset>
      <legend>Closing</legend>
      ${choiceOf('closing', 'Closed with', CLOSING_CHOICES, parts)}
      ${settings.closing === 'bead' ? noBeads() : nothing}
      ${figureFields(CLOSING[settings.closing], parts)} ${figureField(EASE, parts)}
    </fieldset>
    <details class="fold" ?data-wrong=${wrongIn(pieces)}>
      <summary>Tails, margin, put-ups</summary>
      <fieldset>
        <legend class="unseen">Tails, margin, put-ups</legend>
        ${figureFields(pieces, parts)}
      </fieldset>
    </details>
    <details class="fold" ?data-wrong=${wrongIn(swatch)}>
      <summary>A swatch of your own</summary>
      <fieldset>
        <legend class="unseen">A swatch of your own</legend>
        <p class="hint">
          ${
            kind === 'alpha'
              ? 'Knot a piece with this thread and these edges, 20 rows of 12 or so, and measure it lying flat.'
              : 'Knot a piece with this thread, 30 rows on 12 strings or so, and measure it lying flat.'
          }
          It tells more about your thread and your hand than any figure of the thread. Empty
          fields: no swatch.
        </p>
        ${figureFields(swatch, parts)}
      </fieldset>
    </details>
    <button type="button" class="small" @click=${parts.reset}>Back to the usual figures</button>
  </form>`;
}

/** Asked for by many, so it is answered rather than left out. */
function noBeads(): TemplateResult {
  return html`<p class="hint" id="cut-no-beads" role="status">
    Sorry, beads aren’t planned here. A bead takes the place of knots and pushes the rows round it
    apart, so neither the chart nor the lengths below would hold for it, and a bead that works
    loose can choke a small child. The list is made as if the ends met. To close with a bead, knot
    the band, choose a loop, and sew the bead to the other end afterwards.
  </p>`;
}

function choiceOf<N extends 'thread' | 'span' | 'closing'>(
  name: N,
  label: string,
  choices: Readonly<Record<CutSettings[N], string>>,
  { settings, fill, done }: CutFormParts,
): TemplateResult {
  return html`<div class="field">
    <label for="cut-${name}">${label}</label>
    <select
      id="cut-${name}"
      @change=${(event: Event) => {
        // What was typed before is another thing to undo.
        done();
        fill({ [name]: (event.target as HTMLSelectElement).value });
      }}
    >
      ${Object.entries<string>(choices).map(
        ([value, words]) =>
          html`<option value=${value} .selected=${settings[name] === value}>${words}</option>`,
      )}
    </select>
  </div>`;
}

function figureFields(wanted: readonly Figure[], parts: CutFormParts): TemplateResult[] {
  return wanted.map((figure) => figureField(figure, parts));
}

function figureField(
  { field, label, unit, hint }: Figure,
  { settings, errors, fill }: CutFormParts,
): TemplateResult {
  const id = `cut-${field}`;
  const error = errors[field];
  const described = [
    error === undefined ? '' : `${id}-error`,
    hint === undefined ? '' : `${id}-hint`,
  ]
    .join(' ')
    .trim();
  return html`<div class="field ${error === undefined ? '' : 'wrong'}">
    <label for=${id}>${label}${unit === '' ? '' : html`<span class="unit">, ${unit}</span>`}</label>
    <input
      id=${id}
      type="text"
      inputmode="decimal"
      autocomplete="off"
      maxlength=${MOST_LETTERS}
      aria-invalid=${error === undefined ? 'false' : 'true'}
      aria-describedby=${described === '' ? nothing : described}
      .value=${settings[field]}
      @input=${(event: Event) => fill({ [field]: (event.target as HTMLInputElement).value })}
    />
    ${error === undefined ? nothing : html`<p class="field-error" id="${id}-error" role="alert">${error}</p>`}
    ${hint === undefined ? nothing : html`<p class="hint" id="${id}-hint">${hint}</p>`}
  </div>`;
}
