import { html, nothing, type TemplateResult } from 'lit';

export interface WatchWish<Playing extends string> {
  /** What can be played, and what it is called. */
  readonly choices: readonly (readonly [Playing, string])[];
  readonly playing: Playing;
  readonly mirror: boolean;
  /** What plays it. */
  readonly stage: TemplateResult;
  /** Below all else. */
  readonly below?: TemplateResult;
  choosePlaying(playing: Playing): void;
  setMirror(mirror: boolean): void;
}

/** A knot, or more of the piece, tied in front of one's eyes. */
export function watchCard<Playing extends string>(wish: WatchWish<Playing>): TemplateResult {
  return html`<section class="card watch" aria-labelledby="watch-name">
    <div class="bar">
      <h2 id="watch-name">Watch it tied</h2>
      <fieldset class="switch">
        <legend class="unseen">What is played</legend>
        ${wish.choices.map(
          ([value, name]) => html`<label>
            <input
              type="radio"
              name="playing"
              value=${value}
              .checked=${wish.playing === value}
              @change=${() => wish.choosePlaying(value)}
            />
            <span>${name}</span>
          </label>`,
        )}
      </fieldset>
    </div>
    ${wish.stage}
    <label class="check">
      <input
        type="checkbox"
        .checked=${wish.mirror}
        @change=${(event: Event) => wish.setMirror((event.target as HTMLInputElement).checked)}
      />
      Left-handed: mirror the 3D picture
    </label>
    ${wish.below ?? nothing}
  </section>`;
}
