import { type Chart, gainInWords, suggestionInWords } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import '../view/swatch.js';
import type { Advice, EaseAnswer } from './messages.js';

/** Suggestions shown before more are asked for. */
const FEW = 5;

export interface SuggestionActions {
  show(advice: Advice): void;
  apply(advice: Advice): void;
  showAll(): void;
}

/**
 * What would make a piece easier, each with what it saves.
 *
 * @param all whether all are shown, or the first few
 * @param current whether the chart still is as it was looked through
 */
export function suggestionList(
  { advice, untried }: EaseAnswer,
  chart: Chart,
  all: boolean,
  current: boolean,
  act: SuggestionActions,
): TemplateResult {
  if (advice.length === 0) {
    return html`<p>Nothing small was found that would make it easier.</p>`;
  }
  const shown = all ? advice : firstFew(advice);
  const more = advice.length - shown.length;
  return html`
    <ol class="ease-list" role="list">
      ${shown.map((one) => item(one, chart, current, act))}
    </ol>
    ${
      more === 0
        ? nothing
        : html`<button type="button" class="small" @click=${act.showAll}>Show ${more} more</button>`
    }
    <p class="hint">
      Each stands for itself and was proven by planning and verifying the piece with and without
      it. Thread and time are estimates.
      ${untried > 0 ? `${untried} more ideas were not tried, since the chart is large.` : nothing}
    </p>
  `;
}

function item(
  advice: Advice,
  chart: Chart,
  current: boolean,
  act: SuggestionActions,
): TemplateResult {
  const { suggestion, thread } = advice;
  const what = suggestionInWords(chart, suggestion);
  const [first] = suggestion.cells;
  const off = current ? 'false' : 'true';
  return html`<li>
    <p class="ease-what">
      ${
        first === undefined || suggestion.kind === 'every-spot'
          ? nothing
          : html`<span class="ease-colours" aria-hidden="true">
            <halfhitch-swatch .colour=${chart.colours[first.from]?.hex ?? ''}></halfhitch-swatch>
            <halfhitch-swatch .colour=${chart.colours[first.to]?.hex ?? ''}></halfhitch-swatch>
          </span>`
      }
      <strong>${what}</strong>
    </p>
    <p>
      ${gainInWords(suggestion.gain, thread)}
      ${suggestion.ofShape ? 'Part of a larger shape: look at it before you apply this.' : nothing}
    </p>
    <p class="ease-buttons">
      ${
        first === undefined
          ? nothing
          : html`<button
            type="button"
            aria-disabled=${off}
            aria-label=${`Show: ${what}`}
            @click=${() => act.show(advice)}
          >Show</button>`
      }
      <button
        type="button"
        aria-disabled=${off}
        aria-label=${`Apply: ${what}`}
        @click=${() => act.apply(advice)}
      >Apply</button>
    </p>
  </li>`;
}

/** The first few; that all stray knots can go at once is among them, wherever it comes. */
function firstFew(advice: readonly Advice[]): readonly Advice[] {
  const every = advice.findIndex(({ suggestion }) => suggestion.kind === 'every-spot');
  if (every < FEW) return advice.slice(0, FEW);
  return [...advice.slice(0, FEW - 1), ...advice.slice(every, every + 1)];
}
