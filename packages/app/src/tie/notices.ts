import { html, nothing, type TemplateResult } from 'lit';
import { counted, figures } from '../view/figures.js';
import type { Course } from './course.js';
import type { Tying } from './tying.js';

export interface NoticeActions {
  readonly undoChange: (() => void) | null;
  accept(): void;
  goTo(done: number): void;
  retry(): void;
  rested(): void;
  later(): void;
}

/** What the maker has to know before the next knot. */
export function notices(
  tying: Tying,
  course: Course,
  elsewhere: boolean,
  act: NoticeActions,
): TemplateResult {
  const { drift, damage, problem, done, total, cameFrom } = tying;
  return html`
    ${
      damage === ''
        ? nothing
        : html`<div class="tie-notice" role="alert">
          <p>
            <strong>The count of knots tied of this piece is damaged.</strong> ${damage} The drawing
            is sound. Choose the knot that is next, in the picture or by its row; the count goes on
            from there.
          </p>
        </div>`
    }
    ${
      problem === ''
        ? nothing
        : html`<div class="tie-notice" role="alert">
          <p><strong>The last knots are counted, but not kept.</strong> ${problem}</p>
          <button type="button" @click=${act.retry}>Try to keep them again</button>
        </div>`
    }
    ${
      drift.what === 'row'
        ? html`<div class="tie-notice" role="alert">
          <p>
            <strong>The drawing differs from what you have tied, from row ${figures(drift.row + 1)} on.</strong>
            It was changed, or how it is knotted was, after those knots were tied. Your place is kept
            at ${counted(done, 'knot')}. Knots that are on the cord already
            don't change with the drawing.
          </p>
          ${
            act.undoChange === null
              ? nothing
              : html`<button type="button" @click=${act.undoChange}>Undo the change</button>`
          }
          <button type="button" @click=${act.accept}>It is right as it is now</button>
        </div>`
        : nothing
    }
    ${
      drift.what === 'columns'
        ? html`<div class="tie-notice" role="alert">
          <p>
            <strong>${
              course.kind === 'alpha'
                ? html`You have tied ${figures(done)} knots in rows of ${drift.was}, and the drawing
                has rows of ${drift.now} now.`
                : html`You have tied ${figures(done)} knots with ${drift.was} strings, and the pattern
                has ${drift.now} now.`
            }</strong> What is on the cord does not go on as this drawing, so
            nothing is counted until you say what is so.
          </p>
          ${
            act.undoChange === null
              ? nothing
              : html`<button type="button" @click=${act.undoChange}>Undo the change</button>`
          }
          ${
            course.kind === 'alpha'
              ? html`<button
                type="button"
                @click=${() => act.goTo(Math.floor(done / drift.was) * drift.now)}
              >Go on at row ${figures(Math.min(course.rows, Math.floor(done / drift.was) + 1))}</button>`
              : nothing
          }
          <button type="button" @click=${() => act.goTo(0)}>Begin a new piece</button>
        </div>`
        : nothing
    }
    ${
      done > total && drift.what === 'none'
        ? html`<p class="note">You have tied ${figures(done)} knots, more than the ${figures(total)} that are drawn now.</p>`
        : nothing
    }
    ${
      elsewhere
        ? html`<p class="note" role="status">This piece was counted on in another window. Its count is shown.</p>`
        : nothing
    }
    ${
      cameFrom === null || cameFrom === done
        ? nothing
        : html`<div class="note tie-moved" role="status">
          <p>The next knot is ${placeInWords(done, course)} now; it was ${placeInWords(cameFrom, course)}.</p>
          <button type="button" class="small" @click=${() => act.goTo(cameFrom)}>Take that back</button>
        </div>`
    }
  `;
}

function placeInWords(done: number, course: Course): string {
  const place = course.placeAfter(done);
  return place === null ? 'none, for all are tied' : course.placeInWords(place);
}

/** @param minutes of knotting without a rest */
export function restNotice(
  minutes: number,
  act: Pick<NoticeActions, 'rested' | 'later'>,
): TemplateResult {
  return html`<div class="tie-notice tie-rest" role="alert">
    <p>
      <strong>You have knotted for ${fives(minutes)} minutes. Rest your hands.</strong> Put the work down for
      five minutes: open and close your fingers, circle your wrists and shoulders, and look at
      something far away. Stop for the day when something aches. Pain, tingling or numbness that
      stays or comes back is a matter for a doctor or a physiotherapist.
    </p>
    <button type="button" class="primary" @click=${act.rested}>I have rested</button>
    <button type="button" @click=${act.later}>Remind me in 5 minutes</button>
  </div>`;
}

/** In steps of five: told anew each minute, it would be read out each minute. */
function fives(minutes: number): number {
  return Math.max(5, Math.floor(minutes / 5) * 5);
}

/** All is tied. */
export function finished(total: number, active: string | null, again: () => void): TemplateResult {
  return html`
    <h2 id="knot-name" class="tie-knot">All ${figures(total)} knots are tied</h2>
    <p>
      ${active === null ? nothing : html`Your knotting took about ${active} in all, pauses left out.`}
      Look the piece over from both sides, draw up what hangs loose behind it, and finish the ends:
      plait or knot the strings, or sew them in.
    </p>
    <p>
      Cut away from your fingers. Singe only synthetic thread, and only its very end, away from hair
      and curtains, with water at hand; cotton burns on. For a small child, close the bracelet so
      that it opens under a pull, and leave no loose cords.
    </p>
    <button type="button" @click=${again}>Tie another, from the first knot</button>
  `;
}
