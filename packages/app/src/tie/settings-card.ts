import { html, nothing, type TemplateResult } from 'lit';
import { type AwakeState, awakeInWords } from './awake.js';
import type { TieSettings } from './settings.js';
import { type VoiceState, voiceInWords } from './voice.js';

const RATES = [
  [0.6, 'very slowly'],
  [0.8, 'slowly'],
  [1, 'as usual'],
  [1.25, 'quickly'],
  [1.6, 'very quickly'],
] as const;

const RESTS = [0, 15, 20, 30, 45, 60] as const;

/** How the maker wants to follow along. */
export function settingsCard(
  settings: TieSettings,
  voice: VoiceState,
  awake: AwakeState,
  set: (change: Partial<TieSettings>) => void,
): TemplateResult {
  const said = settings.voice ? voiceInWords(voice) : '';
  const lit = settings.awake ? awakeInWords(awake) : '';
  return html`
    <details class="tie-settings">
      <summary><h2 id="follow-name">Hands-free, voice and rests</h2></summary>
      ${check('Say the next knot aloud', settings.voice, (on) => set({ voice: on }))}
      ${said === '' ? nothing : html`<p class="note" role="status">${said}</p>`}
      <label class="tie-choice">
        Speak
        <select
          name="rate"
          @change=${(event: Event) => set({ rate: Number(chosenIn(event)) })}
        >
          ${RATES.map(
            ([rate, name]) =>
              html`<option value=${rate} ?selected=${nearest(settings.rate) === rate}>${name}</option>`,
          )}
        </select>
      </label>
      ${check('Keep the screen on', settings.awake, (on) => set({ awake: on }))}
      ${lit === '' ? nothing : html`<p class="hint" role="status">${lit}</p>`}
      ${check('Play each knot when it comes up', settings.play, (on) => set({ play: on }))}
      <label class="tie-choice">
        Remind me to rest
        <select
          name="rest"
          @change=${(event: Event) => set({ rest: Number(chosenIn(event)) })}
        >
          ${[...new Set([...RESTS, settings.rest])]
            .sort((one, other) => one - other)
            .map(
              (rest) => html`<option value=${rest} ?selected=${settings.rest === rest}>
                ${rest === 0 ? 'never' : `after ${rest} minutes of knotting`}
              </option>`,
            )}
        </select>
      </label>
      <div class="by-keys">
      <h3>Keys</h3>
      <dl class="tie-keys">
        ${KEYS.map(
          ([keys, does]) =>
            html`<div><dt>${keys.map((key) => html`<kbd>${key}</kbd> `)}</dt><dd>${does}</dd></div>`,
        )}
      </dl>
      ${check('Use the letter keys too', settings.letters, (on) => set({ letters: on }))}
      <p class="hint">They work wherever nothing else in focus takes them.</p>
      </div>
    </details>
  `;
}

const KEYS: readonly (readonly [readonly string[], string])[] = [
  [['Space', 'Enter'], 'this knot is tied'],
  [['Backspace'], 'the last one is not'],
  [['R'], 'all knots alike are tied'],
  [['B'], 'big buttons, and back'],
  [['S'], 'say it again'],
];

function check(label: string, on: boolean, set: (on: boolean) => void): TemplateResult {
  return html`<label class="check">
    <input
      type="checkbox"
      .checked=${on}
      @change=${(event: Event) => set((event.target as HTMLInputElement).checked)}
    />
    ${label}
  </label>`;
}

function chosenIn(event: Event): string {
  return (event.target as HTMLSelectElement).value;
}

/** The rate of the list that is nearest to one that was kept. */
function nearest(rate: number): number {
  return RATES.map(([value]) => value as number).reduce((best, value) =>
    Math.abs(value - rate) < Math.abs(best - rate) ? value : best,
  );
}
