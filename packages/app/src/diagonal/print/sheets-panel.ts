import { type DiagonalRowInstructions, printable, simulateDiagonal } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { counted } from '../../view/figures.js';
import '../../styles/diagonal.css';
import { CutDesk } from '../../cut/desk.js';
import type { CutOutcome } from '../../cut/messages.js';
import '../../draw/palette/sample.js';
import '../../keep/picture-of.js';
import type { SheetChoice } from '../../print/choice.js';
import { PAPERS } from '../../print/paper.js';
import { cautions, cutPart, type Sheets, SheetsBench, section } from '../../print/sheets-bench.js';
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
          ${counted(pattern.rows, 'row')} on ${counted(pattern.strings, 'string')}, knotted diagonally; each
          row is tied from the left.
          ${written.ok ? 'It knots out as drawn.' : html`<strong>It does not knot out as drawn: see the findings in the workbench first.</strong>`}
        </p>
        ${this.legendTable(of)} ${cautions()} ${written.opening.slice(0, 2).map(section)}
      </section>
      ${pages.map(
        ({ image, share, first, end }) => html`<section class="sheet-page">
          <h2>Rows ${first + 1} to ${end}</h2>
          <halfhitch-blob-picture
            class="sheet-lattice"
            data-share=${share}
            .blob=${image}
          ></halfhitch-blob-picture>
          <p>
            ${
              choice.inColour
                ? 'On each knot is the way of the string that ties it: slanting down to the right, forward; to the left, backward; out to the right and back, forward-backward; out to the left and back, backward-forward.'
                : 'On each knot is the sign of the colour that it shows.'
            }
          </p>
        </section>`,
      )}
      ${
        choice.written
          ? html`<section class="sheet-rows">
              <h2>Row by row</h2>
              <div class="sheet-columns">${written.rows.map(rowInWords)}</div>
              ${choice.lastRow === pattern.rows ? section(written.closing) : nothing}
            </section>`
          : nothing
      }
      ${cut === null ? nothing : cutPart(cut, of.cut)}
    </div>`;
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

function rowInWords({ heading, parts }: DiagonalRowInstructions): TemplateResult {
  return html`<section class="sheet-row">
    <h3>${heading}</h3>
    <ol>
      ${parts.map(
        ({ text, substeps }) => html`<li>
          ${text}
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

customElements.define('halfhitch-diagonal-sheets', DiagonalSheetsPanel);
