import type { InstructionPart, RowInstructions } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';

/** A row to be read, part by part; the part with the chosen knot is marked. */
export function rowInstructions(
  instructions: RowInstructions,
  column: number,
  watch: (column: number) => void,
): TemplateResult {
  return html`<ol class="parts">
    ${instructions.parts.map((part) => onePart(part, holds(part, column), watch))}
  </ol>`;
}

function holds({ columns }: InstructionPart, column: number): boolean {
  if (columns === null) return false;
  const { first, last } = columns;
  return column >= Math.min(first, last) && column <= Math.max(first, last);
}

function onePart(
  part: InstructionPart,
  current: boolean,
  watch: (column: number) => void,
): TemplateResult {
  const { columns, cases, substeps, text } = part;
  return html`<li class="part ${part.kind} ${current ? 'current' : ''}" aria-current=${current ? 'step' : 'false'}>
    ${cases.length === 0 ? nothing : html`<p class="cases">Colour change: ${cases.join(', ')}</p>`}
    <p>${text}</p>
    ${
      substeps.length === 0
        ? nothing
        : html`<ol class="substeps">
          ${substeps.map((substep) => html`<li>${substep}</li>`)}
        </ol>`
    }
    ${
      columns === null
        ? nothing
        : html`<button type="button" class="small" @click=${() => watch(columns.first)}>
          Watch<span class="unseen"> the knot in column ${columns.first + 1}</span>
        </button>`
    }
  </li>`;
}
