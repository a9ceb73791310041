import {
  html,
  nothing,
  type ReactiveController,
  type ReactiveControllerHost,
  type TemplateResult,
} from 'lit';
import { figures } from '../view/figures.js';
import { giveKeysBack, ignoreHeldKey, restOfRun } from './counting-buttons.js';
import type { Course } from './course.js';
import { capital, type InHand } from './in-hand.js';
import type { WorkInHand } from './work-in-hand.js';

/** What the big buttons do, besides going through a colour change. */
export interface BigActions {
  done(): void;
  back(): void;
  runDone(): void;
  sayAgain(): void;
}

/**
 * The knot in hand to be read at arm's length, on a button as large as the screen: for a phone that
 * stands beside the work and is tapped with a knuckle. A colour change goes step by step there.
 */
export class BigButtons implements ReactiveController {
  private shown = false;

  constructor(
    private readonly host: ReactiveControllerHost & Element,
    private readonly work: WorkInHand<InHand>,
    private readonly act: BigActions,
  ) {
    host.addController(this);
  }

  get open(): boolean {
    return this.shown;
  }

  show(shown: boolean): void {
    this.shown = shown;
    this.host.requestUpdate();
  }

  hostUpdated(): void {
    const dialog = this.host.querySelector<HTMLDialogElement>('dialog.big');
    if (dialog === null || dialog.open) return;
    dialog.showModal();
    dialog.querySelector<HTMLElement>('.big-done')?.focus();
  }

  /** The colour change that is gone through step by step. */
  get stepping(): InHand | null {
    const { hand } = this.work;
    return this.shown && hand !== null && hand.change !== null ? hand : null;
  }

  /** On by a step of a colour change, or by a knot. */
  done(): void {
    const { stepping, work } = this;
    if (stepping !== null && work.step + 1 < stepping.steps.length) this.goToStep(work.step + 1);
    else this.act.done();
  }

  back(): void {
    const { stepping, work } = this;
    if (stepping !== null && work.step > 0) this.goToStep(work.step - 1);
    else this.act.back();
  }

  private goToStep(step: number): void {
    this.work.goToStep(step);
    this.act.sayAgain();
  }

  /** @param notices what must be known before the next knot */
  dialog(course: Course, voice: boolean, notices: TemplateResult): TemplateResult {
    return html`<dialog
      class="big"
      aria-label="Big buttons"
      @keydown=${ignoreHeldKey}
      @click=${giveKeysBack}
      @close=${() => this.show(false)}
    >
      <p class="unseen" role="status">${this.work.news}</p>
      ${this.buttons(course, voice, notices)}
    </dialog>`;
  }

  private buttons(course: Course, voice: boolean, notices: TemplateResult): TemplateResult {
    const { place, tying, step } = this.work;
    const hand = place === null ? null : this.work.hand;
    const canGoBack = (tying?.done ?? 0) > 0;
    const { act } = this;
    return html`
      <div class="big-top">
        <p>
          ${
            hand === null
              ? ''
              : `Row ${figures(hand.knot.row + 1)} of ${figures(course.rows)}, knot ${hand.knot.order + 1} of ${course.knotsIn(hand.knot.row)}`
          }
        </p>
        <button type="button" @click=${() => this.show(false)}>Close</button>
      </div>
      ${notices}
      ${
        hand === null
          ? html`<p class="big-all">${place === null ? 'All knots are tied.' : ''}</p>`
          : doneButton(hand, step, () => this.done())
      }
      <div class="big-row">
        <button type="button" aria-disabled=${canGoBack ? 'false' : 'true'} @click=${() => this.back()}>
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
}

function doneButton(hand: InHand, step: number, done: () => void): TemplateResult {
  const { knot, where, change, steps, next } = hand;
  const { kind, tying, held } = knot;
  const more = change !== null && step + 1 < steps.length;
  return html`<button type="button" class="big-done" @click=${done}>
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
