import { html, nothing, type TemplateResult } from 'lit';
import { figures } from '../view/figures.js';
import type { Course } from './course.js';
import { capital, type InHand } from './in-hand.js';

export interface BigActions {
  done(): void;
  back(): void;
  runDone(): void;
  sayAgain(): void;
  close(): void;
}

/**
 * The knot in hand to be read at arm's length, on a button as large as the screen: for a phone that
 * stands beside the work and is tapped with a knuckle.
 *
 * @param hand null while it is fetched, and when all is tied
 * @param all whether all is tied
 * @param step of a colour change, which is gone through step by step; from 0
 * @param notices what must be known before the next knot
 */
export function bigButtons(
  hand: InHand | null,
  step: number,
  all: boolean,
  course: Course,
  voice: boolean,
  canGoBack: boolean,
  notices: TemplateResult | typeof nothing,
  act: BigActions,
): TemplateResult {
  return html`
    <div class="big-top">
      <p>
        ${
          hand === null
            ? ''
            : `Row ${figures(hand.knot.row + 1)} of ${figures(course.rows)}, knot ${hand.knot.order + 1} of ${course.knotsIn(hand.knot.row)}`
        }
      </p>
      <button type="button" @click=${act.close}>Close</button>
    </div>
    ${notices}
    ${
      hand === null
        ? html`<p class="big-all">${all ? 'All knots are tied.' : ''}</p>`
        : doneButton(hand, step, act)
    }
    <div class="big-row">
      <button type="button" aria-disabled=${canGoBack ? 'false' : 'true'} @click=${act.back}>
        Back
      </button>
      ${
        hand !== null && hand.run.at < hand.run.of
          ? html`<button type="button" @click=${act.runDone}>All ${restOfRun(hand)} tied</button>`
          : nothing
      }
      ${voice ? html`<button type="button" @click=${act.sayAgain}>Say it again</button>` : nothing}
    </div>
  `;
}

function doneButton(hand: InHand, step: number, act: BigActions): TemplateResult {
  const { knot, where, change, steps, next } = hand;
  const { kind, tying, held } = knot;
  const more = change !== null && step + 1 < steps.length;
  return html`<button type="button" class="big-done" @click=${act.done}>
    <halfhitch-picture
      decorative
      .kind=${kind}
      .tyingColour=${tying.colour}
      .heldColour=${held.colour}
    ></halfhitch-picture>
    ${
      change === null
        ? html`<span class="big-words">
          <span class="big-kind">${capital(kind)} knot</span>
          <span class="big-string">${where}</span>
          ${lead(hand)}
          ${next[0] === undefined ? nothing : html`<span class="big-next">then ${next[0].text}</span>`}
        </span>`
        : html`<span class="big-words">
          <span class="big-change">Colour change at ${where}</span>
          ${lead(hand)}
          <span class="big-count">Step ${step + 1} of ${steps.length}</span>
          <span class="big-step">${steps[step]}</span>
        </span>`
    }
    <span class="big-tap">${more ? 'Tap when this step is done' : 'Tap when it is tied'}</span>
  </button>`;
}

function lead({ knot: { tying }, does }: InHand): TemplateResult {
  return html`<span class="big-lead">
    <halfhitch-swatch .colour=${tying.colour}></halfhitch-swatch>${does.tying}
  </span>`;
}

/** Knots left of the run, the one in hand included. */
export function restOfRun({ run }: InHand): number {
  return run.of - run.at + 1;
}
