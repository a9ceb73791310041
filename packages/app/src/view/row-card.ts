import { html, type TemplateResult } from 'lit';
import type { RowSheet } from '../work/messages.js';
import { rowInstructions } from './row-instructions.js';
import { wordsUsed } from './trade-words.js';

/**
 * A row in words, and the way to the next.
 *
 * @param column of the chosen knot
 * @param pick chooses a knot of the row by its column
 */
export function rowCard(
  { reading, instructions }: RowSheet,
  rows: number,
  column: number,
  toRow: (row: number) => void,
  pick: (column: number) => void,
): TemplateResult {
  const { row } = reading;
  return html`<section class="card row-card" aria-labelledby="row-name">
    <div class="bar">
      <h2 id="row-name">${instructions.heading}</h2>
      <div class="turner">
        ${turner('Previous row', row > 0, () => toRow(row - 1))}
        ${turner('Next row', row + 1 < rows, () => toRow(row + 1))}
      </div>
    </div>
    ${rowInstructions(instructions, column, pick)}
    ${wordsUsed('lead (L1, L2 …)', 'base string', 'half hitch', 'forward, backward', 'bar')}
  </section>`;
}

function turner(label: string, can: boolean, turn: () => void): TemplateResult {
  return html`<button type="button" aria-disabled=${can ? 'false' : 'true'} @click=${turn}>
    ${label}
  </button>`;
}

/** Brings the part of the row with the chosen knot into sight of the list, not of the page. */
export function showPart(page: Element): void {
  const parts = page.querySelector<HTMLElement>('.parts');
  const part = parts?.querySelector<HTMLElement>('.current') ?? null;
  if (parts === null || part === null) return;
  const { scrollTop, clientHeight } = parts;
  const above = part.offsetTop < scrollTop;
  const below = part.offsetTop + part.offsetHeight > scrollTop + clientHeight;
  if (above || below) parts.scrollTop = part.offsetTop - clientHeight / 4;
}
