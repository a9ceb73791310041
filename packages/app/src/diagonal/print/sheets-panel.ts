import { printable, simulateDiagonal } from '@halfhitch/core';
import { html, type TemplateResult } from 'lit';
import { counted } from '../../view/figures.js';
import '../../styles/diagonal.css';
import { CutDesk } from '../../cut/desk.js';
import type { CutOutcome } from '../../cut/messages.js';
import '../../draw/palette/sample.js';
import '../../keep/picture-of.js';
import type { SheetChoice } from '../../print/choice.js';
import { PAPERS } from '../../print/paper.js';
import { type Sheets, SheetsBench } from '../../print/sheets-bench.js';
import { sheetsPaper } from '../../print/sheets-paper.js';
import { type DiagonalProject, titleOf } from '../../project/project.js';
import type { DiagonalWritten } from '../work/messages.js';
import { type LatticeImage, latticeImage, rowsOnPage } from './lattice-image.js';

interface Made {
  readonly written: DiagonalWritten;
  readonly cut: CutOutcome | null;
  readonly pages: readonly (LatticeImage & { readonly first: number; readonly end: number })[];
}

/** Sheets of a diagonal pattern: the knots on the lattice, its rows in words, the cut list. */
export class DiagonalSheetsPanel extends SheetsBench<DiagonalProject, Made> {
  protected readonly checks = [
    ['chart', 'Knots'],
    ['written', 'Written rows'],
    ['cut', 'Cut list'],
    ['inColour', 'Ways of the knots in place of signs of the colours'],
  ] as const;

  private readonly cutDesk = new CutDesk();

  protected get project(): DiagonalProject | null {
    return this.session?.diagonal ?? null;
  }

  protected sizeOf({ pattern }: DiagonalProject): { rows: number; columns: number } {
    return { rows: pattern.rows, columns: Math.max(1, Math.floor(pattern.strings / 2)) };
  }

  protected same(one: DiagonalProject, other: DiagonalProject): boolean {
    return one.pattern === other.pattern && one.cut === other.cut;
  }

  protected async work(project: DiagonalProject, choice: SheetChoice): Promise<Made> {
    const { pattern, cut: settings } = project;
    const rows = { first: choice.firstRow - 1, end: choice.lastRow };
    const desk = await this.session?.diagonalDesk;
    if (desk === undefined) throw new Error('There is no session.');
    const [written, cut, pages] = await Promise.all([
      desk.ask({
        ask: 'written',
        pattern,
        rows: choice.written ? rows : { first: 0, end: 0 },
      }),
      choice.cut ? this.cutDesk.ask({ pattern, settings }) : null,
      choice.chart ? this.pages(project, choice) : [],
    ]);
    return { written, cut, pages };
  }

  private async pages({ pattern }: DiagonalProject, choice: SheetChoice): Promise<Made['pages']> {
    const { strings, rows, first, colours, start, knots } = pattern;
    const { picture, order } = simulateDiagonal(pattern);
    const paper = PAPERS[choice.paper];
    const look = {
      lattice: { strings, rows, first },
      colours,
      cells: picture.cells,
      kinds: choice.inColour ? knots : null,
      strings: { start, order },
    };
    const pages: Made['pages'][number][] = [];
    const most = rowsOnPage(strings, paper);
    for (let row = choice.firstRow - 1; row < choice.lastRow; row += most) {
      const part = { first: row, end: Math.min(choice.lastRow, row + most) };
      const image = await latticeImage(look, part, !choice.inColour, paper);
      if (image !== null) pages.push({ ...image, ...part });
    }
    return pages;
  }

  protected override updated(): void {
    // The page's policy allows no styles in markup.
    for (const picture of this.querySelectorAll<HTMLElement>('.sheet-lattice')) {
      picture.style.inlineSize = `${100 * Number(picture.dataset['share'] ?? 1)}%`;
    }
  }

  protected paper({ of, choice, made }: Sheets<DiagonalProject, Made>): TemplateResult {
    const { pattern } = of;
    const { written, cut, pages } = made;
    const title = printable(pattern.name) || titleOf(of);
    return sheetsPaper({
      paper: choice.paper,
      title,
      about: html`${counted(pattern.rows, 'row')} on ${counted(pattern.strings, 'string')}, knotted
        diagonally; each row is tied from the left.`,
      ok: written.ok,
      legend: this.legendTable(of),
      opening: written.opening,
      pages: pages.map((page) => latticePage(page, choice.inColour)),
      rows: choice.written ? written.rows : null,
      closing: choice.lastRow === pattern.rows ? written.closing : null,
      cut,
      settings: of.cut,
    });
  }

  private legendTable({ pattern }: DiagonalProject): TemplateResult {
    return html`<table class="sheet-table">
      <caption>Colours</caption>
      <thead>
        <tr><th scope="col">Sign</th><th scope="col">Colour</th><th scope="col">Number</th><th scope="col">Strings, by their slots at the start</th></tr>
      </thead>
      <tbody>
        ${pattern.colours.map((colour, place) => {
          const slots = Array.from(pattern.start, (one, slot) => (one === place ? slot + 1 : 0));
          return html`<tr>
            <td><halfhitch-sample .colour=${{ hex: colour.hex, place }}></halfhitch-sample></td>
            <th scope="row">${printable(colour.name) || 'without a name'}</th>
            <td>${colour.hex}</td>
            <td>${slots.filter((slot) => slot > 0).join(', ') || 'none'}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }
}

/** @param ways whether the ways of the knots are drawn, and not signs of the colours */
function latticePage(
  { image, share, first, end }: Made['pages'][number],
  ways: boolean,
): TemplateResult {
  return html`<section class="sheet-page">
    <h2>Rows ${first + 1} to ${end}</h2>
    <halfhitch-blob-picture
      class="sheet-lattice"
      data-share=${share}
      .blob=${image}
    ></halfhitch-blob-picture>
    <p>
      ${
        ways
          ? 'On each knot is the way of the string that ties it: slanting down to the right, forward; to the left, backward; out to the right and back, forward-backward; out to the left and back, backward-forward.'
          : 'On each knot is the sign of the colour that it shows.'
      }
    </p>
  </section>`;
}

customElements.define('halfhitch-diagonal-sheets', DiagonalSheetsPanel);
