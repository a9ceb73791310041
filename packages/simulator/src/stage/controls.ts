import { html, nothing, svg, type TemplateResult } from 'lit';
import type { Words } from '../messages/words.js';
import { STAGE_VIEWS, type StageView } from './camera-turn.js';

/** How many controls stand under the picture. */
export type StageControls = 'all' | 'few' | 'none';

export const STAGE_CONTROLS: readonly StageControls[] = ['all', 'few', 'none'];

/** The stage that the controls are of, as far as they need it. */
export interface ControlledStage extends Record<StageSwitch, boolean> {
  readonly position: number;
  readonly length: number;
  readonly playing: boolean;
  speed: number;
  view: StageView;
  step(steps: number): void;
  flip(): void;
}

/** What the controls show and do. */
export interface ControlPanel {
  readonly stage: ControlledStage;
  readonly words: Words;
  readonly show: StageControls;
  readonly heading: string;
  /** What the step buttons go on by. */
  readonly step: string;
  /** Switches of the menu that this picture has. */
  readonly switches: readonly StageSwitch[];
  playOrPause(): void;
  scrub(position: number): void;
  key(event: KeyboardEvent): void;
}

export type StageSwitch = 'loop' | 'ghost' | 'trail' | 'magnifier';

const SPEEDS = ['0.25', '0.5', '1', '1.5', '2'] as const;

export function stageControls(panel: ControlPanel): TemplateResult | typeof nothing {
  if (panel.show === 'none') return nothing;
  const { stage, words, step } = panel;
  return html`
    <div class="controls" part="controls" @keydown=${panel.key}>
      <input
        class="scrub"
        part="scrubber"
        type="range"
        min="0"
        max=${stage.length}
        step="0.01"
        .value=${String(stage.position)}
        aria-label=${words('control.place')}
        aria-valuetext=${panel.heading}
        @input=${(event: Event) => panel.scrub(Number((event.target as HTMLInputElement).value))}
      />
      <button class="play" part="button play" @click=${panel.playOrPause}>
        ${words(stage.playing ? 'control.pause' : 'control.play')}
      </button>
      ${stepButton(panel, -1, words('control.back', { step }), stage.position <= 0)}
      ${stepButton(panel, 1, words('control.on', { step }), stage.position >= stage.length)}
      <button part="button" @click=${() => stage.flip()}>
        ${words(stage.view === 'back' ? 'control.seeFront' : 'control.seeBack')}
      </button>
      ${panel.show === 'few' ? nothing : speedMenu(panel)}
      ${panel.show === 'few' ? nothing : moreMenu(panel)}
    </div>
  `;
}

function stepButton(panel: ControlPanel, way: 1 | -1, name: string, off: boolean): TemplateResult {
  return html`<button
    part="button"
    aria-label=${name}
    title=${name}
    aria-disabled=${off ? 'true' : 'false'}
    @click=${() => panel.stage.step(way)}
  >
    <svg class="icon" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
      ${svg`<path d=${way < 0 ? 'M12.5 4 6.5 10l6 6' : 'm7.5 4 6 6-6 6'} fill="none" stroke="currentColor" stroke-width="2" stroke-linecap="round" stroke-linejoin="round"/>`}
    </svg>
  </button>`;
}

function speedMenu({ stage, words }: ControlPanel): TemplateResult {
  return html`<label>
    ${words('control.speed')}
    <select
      part="speed"
      @change=${(event: Event) => {
        stage.speed = Number((event.target as HTMLSelectElement).value);
      }}
    >
      ${SPEEDS.map(
        (value) => html`<option value=${value} ?selected=${Number(value) === stage.speed}>
          ${words(`speed.${value}`)}
        </option>`,
      )}
    </select>
  </label>`;
}

/** What a beginner does not need stands behind one button. */
function moreMenu(panel: ControlPanel): TemplateResult {
  const { stage, words, switches } = panel;
  return html`<details class="more" part="more">
    <summary part="button">${words('control.more')}</summary>
    <div class="menu" part="menu">
      <label>
        ${words('control.view')}
        <select
          part="view"
          @change=${(event: Event) => {
            const { value } = event.target as HTMLSelectElement;
            stage.view = STAGE_VIEWS.find((view) => view === value) ?? 'front';
          }}
        >
          ${STAGE_VIEWS.map(
            (view) => html`<option value=${view} ?selected=${view === stage.view}>
              ${words(`view.${view}Cap`)}
            </option>`,
          )}
        </select>
      </label>
      ${switches.map(
        (name) => html`<label>
          <input
            type="checkbox"
            part="switch"
            .checked=${stage[name]}
            @change=${(event: Event) => {
              stage[name] = (event.target as HTMLInputElement).checked;
            }}
          />
          ${words(`control.${name}`)}
        </label>`,
      )}
    </div>
  </details>`;
}
