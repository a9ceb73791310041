import { printable, type RowInstructions } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { CutDesk } from '../cut/desk.js';
import type { CutOutcome } from '../cut/messages.js';
import { keepDesk } from '../keep/desk.js';
import { type AlphaProject, titleOf } from '../project/project.js';
import { counted } from '../view/figures.js';
import { layChart } from './chart-layout.js';
import { type ChartSheet, chartPage, sample } from './chart-page.js';
import type { SheetChoice } from './choice.js';
import { markingsOf } from './hatches.js';
import { PAPERS } from './paper.js';
import { type PrintedPart, withoutRepeats, withRepeats } from './repeated-steps.js';
import { cautions, cutPart, type Sheets, SheetsBench, section } from './sheets-bench.js';
import type { Written } from './written.js';

interface Made {
  readonly written: Written;
  readonly cut: CutOutcome | null;
}

/** Sheets of alpha work: the chart, its rows in words, the cut list. */
export class SheetsPanel extends SheetsBench<AlphaProject, Made> {
  protected readonly checks = [
    ['chart', 'Chart'],
    ['written', 'Written rows'],
    ['cut', 'Cut list'],
    ['inColour', 'Colours under the marks'],
    ['everyStep', 'All steps of every colour change'],
  ] as const;

  private readonly cutDesk = new CutDesk();

  protected get project(): AlphaProject | null {
    return this.session?.alpha ?? null;
  }

  protected sizeOf({ chart }: AlphaProject): { rows: number; columns: number } {
    return chart;
  }

  protected same(one: AlphaProject, other: AlphaProject): boolean {
    return one.chart === other.chart && one.choice === other.choice && one.cut === other.cut;
  }

  protected async work(project: AlphaProject, choice: SheetChoice): Promise<Made> {
    const { chart, choice: knots, cut: settings } = project;
    const rows = { first: choice.firstRow - 1, end: choice.lastRow };
    const [written, cut] = await Promise.all([
      keepDesk.ask({
        ask: 'written',
        chart,
        choice: knots,
        rows: choice.written ? rows : { first: 0, end: 0 },
      }),
      choice.cut ? this.cutDesk.ask({ chart, choice: knots, settings }) : null,
    ]);
    return { written, cut };
  }

  protected paper({ of, choice, made }: Sheets<AlphaProject, Made>): TemplateResult {
    const { written, cut } = made;
    const { chart } = of;
    const paper = PAPERS[choice.paper];
    const markings = markingsOf(chart);
    const title = printable(chart.name) || titleOf(of);
    const layout = layChart(
      { first: choice.firstRow - 1, end: choice.lastRow },
      chart.columns,
      markings.length,
      paper,
    );
    const { edges } = written;
    const parts = choice.everyStep ? withRepeats(written.rows) : withoutRepeats(written.rows);
    const start = of.choice.start;
    const sheet: ChartSheet = {
      chart,
      start,
      layout,
      markings,
      edges,
      inColour: choice.inColour,
      title,
    };
    return html`<div
      class="sheets"
      data-paper=${choice.paper}
      tabindex="0"
      role="region"
      aria-label="The sheets"
    >
      <section class="sheet-first">
        <h2>${title}</h2>
        <p>
          ${counted(chart.rows, 'row')} of ${counted(chart.columns, 'knot')}, with ${of.choice.edge} edges;
          the first row goes to the ${start === 'left' ? 'right' : 'left'}.
          ${written.ok ? 'It knots out as drawn.' : html`<strong>It does not knot out as drawn: see the findings in the workbench first.</strong>`}
        </p>
        ${this.legendTable(sheet)}
        ${cautions()}
        ${written.opening.slice(0, 2).map(section)}
      </section>
      ${choice.chart ? layout.parts.map((part) => chartPage(sheet, part)) : nothing}
      ${
        choice.written
          ? html`<section class="sheet-rows">
              <h2>Row by row</h2>
              <div class="sheet-columns">
                ${written.rows.map((row, i) => rowInWords(row, parts[i] ?? []))}
              </div>
              ${choice.lastRow === chart.rows ? section(written.closing) : nothing}
            </section>`
          : nothing
      }
      ${cut === null ? nothing : cutPart(cut, of.cut)}
    </div>`;
  }

  private legendTable(sheet: ChartSheet): TemplateResult {
    const { chart, markings } = sheet;
    return html`<table class="sheet-table">
      <caption>Colours</caption>
      <thead>
        <tr><th scope="col">Mark</th><th scope="col">Key</th><th scope="col">Colour</th><th scope="col">Number</th></tr>
      </thead>
      <tbody>
        ${markings.map((marking) => {
          const colour = chart.colours[marking.colour];
          return html`<tr>
            <td>${sample(sheet, marking)}</td>
            <td>${printable(colour?.key ?? '')}</td>
            <th scope="row">${printable(colour?.name ?? '') || 'without a name'}</th>
            <td>${colour?.hex}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }
}

function rowInWords({ heading }: RowInstructions, parts: readonly PrintedPart[]): TemplateResult {
  return html`<section class="sheet-row">
    <h3>${heading}</h3>
    <ol>
      ${parts.map(
        ({ text, substeps, like }) => html`<li>
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

customElements.define('halfhitch-sheets', SheetsPanel);
