import { printable } from '@halfhitch/core';
import { html, type TemplateResult } from 'lit';
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
import { withoutRepeats, withRepeats } from './repeated-steps.js';
import { type Sheets, SheetsBench } from './sheets-bench.js';
import { sheetsPaper } from './sheets-paper.js';
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
    return sheetsPaper({
      paper: choice.paper,
      title,
      about: html`${counted(chart.rows, 'row')} of ${counted(chart.columns, 'knot')}, with
        ${of.choice.edge} edges; the first row goes to the ${start === 'left' ? 'right' : 'left'}.`,
      ok: written.ok,
      legend: this.legendTable(sheet),
      opening: written.opening,
      pages: choice.chart ? layout.parts.map((part) => chartPage(sheet, part)) : [],
      rows: choice.written
        ? written.rows.map(({ heading }, i) => ({ heading, parts: parts[i] ?? [] }))
        : null,
      closing: choice.lastRow === chart.rows ? written.closing : null,
      cut,
      settings: of.cut,
    });
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

customElements.define('halfhitch-sheets', SheetsPanel);
