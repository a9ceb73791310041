import { colourInWords, leadInWords } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import '../view/swatch.js';
import type { InHand } from './in-hand.js';

/**
 * The knot in hand in words, and the moves after it.
 *
 * @param lesson opens the lesson for a colour change or a turn
 */
export function knotCard(hand: InHand, lesson: () => void): TemplateResult {
  const { knot, heading, cases, change, steps, way, run, next } = hand;
  return html`
    ${way === null ? nothing : html`<p class="tie-way">${way}</p>`}
    <h2 id="knot-name" class="tie-knot">${heading}</h2>
    <p class="tie-strings">
      <span class="tie-string">
        <halfhitch-swatch .colour=${knot.tying.colour}></halfhitch-swatch>
        ${leadInWords(knot.tying)} ties
      </span>
      <span class="tie-string">
        <halfhitch-swatch .colour=${knot.held.colour}></halfhitch-swatch>
        onto ${knot.held.colour === knot.tying.colour ? 'one like it' : colourInWords(knot.held)}
      </span>
      ${run.of > 1 ? html`<span>knot ${run.at} of ${run.of} alike</span>` : nothing}
    </p>
    ${
      change === null
        ? nothing
        : html`
          ${cases.length === 0 ? nothing : html`<p class="cases">Colour change: ${cases.join(', ')}</p>`}
          <p>${change}</p>`
    }
    <ol class="tie-steps">${steps.map((step) => html`<li>${step}</li>`)}</ol>
    ${
      hasLesson(hand)
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
