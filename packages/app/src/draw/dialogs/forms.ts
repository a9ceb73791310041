import { CHART_LIMITS, type Chart } from '@halfhitch/core';
import { html, type TemplateResult } from 'lit';
import { blankChart, FIRST_COLOURS } from '../edit/blank.js';
import { chartRenamed } from '../edit/names.js';
import { repeatedDrawing } from '../edit/repeat.js';
import { type Anchor, resized } from '../edit/resize.js';
import { numberField, numberIn } from './number-field.js';

/** A form in a dialog: what it asks, and what comes of the answers. */
export interface ChartForm {
  readonly title: string;
  readonly fields: (chart: Chart) => TemplateResult;
  readonly button: string;
  /** For the button that takes it back. */
  readonly what: string;
  /** Whether the open chart is changed, or another piece is opened. */
  readonly as: 'edit' | 'open';
  /** @throws InputError when the answers can't be used */
  readonly make: (chart: Chart, answers: FormData, ground: number) => Chart;
}

const { maxRows, maxColumns, maxName } = CHART_LIMITS;

export const NEW_CHART: ChartForm = {
  title: 'A new chart',
  button: 'Begin to draw',
  what: 'Begin a new chart',
  as: 'open',
  fields: (chart) => html`
    <label>
      Name
      <input type="text" name="name" maxlength=${maxName} autocomplete="off" />
    </label>
    <p class="hint">A column for each knot across the bracelet, a row for each along it.</p>
    <div class="fields">
      ${numberField('columns', 'Columns', 14, maxColumns)}
      ${numberField('rows', 'Rows', 40, maxRows)}
    </div>
    <fieldset class="draw-choices">
      <legend>Colours to begin with; the first is the ground</legend>
      <label class="check">
        <input type="radio" name="colours" value="first" checked />
        ${FIRST_COLOURS.map(({ name }) => name).join(', ')}
      </label>
      <label class="check">
        <input type="radio" name="colours" value="same" />
        those of the open chart (${chart.colours.length})
      </label>
    </fieldset>
  `,
  make: (chart, answers) =>
    blankChart(
      String(answers.get('name') ?? ''),
      { rows: numberIn(answers, 'rows'), columns: numberIn(answers, 'columns') },
      answers.get('colours') === 'same' ? chart.colours : FIRST_COLOURS,
    ),
};

export const RENAME: ChartForm = {
  title: 'Name of the piece',
  button: 'Rename',
  what: 'Rename the piece',
  as: 'edit',
  fields: (chart) => html`<label>
    Name
    <input type="text" name="name" maxlength=${maxName} autocomplete="off" .value=${chart.name} />
  </label>`,
  make: (chart, answers) => chartRenamed(chart, String(answers.get('name') ?? '')),
};

export const RESIZE: ChartForm = {
  title: 'Another size',
  button: 'Change the size',
  what: 'Change the size',
  as: 'edit',
  fields: (chart) => html`
    <p>The drawing is cut off where the chart shrinks; where it grows, there is ground.</p>
    <div class="fields">
      ${numberField('columns', 'Columns', chart.columns, maxColumns)}
      ${numberField('rows', 'Rows', chart.rows, maxRows)}
      <label>
        Across, what stays in place is
        <select name="across">
          <option value="left">the left side</option>
          <option value="middle">the middle</option>
          <option value="right">the right side</option>
        </select>
      </label>
      <label>
        Down, what stays in place is
        <select name="down">
          <option value="top">the top</option>
          <option value="middle">the middle</option>
          <option value="bottom">the bottom</option>
        </select>
      </label>
    </div>
  `,
  make: (chart, answers, ground) =>
    resized(
      chart,
      { rows: numberIn(answers, 'rows'), columns: numberIn(answers, 'columns') },
      ground,
      {
        down: String(answers.get('down')) as Anchor['down'],
        across: String(answers.get('across')) as Anchor['across'],
      },
    ),
};

export const REPEAT: ChartForm = {
  title: 'Draw it again and again',
  button: 'Repeat',
  what: 'Repeat the drawing',
  as: 'edit',
  fields: (chart) => html`
    <p>
      The whole drawing of ${chart.rows} rows is drawn again below itself, and beside itself if you
      like.
    </p>
    <div class="fields">
      ${numberField('down', 'Times as long', 2, Math.floor(maxRows / chart.rows))}
      ${numberField('across', 'Times as wide', 1, Math.floor(maxColumns / chart.columns))}
    </div>
  `,
  make: (chart, answers) =>
    repeatedDrawing(chart, numberIn(answers, 'down'), numberIn(answers, 'across')),
};
