import { type BestWay, LETTERS_IN_WORDS } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { figures } from '../view/figures.js';
import { bestInWords, doneInWords, wayInWords } from './way-words.js';

export interface StartActions {
  setMirror(may: boolean): void;
  start(way: BestWay): void;
}

/**
 * The best way to start a piece, and what all others cost.
 *
 * @param mayMirror whether the drawing may be mirrored for it
 * @param current whether the chart still is as it was looked through
 */
export function bestStart(
  way: BestWay,
  mayMirror: boolean,
  current: boolean,
  act: StartActions,
): TemplateResult {
  const saved = bestInWords(way);
  const { best, ways, current: now } = way;
  return html`
    <h3>The best way to start</h3>
    <label class="check">
      <input
        type="checkbox"
        .checked=${mayMirror}
        @change=${(event: Event) => act.setMirror((event.target as HTMLInputElement).checked)}
      />
      The drawing may be mirrored or turned for it
    </label>
    ${
      saved === null
        ? html`<p>As it is now, ${lower(wayInWords(now))}, is the best of the ${ways.length} ways.</p>`
        : html`<p>${wayInWords(best)}. ${saved} ${LETTERS_IN_WORDS[best.mirroring]}</p>
          <button
            type="button"
            aria-disabled=${current ? 'false' : 'true'}
            @click=${() => act.start(way)}
          >${doneInWords(way)}</button>`
    }
    <details class="fold">
      <summary>All ways, and what each costs</summary>
      <table class="ease-ways">
        <thead>
          <tr>
            <th scope="col">Way</th>
            <th scope="col" class="amount">Changes</th>
            <th scope="col" class="amount">Float, knots</th>
          </tr>
        </thead>
        <tbody>
          ${ways.map(
            (each) => html`<tr>
              <th scope="row">
                ${wayInWords(each)}${each === now ? ' (as now)' : nothing}${
                  each.state === 'wrong' ? '; does not knot out' : nothing
                }${each.state === 'counted' ? '; counted, not proven' : nothing}
              </th>
              <td class="amount">${figures(each.effort.changes)}</td>
              <td class="amount">${figures(Math.round(each.effort.floatKnots))}</td>
            </tr>`,
          )}
        </tbody>
      </table>
    </details>
  `;
}

function lower(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
