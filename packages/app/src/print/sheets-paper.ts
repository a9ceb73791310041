import type { Section } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { cutResults } from '../cut/cut-results.js';
import type { CutOutcome } from '../cut/messages.js';
import type { CutSettings } from '../cut/settings.js';
import type { PaperName } from './paper.js';
import type { PrintedPart } from './repeated-steps.js';

/** A row as it is printed. */
export interface PrintedRow {
  readonly heading: string;
  readonly parts: readonly (Omit<PrintedPart, 'like'> & Partial<Pick<PrintedPart, 'like'>>)[];
}

/** What stands on the sheets of a piece. */
export interface PaperContent {
  readonly paper: PaperName;
  readonly title: string;
  /** The size of the piece, and how it is knotted. */
  readonly about: TemplateResult;
  /** Whether it knots out as drawn. */
  readonly ok: boolean;
  readonly legend: TemplateResult;
  readonly opening: readonly Section[];
  /** The piece as it is drawn. */
  readonly pages: readonly TemplateResult[];
  /** Null where they are not printed. */
  readonly rows: readonly PrintedRow[] | null;
  /** Null where the last row is not among them. */
  readonly closing: Section | null;
  /** Null where none is printed. */
  readonly cut: CutOutcome | null;
  readonly settings: CutSettings;
}

/** Sections of the opening that are printed: all that is needed before the first row. */
const OPENING = 2;

/** The sheets, one after another. */
export function sheetsPaper(content: PaperContent): TemplateResult {
  const { title, about, ok, legend, opening, pages, rows, closing, cut } = content;
  return html`<div
    class="sheets"
    data-paper=${content.paper}
    tabindex="0"
    role="region"
    aria-label="The sheets"
  >
    <section class="sheet-first">
      <h2>${title}</h2>
      <p>
        ${about}
        ${ok ? 'It knots out as drawn.' : html`<strong>It does not knot out as drawn: see the findings in the workbench first.</strong>`}
      </p>
      ${legend} ${cautions()} ${opening.slice(0, OPENING).map(section)}
    </section>
    ${pages}
    ${
      rows === null
        ? nothing
        : html`<section class="sheet-rows">
            <h2>Row by row</h2>
            <div class="sheet-columns">${rows.map(rowInWords)}</div>
            ${closing === null ? nothing : section(closing)}
          </section>`
    }
    ${cut === null ? nothing : cutPart(cut, content.settings)}
  </div>`;
}

function rowInWords({ heading, parts }: PrintedRow): TemplateResult {
  return html`<section class="sheet-row">
    <h3>${heading}</h3>
    <ol>
      ${parts.map(
        ({ text, substeps, like = null }) => html`<li>
          ${text}
          ${like === null ? nothing : html`<em>Steps as in row ${like.row}, number ${like.part}.</em>`}
          ${
            substeps.length === 0
              ? nothing
              : html`<ol class="sheet-steps">${substeps.map((step) => html`<li>${step}</li>`)}</ol>`
          }
        </li>`,
      )}
    </ol>
  </section>`;
}

function cutPart(cut: CutOutcome, settings: CutSettings): TemplateResult {
  return html`<section class="sheet-cut cut-list">
    <h2>Cut list</h2>
    ${
      'sheet' in cut
        ? cutResults(cut, settings)
        : html`<p>
            There is no cut list, since something is filled in wrongly for it:
            ${Object.values(cut.errors).join(' ')}
          </p>`
    }
  </section>`;
}

function section({ title, paragraphs, points }: Section): TemplateResult {
  return html`<section class="sheet-text">
    <h3>${title}</h3>
    ${paragraphs.map((text) => html`<p>${text}</p>`)}
    ${points.length === 0 ? nothing : html`<ul>${points.map((text) => html`<li>${text}</li>`)}</ul>`}
  </section>`;
}

function cautions(): TemplateResult {
  return html`<section class="sheet-text sheet-care">
    <h3>Take care</h3>
    <ul>
      <li>Hands: rest every half hour, and stop when something aches or goes numb.</li>
      <li>
        Small children: a cord can strangle, and a short end can be swallowed. Keep threads away from
        them; make a child's bracelet so that it opens under a pull.
      </li>
      <li>
        Ends: cut away from your fingers. Singe only synthetic thread, away from hair and curtains,
        with water at hand; cotton burns on, so sew its ends in.
      </li>
    </ul>
  </section>`;
}
