import { changesInWords } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { verdict } from '../../view/verdict.js';
import type { Piece } from '../../work/messages.js';
import type { Place } from '../edit/place.js';

/**
 * The verdict on the chart, with its findings to be gone to. While the next is worked out, the one
 * before stays, marked as such, so that nothing jumps under a stroke.
 */
export function outcome(
  piece: Piece | null,
  latest: boolean,
  short: boolean,
  show: (place: Place) => void,
): TemplateResult {
  return html`
    <p class="draw-working">
      ${latest ? 'Worked out from the chart as it stands.' : 'Working it out …'}
    </p>
    ${
      piece === null
        ? nothing
        : html`<div class=${latest ? '' : 'draw-older'}>
          ${verdict(piece, changesInWords(piece.changes), show, short)}
        </div>`
    }
  `;
}
