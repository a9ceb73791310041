import type { Pace } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { PACE_LIMITS } from './pace.js';

export interface PaceActions {
  /** The fields were unfolded. */
  opened(): void;
  set(name: keyof Pace, text: string): void;
  take(pace: Pace): void;
}

/**
 * How fast the maker knots.
 *
 * @param wrong the field that holds no figure that can be
 * @param mine as the project has been tied so far; null where that is not known
 */
export function paceFields(
  pace: Pace,
  wrong: keyof Pace | null,
  mine: Pace | null,
  act: PaceActions,
): TemplateResult {
  const field = (name: keyof Pace, label: string): TemplateResult =>
    paceField(name, label, pace[name], wrong === name, act);
  return html`<details class="fold" @toggle=${() => act.opened()}>
    <summary>How fast you knot</summary>
    <p class="hint">
      Times are worked out from these two, which are yours to choose. What is filled in at first
      is a practised hand’s (common practice, no source).
    </p>
    <div class="ease-pace">
      ${field('halfHitch', 'Seconds for a half hitch')}
      ${field('change', 'Seconds more for a colour change')}
    </div>
    ${
      mine === null
        ? nothing
        : html`<button type="button" class="small" @click=${() => act.take(mine)}>Use the pace you have tied this at: ${mine.halfHitch} s and ${mine.change} s</button>`
    }
  </details>`;
}

function paceField(
  name: keyof Pace,
  label: string,
  value: number,
  wrong: boolean,
  act: PaceActions,
): TemplateResult {
  const { least, most } = PACE_LIMITS[name];
  return html`<div class="field ${wrong ? 'wrong' : ''}">
    <label for="ease-${name}">${label}</label>
    <input
      id="ease-${name}"
      type="text"
      inputmode="decimal"
      autocomplete="off"
      maxlength="6"
      aria-invalid=${wrong ? 'true' : 'false'}
      aria-describedby=${wrong ? `ease-${name}-error` : nothing}
      .value=${String(value)}
      @input=${(event: Event) => act.set(name, (event.target as HTMLInputElement).value)}
    />
    ${
      wrong
        ? html`<p class="field-error" id="ease-${name}-error" role="alert">Give a number from ${least} to ${most}.</p>`
        : nothing
    }
  </div>`;
}
