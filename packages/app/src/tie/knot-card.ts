import { html, nothing, type TemplateResult } from 'lit';
import '../view/swatch.js';
import type { InHand } from './in-hand.js';

/** What the knot in hand is called, and its two strings. */
export function knotHead({ knot, does, heading, change, way, run }: InHand): TemplateResult {
  const { tying, held } = knot;
  return html`
    ${way === null ? nothing : html`<p class="tie-way">${way}</p>`}
    ${change === null ? nothing : html`<p class="tie-change">Colour change</p>`}
    <h2 id="knot-name" class="tie-knot">${heading}</h2>
    <p class="tie-strings">
      <span class="tie-string">
        <halfhitch-swatch .colour=${tying.colour}></halfhitch-swatch>
        ${does.tying}
      </span>
      <span class="tie-string">
        <halfhitch-swatch .colour=${held.colour}></halfhitch-swatch>
        ${does.held}
      </span>
      ${run.of > 1 ? html`<span>knot ${run.at} of ${run.of} alike</span>` : nothing}
    </p>
  `;
}

/**
 * Every step of the knot in hand in words, and the moves after it.
 *
 * @param lesson opens the lesson for a colour change or a turn; null where there are none
 */
export function knotWords(hand: InHand, lesson: (() => void) | null): TemplateResult {
  const { change, steps, next } = hand;
  return html`
    ${change === null ? nothing : html`<p>${change}</p>`}
    <ol class="tie-steps">${steps.map((step) => html`<li>${step}</li>`)}</ol>
    ${
      lesson !== null && hasLesson(hand)
        ? html`<button type="button" class="small" @click=${lesson}>
          ${change === null ? 'Practise this turn' : 'Practise this change'}
        </button>`
        : nothing
    }
    ${
      next.length === 0
        ? nothing
        : html`<h3 class="tie-then">Then</h3>
          <ol class="tie-next">${next.map(({ text, kind }) => html`<li class=${kind}>${text}</li>`)}</ol>`
    }
  `;
}

/** Lessons are about changes and turns. */
function hasLesson({ knot, change }: InHand): boolean {
  return change !== null || (knot.order === 0 && knot.row > 0);
}
