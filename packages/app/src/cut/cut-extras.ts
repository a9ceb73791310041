import { html, nothing, type TemplateResult } from 'lit';
import { figures } from '../view/figures.js';
import { millimetres } from './in-words.js';
import type { CutAnswer } from './messages.js';
import { shoppingLines, shoppingText } from './shopping.js';

export interface ShoppingParts {
  readonly answer: CutAnswer;
  readonly name: string;
  /** What came of the last copying; empty before. */
  readonly copied: string;
  readonly copy: (text: string) => void;
}

/** What to buy, in words that can be copied. */
export function shopping({ answer, name, copied, copy }: ShoppingParts): TemplateResult {
  const { closing, buckleWidth } = answer.fit;
  const lines = shoppingLines(answer.sheet, closing, buckleWidth);
  return html`<section class="cut-shopping" aria-labelledby="cut-shopping-name">
    <div class="bar">
      <h3 id="cut-shopping-name">To buy</h3>
      <button type="button" @click=${() => copy(shoppingText(name, lines))}>Copy the list</button>
    </div>
    <ul>
      ${lines.map((line) => html`<li>${line}</li>`)}
    </ul>
    <p class="hint" role="status">${copied}</p>
  </section>`;
}

/**
 * Sizes of wrists with the rows they take, each to be taken over. The survey's numbers are quoted
 * from memory.
 */
export function wristSizes(answer: CutAnswer, take: (wrist: number) => void): TemplateResult {
  return html`<details class="fold cut-sizes">
    <summary>Wrist sizes, from children to adults</summary>
    <table class="cut-table" role="table">
      <caption class="unseen">Rows for each size of wrist</caption>
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col">For</th>
          <th role="columnheader" scope="col" class="amount">Wrist</th>
          <th role="columnheader" scope="col" class="amount">Knotted part</th>
          <th role="columnheader" scope="col" class="amount">Rows</th>
          <th role="columnheader" scope="col"><span class="unseen">Take over</span></th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        ${answer.sizes.map(
          ({ who, wrist, length, rows, smallChild, source, chosen }) => html`<tr role="row">
            <th role="rowheader" scope="row">
              ${who}${source === 'practice' ? html`<span aria-hidden="true"> *</span>` : nothing}
              ${smallChild ? html`<span class="joined">mind the note on cords below</span>` : nothing}
            </th>
            <td role="cell" class="amount" data-name="Wrist">${millimetres(wrist)}</td>
            <td role="cell" class="amount" data-name="Knotted part">${millimetres(length)}</td>
            <td role="cell" class="amount" data-name="Rows">${figures(rows)}</td>
            <td role="cell" class="amount">
              <button
                type="button"
                aria-pressed=${chosen ? 'true' : 'false'}
                aria-label=${`Use ${who}, ${wrist} mm`}
                @click=${() => take(wrist)}
              >${chosen ? 'In use' : 'Use'}</button>
            </td>
          </tr>`,
        )}
      </tbody>
    </table>
    <p class="hint">
      A wrist that you have measured is better than any of these. Adults: means of the wrist
      circumference in the 2012 Anthropometric Survey of U.S. Army Personnel (Gordon and others,
      2014), and the sizes below and above which 5 in 100 fall; soldiers are not everybody, and the survey
      itself is the place to check them. <span aria-hidden="true">*</span> Children: common practice, no source. Rows are for
      the thread, the closing and the ease chosen above.
    </p>
  </details>`;
}

/** Blades, ends and cords. That EN 14682 is the standard for such cords is named from memory. */
export function care(): TemplateResult {
  return html`<div class="care">
    <p>
      <strong>Take care.</strong> Cut away from your fingers, on something firm, and put the blade
      away. Long threads and cut ends are nothing for small children: a cord can strangle, and an
      end can be swallowed.
    </p>
    <p>
      <strong>For a small child</strong> tie nothing that can’t come open by itself: close it so that
      a pull opens it, leave no long plaits or loops, and take it off for sleep, for play on frames
      and slides, and when nobody is watching. Rules differ from place to place and come first where
      you sell or give away: in Europe, for one, EN 14682 limits cords and drawstrings on children’s
      clothes. A bracelet is no garment, but the danger is the same. Read the standard itself, in its
      newest edition, before you rely on it.
    </p>
  </div>`;
}
