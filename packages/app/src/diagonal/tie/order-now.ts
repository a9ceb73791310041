import { changesPlaces, knotAt, slotOfPlace } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { colourName } from '../../draw/edit/colours.js';
import type { KnotPlace } from '../../tie/course.js';
import { MANY } from '../draw/strings-card.js';
import type { DiagonalPiece } from '../work/messages.js';

/** How the strings hang just before a knot, named by their slots at the start; the two are marked. */
export function orderNow(
  { pattern, reading }: DiagonalPiece,
  place: KnotPlace | null,
): TemplateResult {
  const { strings, start, colours, rows } = pattern;
  const row = place?.row ?? rows;
  const order = Array.from(reading.order.subarray(row * strings, (row + 1) * strings));
  for (let before = 0; place !== null && before < place.column; before++) {
    const kind = knotAt(pattern, row, before);
    const slot = slotOfPlace(pattern, row, before);
    if (kind === null || !changesPlaces(kind)) continue;
    [order[slot], order[slot + 1]] = [order[slot + 1] ?? 0, order[slot] ?? 0];
  }
  const slot = place === null ? -2 : slotOfPlace(pattern, row, place.column);
  return html`
    <h3 class="order-name">${place === null ? 'How the strings hang' : 'How the strings hang now'}</h3>
    <ol class="strings plain" tabindex=${strings > MANY ? '0' : nothing}>
      ${order.map((string, at) => {
        const colour = colours[start[string] ?? 0];
        const inHand = at === slot || at === slot + 1;
        return html`<li class=${inHand ? 'in-hand' : ''}>
          <halfhitch-swatch .colour=${colour?.hex ?? '#808080'}></halfhitch-swatch><span>${string + 1}</span>
          <span class="unseen">${colour === undefined ? nothing : `, ${colourName(colour)}`}${inHand ? ', in hand' : ''}</span>
        </li>`;
      })}
    </ol>
  `;
}
