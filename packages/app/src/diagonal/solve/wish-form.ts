import type { ChartColour, DiagonalPattern } from '@halfhitch/core';
import type { SolvePreference } from '@halfhitch/core/solve';
import { html, nothing, type TemplateResult } from 'lit';
import { colourName } from '../../draw/edit/colours.js';
import type { SolveWish } from './messages.js';

/** What is wanted besides the picture, as it is filled in. */
export interface WishSettings {
  /** The strings must hang as they do now. */
  readonly keepStart: boolean;
  /** The colours must hang at the end as at the start. */
  readonly repeat: boolean;
  /** A colour that few strings are to have; null for none. */
  readonly fewestOf: number | null;
  readonly prefer: SolvePreference;
  /** Seconds. */
  readonly seconds: number;
}

export const USUAL_WISH: WishSettings = {
  keepStart: false,
  repeat: false,
  fewestOf: null,
  prefer: 'changes',
  seconds: 60,
};

const PREFERENCES: readonly { readonly value: SolvePreference; readonly name: string }[] = [
  { value: 'changes', name: 'few changes of kind along the rows' },
  { value: 'balance', name: 'thread spent evenly' },
  { value: 'none', name: 'whatever is found first' },
];

const TIMES: readonly { readonly seconds: number; readonly name: string }[] = [
  { seconds: 10, name: '10 seconds' },
  { seconds: 60, name: '1 minute' },
  { seconds: 300, name: '5 minutes' },
  { seconds: 1_800, name: '30 minutes' },
];

export function wishOf(settings: WishSettings, pattern: DiagonalPattern): SolveWish {
  const { keepStart, repeat, fewestOf, prefer, seconds } = settings;
  return {
    prefer,
    seconds,
    repeat,
    ...(keepStart ? { start: pattern.start } : {}),
    ...(fewestOf === null ? {} : { fewestOf }),
  };
}

/** What may be wanted besides the picture. */
export function wishForm(
  settings: WishSettings,
  colours: readonly ChartColour[],
  set: (change: Partial<WishSettings>) => void,
): TemplateResult {
  const check = (name: 'keepStart' | 'repeat', label: string) => html`<label class="check">
    <input
      type="checkbox"
      .checked=${settings[name]}
      @change=${(event: Event) => set({ [name]: (event.target as HTMLInputElement).checked })}
    />
    ${label}
  </label>`;
  return html`<details class="solve-wish">
    <summary>What else is wanted</summary>
    ${check('keepStart', 'Keep the strings as they hang at the start')}
    ${check('repeat', 'Colours hang at the end as at the start, so that it can be repeated')}
    <div class="fields">
      <label>
        As few strings as possible in
        <select
          @change=${(event: Event) => {
            const { value } = event.target as HTMLSelectElement;
            set({ fewestOf: value === '' ? null : Number(value) });
          }}
        >
          <option value="" .selected=${settings.fewestOf === null}>no colour above others</option>
          ${colours.map(
            (colour, place) => html`<option
              value=${place}
              .selected=${settings.fewestOf === place}
            >${colourName(colour)}</option>`,
          )}
        </select>
      </label>
      <label>
        Among equals, liked best
        <select
          @change=${(event: Event) => {
            const { value } = event.target as HTMLSelectElement;
            const chosen = PREFERENCES.find((one) => one.value === value);
            if (chosen !== undefined) set({ prefer: chosen.value });
          }}
        >
          ${PREFERENCES.map(
            ({ value, name }) =>
              html`<option value=${value} .selected=${settings.prefer === value}>${name}</option>`,
          )}
        </select>
      </label>
      <label>
        Search for at most
        <select
          @change=${(event: Event) => set({ seconds: Number((event.target as HTMLSelectElement).value) })}
        >
          ${TIMES.map(
            ({ seconds, name }) =>
              html`<option value=${seconds} .selected=${settings.seconds === seconds}>${name}</option>`,
          )}
        </select>
      </label>
    </div>
    ${
      settings.fewestOf !== null && settings.keepStart
        ? html`<p class="hint">Kept as they hang, the strings have the colours that they have.</p>`
        : nothing
    }
  </details>`;
}
