import type { SwatchCheck } from '@halfhitch/geometry/thread';
import { html, nothing, type TemplateResult } from 'lit';
import { counted, figures } from '../view/figures.js';
import { differenceInWords, fitInWords, swatchMeaning } from './fit-words.js';
import {
  metres,
  millimetres,
  plusMinus,
  putUpsInWords,
  sizeInWords,
  swatchInWords,
  titleInWords,
  trustInWords,
  useInWords,
  whatInWords,
} from './in-words.js';
import type { CutAnswer } from './messages.js';
import type { CutSettings } from './settings.js';
import type { CutSheet, LinePart, StringLine } from './sheet.js';

const PARTS: readonly { part: LinePart; name: string }[] = [
  { part: 'knots', name: 'In knots' },
  { part: 'tied', name: 'In knots tied' },
  { part: 'held', name: 'In knots held' },
  { part: 'ways', name: 'Between knots' },
  { part: 'hanging', name: 'Hanging' },
  { part: 'travel', name: 'Travel' },
  { part: 'floats', name: 'Floats' },
  { part: 'tails', name: 'Tails' },
  { part: 'margin', name: 'Margin' },
];

/**
 * The size of the piece, what to cut and what to buy. Tables name their parts' roles, since
 * browsers forget that a table is one when it is laid out as a list for a narrow page.
 */
export function cutResults(
  { sheet, fit, swatch: check }: CutAnswer,
  settings: CutSettings,
): TemplateResult {
  const swatch = swatchInWords(sheet);
  return html`
    <dl class="cut-size">
      <dt>Knotted part</dt>
      <dd>
        ${sizeInWords(sheet)}; ${sheet.made}
      </dd>
      <dt>Thread</dt>
      <dd>
        ${figures(sheet.thread.diameter, 2)} mm thick
        ± ${figures(sheet.thread.diameter * sheet.thread.uncertainty, 2)}
        (${figures(sheet.thread.tex)} tex)${swatch === null ? nothing : html`. ${swatch}`}
      </dd>
      <dt>How sure</dt>
      <dd>${trustInWords(sheet)}</dd>
      <dt>Fit</dt>
      <dd class="cut-fit">${fitInWords(fit, sheet).map((line) => html`<p>${line}</p>`)}</dd>
    </dl>
    ${check === null ? nothing : swatchTable(check)} ${stringTable(sheet, settings, fit.tails)} ${totalTable(sheet)}
    ${
      sheet.joined
        ? html`<p>
          A lead too long to work with is joined to a new one in the row that the list names: tie
          the new one in as at a colour change, and leave both tails at the back.
        </p>`
        : nothing
    }
  `;
}

function has(parts: typeof PARTS, wanted: LinePart): boolean {
  return parts.some(({ part }) => part === wanted);
}

function stringTable(sheet: CutSheet, settings: CutSettings, tails: number): TemplateResult {
  // A part that no string has is not worth a column.
  const parts = PARTS.filter(({ part }) => sheet.lines.some((line) => (line.parts[part] ?? 0) > 0));
  return html`<table class="cut-table" role="table">
    <caption>
      What to cut
      <span class="hint">
        All in mm; tails of ${figures(tails)} mm at both ends and ${settings.margin} % for safety
        counted in, cut lengths rounded up to whole centimetres.
        ${has(parts, 'travel') ? 'Travel: from knot to knot and round the turns.' : nothing}
        ${has(parts, 'floats') ? 'Floats: what lies behind the work while other leads tie.' : nothing}
      </span>
    </caption>
    <thead role="rowgroup">
      <tr role="row">
        <th role="columnheader" scope="col">String</th>
        <th role="columnheader" scope="col" class="amount">Knots</th>
        ${parts.map(
          ({ name }) => html`<th role="columnheader" scope="col" class="amount">${name}</th>`,
        )}
        <th role="columnheader" scope="col" class="amount">Cut</th>
      </tr>
    </thead>
    <tbody role="rowgroup">
      ${sheet.lines.map((line) => stringRow(line, parts))}
    </tbody>
  </table>
  ${
    sheet.lineCount > sheet.lines.length
      ? html`<p>
        The first ${figures(sheet.lines.length)} of ${figures(sheet.lineCount)} lines are listed; the
        totals count all of them.
      </p>`
      : nothing
  }`;
}

function stringRow(line: StringLine, parts: typeof PARTS): TemplateResult {
  return html`<tr role="row" class=${line.role}>
    <th role="rowheader" scope="row"><div class="who">
      <halfhitch-swatch .colour=${line.colour}></halfhitch-swatch>
      <span class="what">
        <span class="colour">${titleInWords(line)}</span>
        <span>${whatInWords(line)}</span>
        ${
          line.joinedInRow === null
            ? nothing
            : html`<span class="joined">joined in row ${figures(line.joinedInRow)}</span>`
        }
      </span>
    </div></th>
    <td role="cell" class="amount" data-name=${line.role === 'base' ? 'Knots on each' : 'Knots tied'}>
      ${figures(line.knots)}
    </td>
    ${parts.map(({ part, name }) => {
      const mm = line.parts[part] ?? 0;
      return html`<td role="cell" class="amount ${mm > 0 ? '' : 'none'}" data-name=${name}>
        ${mm > 0 ? figures(mm) : '–'}
      </td>`;
    })}
    <td role="cell" class="amount cut" data-name="Cut">
      ${line.count === 1 ? nothing : html`<span class="times">${figures(line.count)} of </span>`}
      <strong>${figures(line.cut)} mm</strong>
      <span class="off">${plusMinus(line.length.plusMinus)}</span>
    </td>
  </tr>`;
}

function totalTable({ totals, putUp }: CutSheet): TemplateResult {
  return html`<table class="cut-table totals" role="table">
    <caption>
      Thread by colour
      <span class="hint">
        A put-up is thread as it is sold: a skein, a card or a ball. These hold
        ${figures(putUp / 1_000, 1)} m each, and no piece is made up from two.
      </span>
    </caption>
    <thead role="rowgroup">
      <tr role="row">
        <th role="columnheader" scope="col">Colour</th>
        <th role="columnheader" scope="col" class="amount">Pieces</th>
        <th role="columnheader" scope="col" class="amount">Length</th>
        <th role="columnheader" scope="col" class="amount">Put-ups</th>
      </tr>
    </thead>
    <tbody role="rowgroup">
      ${totals.map(
        (total) => html`<tr role="row">
          <th role="rowheader" scope="row"><div class="who">
            <halfhitch-swatch .colour=${total.colour}></halfhitch-swatch>
            <span class="what">
              <span class="colour">${titleInWords(total)}</span>
              <span>${useInWords(total)}</span>
            </span>
          </div></th>
          <td role="cell" class="amount" data-name="Pieces">${figures(total.pieces)}</td>
          <td role="cell" class="amount whole" data-name="Length">${metres(total.length)}</td>
          <td role="cell" class="amount" data-name="Put-ups">${putUpsInWords(total)}</td>
        </tr>`,
      )}
    </tbody>
  </table>`;
}

function swatchTable(check: SwatchCheck): TemplateResult {
  const sides = [
    ['Width', check.width],
    ['Length', check.length],
  ] as const;
  return html`<table class="cut-table swatch" role="table">
      <caption>
        Your swatch beside the prediction
        <span class="hint">Predicted from the thread as it is given above, in mm.</span>
      </caption>
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col">Size</th>
          <th role="columnheader" scope="col" class="amount">Predicted</th>
          <th role="columnheader" scope="col" class="amount">Measured</th>
          <th role="columnheader" scope="col" class="amount">Difference</th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        ${sides.map(
          ([name, side]) => html`<tr role="row">
            <th role="rowheader" scope="row">${name}</th>
            <td role="cell" class="amount" data-name="Predicted">
              ${figures(side.predicted, 1)} ± ${figures(side.plusMinus, 1)}
            </td>
            <td role="cell" class="amount" data-name="Measured">${figures(side.measured, 1)}</td>
            <td role="cell" class="amount whole" data-name="Difference">
              ${differenceInWords(side)}${side.within ? ', as near as expected' : nothing}
            </td>
          </tr>`,
        )}
      </tbody>
    </table>
    <p>${swatchMeaning(check)}</p>`;
}

/** The gist, for those who hear the page. */
export function cutInShort(sheet: CutSheet): string {
  const bases = sheet.lines.reduce(
    (sum, { role, count }) => sum + (role === 'base' ? count : 0),
    0,
  );
  const leads = sheet.totals.reduce(
    (sum, { role, pieces }) => sum + (role === 'lead' ? pieces : 0),
    0,
  );
  const diagonal = sheet.lines.reduce(
    (sum, { role, count }) => sum + (role === 'string' ? count : 0),
    0,
  );
  const size = `${millimetres(sheet.size.width)} by ${millimetres(sheet.size.length)}`;
  if (diagonal > 0) return `Cut list: ${size}; ${figures(diagonal)} strings to cut.`;
  return `Cut list: ${size}; ${counted(bases, 'base string')} and ${counted(leads, 'lead')} to cut.`;
}
