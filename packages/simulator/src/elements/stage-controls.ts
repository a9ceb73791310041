import { html, nothing, svg, type TemplateResult } from 'lit';
import type { Words } from '../messages/words.js';
import { STAGE_VIEWS, type StageView } from './camera-turn.js';

/** How many controls stand under the picture. */
export type StageControls = 'all' | 'few' | 'none';

/** What the controls show and do. */
export interface ControlPanel {
  readonly words: Words;
  readonly show: StageControls;
  readonly heading: string;
  /** What the step buttons go on by. */
  readonly step: string;
  readonly position: number;
  readonly length: number;
  readonly playing: boolean;
  readonly speed: number;
  readonly view: StageView;
  readonly views: readonly StageView[];
  /** Switches of the menu that this picture has, and whether each is on. */
  readonly switches: Readonly<Partial<Record<StageSwitch, boolean>>>;
  play(): void;
  seek(position: number): void;
  stepBy(way: 1 | -1): void;
  flip(): void;
  setSpeed(speed: number): void;
  setView(view: StageView): void;
  toggle(name: StageSwitch, on: boolean): void;
  key(event: KeyboardEvent): void;
}

export type StageSwitch = 'loop' | 'ghost' | 'trail' | 'magnifier';

const SPEEDS = ['0.25', '0.5', '1', '1.5', '2'] as const;

export function stageControls(panel: ControlPanel): TemplateResult | typeof nothing {
  if (panel.show === 'none') return nothing;
  const { words, step } = panel;
  return html`
    <div class="controls" part="controls" @keydown=${panel.key}>
      <input
        class="scrub"
        part="scrubber"
        type="range"
        min="0"
        max=${panel.length}
        step="0.01"
        .value=${String(panel.position)}
        aria-label=${words('control.place')}
        aria-valuetext=${panel.heading}
        @input=${(event: Event) => panel.seek(Number((event.target as HTMLInputElement).value))}
      />
      <button class="play" part="button play" @click=${panel.play}>
        ${words(panel.playing ? 'control.pause' : 'control.play')}
      </button>
      ${stepButton(panel, -1, words('control.back', { step }), panel.position <= 0)}
      ${stepButton(panel, 1, words('control.on', { step }), panel.position >= panel.length)}
      <button part="button" @click=${panel.flip}>
        ${words(panel.view === 'back' ? 'control.seeFront' : 'control.seeBack')}
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
    @click=${() => panel.stepBy(way)}
  >
    <svg class="icon" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
      ${svg`<path d=${way < 0 ? 'M12.5 4 6.5 10l6 6' : 'm7.5 4 6 6-6 6'} fill="none" stroke="currentColor" stroke-width="2" stroke-linecap="round" stroke-linejoin="round"/>`}
    </svg>
  </button>`;
}

function speedMenu({ words, speed, setSpeed }: ControlPanel): TemplateResult {
  return html`<label>
    ${words('control.speed')}
    <select
      part="speed"
      @change=${(event: Event) => setSpeed(Number((event.target as HTMLSelectElement).value))}
    >
      ${SPEEDS.map(
        (value) => html`<option value=${value} ?selected=${Number(value) === speed}>
          ${words(`speed.${value}`)}
        </option>`,
      )}
    </select>
  </label>`;
}

/** What a beginner does not need stands behind one button. */
function moreMenu(panel: ControlPanel): TemplateResult {
  const { words, views, switches } = panel;
  return html`<details class="more" part="more">
    <summary part="button">${words('control.more')}</summary>
    <div class="menu" part="menu">
      <label>
        ${words('control.view')}
        <select
          part="view"
          @change=${(event: Event) => {
            const { value } = event.target as HTMLSelectElement;
            panel.setView(STAGE_VIEWS.find((view) => view === value) ?? 'front');
          }}
        >
          ${views.map(
            (view) => html`<option value=${view} ?selected=${view === panel.view}>
              ${words(`view.${view}Cap`)}
            </option>`,
          )}
        </select>
      </label>
      ${(Object.keys(switches) as StageSwitch[]).map(
        (name) => html`<label>
          <input
            type="checkbox"
            part="switch"
            .checked=${switches[name] ?? false}
            @change=${(event: Event) =>
              panel.toggle(name, (event.target as HTMLInputElement).checked)}
          />
          ${words(`control.${name}`)}
        </label>`,
      )}
    </div>
  </details>`;
}
