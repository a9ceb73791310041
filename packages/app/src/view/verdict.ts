import type { Grade } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import type { Place } from './fabric-picture.js';
import { counted, figures } from './figures.js';

const MOST_LISTED = 100;

const GRADES: readonly { grade: Grade; name: string }[] = [
  { grade: 'wrong', name: 'Wrong' },
  { grade: 'weak', name: 'Weak' },
  { grade: 'note', name: 'Worth knowing' },
];

/** Something found; rows and columns from 1, null for none. */
export interface Told {
  readonly grade: Grade;
  readonly row: number | null;
  readonly column: number | null;
  readonly message: string;
}

export interface Verdict {
  readonly ok: boolean;
  readonly knots: number;
  readonly halfHitches: number;
  readonly findings: readonly Told[];
  readonly findingCount: number;
}

/** "Row 3, column 5" */
type Where = (row: number, column: number) => string;

const inChart: Where = (row, column) => `Row ${row}, column ${column}`;

/**
 * Whether the piece knots out as drawn, by the numbers, and what was found; in short, only what is
 * wrong is laid open.
 */
export function verdict(
  piece: Verdict,
  changes: string,
  show: (place: Place) => void,
  short: boolean,
  where: Where = inChart,
): TemplateResult {
  const { ok, knots, halfHitches } = piece;
  return html`
    <div class="verdict ${ok ? 'good' : 'bad'}">
      <p class="stamp">${ok ? 'Knots out as drawn' : 'Does not knot out as drawn'}</p>
      <p>
        ${counted(knots, 'knot')},
        ${figures(halfHitches)} half hitches. ${changes}
      </p>
    </div>
    ${GRADES.map(({ grade, name }) => graded(piece, grade, name, show, short, where))}
    ${
      piece.findingCount > Math.min(MOST_LISTED, piece.findings.length)
        ? html`<p>${figures(piece.findingCount)} findings in all; the first are listed.</p>`
        : nothing
    }
  `;
}

function graded(
  piece: Verdict,
  grade: Grade,
  name: string,
  show: (place: Place) => void,
  short: boolean,
  where: Where,
): TemplateResult | typeof nothing {
  const found = piece.findings.filter((finding) => finding.grade === grade).slice(0, MOST_LISTED);
  if (found.length === 0) return nothing;
  // Scrolled by keys: where nothing in the list takes the focus, the list itself does.
  const still = found.every(({ row }) => row === null);
  return html`<details class="findings ${grade}" ?open=${grade === 'wrong' || (!short && found.length <= 4)}>
    <summary>${name}: ${found.length}</summary>
    <ul tabindex=${still ? '0' : nothing}>
      ${found.map((finding) => html`<li>${one(finding, show, where)}</li>`)}
    </ul>
  </details>`;
}

function one(finding: Told, show: (place: Place) => void, where: Where): TemplateResult {
  const { row, column, message } = finding;
  if (row === null) return html`<p>${message}</p>`;
  const place = column === null ? `Row ${row}` : where(row, column);
  return html`<button
    type="button"
    class="finding"
    @click=${() => show({ row: row - 1, column: (column ?? 1) - 1 })}
  >
    <span class="place">${place}</span> ${message}
  </button>`;
}
