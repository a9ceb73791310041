import { html, nothing, type TemplateResult } from 'lit';
import { counted, figures } from '../view/figures.js';
import type { Course, KnotPlace } from './course.js';
import { timeLeft } from './time-left.js';
import type { Tying } from './tying.js';

/**
 * How far the row and the piece are, how long the rest takes, and that the count is kept.
 *
 * @param place of the knot in hand; null when all is tied
 * @param lasting whether what is kept is still there when the page has been closed
 */
export function progressCard(
  tying: Tying,
  course: Course,
  place: KnotPlace | null,
  lasting: boolean,
): TemplateResult {
  const { done } = tying;
  const { total } = course;
  const left =
    place === null
      ? null
      : timeLeft(tying.times, { knots: total - done, changes: course.changesBetween(done, total) });
  return html`
    <div class="tie-bars">
      ${
        place === null
          ? nothing
          : bar(
              `Row ${figures(place.row + 1)} of ${figures(course.rows)}`,
              place.order,
              course.knotsIn(place.row),
              `${place.order} of ${course.knotsIn(place.row)} knots`,
            )
      }
      ${bar('The piece', done, total, `${figures(done)} of ${figures(total)} knots, ${percent(done, total)}`)}
    </div>
    ${
      left === null
        ? nothing
        : html`<p class="tie-left">
          ${left.about === null ? nothing : html`<strong>${left.about} left.</strong>`}
          <span class="tie-from">${left.from}</span>
        </p>`
    }
    <p class="tie-kept ${tying.keeping}" data-kept=${tying.kept}>${keptInWords(tying, lasting)}</p>
  `;
}

function bar(name: string, value: number, max: number, text: string): TemplateResult {
  return html`<label class="tie-bar">
    <span class="tie-bar-name">${name}</span>
    <span class="tie-bar-text">${text}</span>
    <progress .value=${Math.min(value, max)} max=${max}>${text}</progress>
  </label>`;
}

export function keptInWords({ keeping, kept, done }: Tying, lasting: boolean): string {
  if (!lasting) return 'Counted in this page only: nothing is kept once it is closed.';
  switch (keeping) {
    case 'kept':
      return done === 0 ? 'Every knot you count is kept on this device.' : `${knots(kept)} kept.`;
    case 'keeping':
      return `${knots(kept)} kept; keeping on.`;
    case 'failed':
      return `${knots(kept)} kept, ${figures(done)} counted.`;
  }
}

function knots(count: number): string {
  return counted(count, 'knot');
}

function percent(done: number, total: number): string {
  // Never all before the last knot, and never none after the first.
  const share = Math.round((100 * Math.min(done, total)) / total);
  if (done > 0 && share === 0) return 'under 1 %';
  return `${done < total ? Math.min(99, share) : share} %`;
}
