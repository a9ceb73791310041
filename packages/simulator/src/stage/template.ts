import { html, nothing, type TemplateResult } from 'lit';
import { directionOfText } from '../messages/catalogue.js';
import type { Words } from '../messages/words.js';
import {
  type ControlledStage,
  type StageControls,
  type StageSwitch,
  stageControls,
} from './controls.js';
import type { Handling } from './handling.js';
import type { StageWords } from './moment.js';
import type { Drawing, Notice } from './scene-holder.js';

/** What a stage consists of. */
export interface StageShown {
  readonly stage: ControlledStage & { readonly still: boolean; readonly controls: StageControls };
  readonly handling: Handling;
  readonly language: string;
  readonly words: Words;
  /** What the picture is of. */
  readonly picture: string;
  readonly drawing: Drawing;
  readonly notice: Notice;
  /** Whether it is being turned by hand. */
  readonly turning: boolean;
  readonly said: StageWords;
  /** Whether moves pass too fast to be said one by one. */
  readonly brisk: boolean;
  /** Whether the moves stand in a few words under the picture. */
  readonly short: boolean;
  /** What the step buttons go on by. */
  readonly step: string;
}

export function stageTemplate(shown: StageShown): TemplateResult {
  const { stage, handling, words, notice, said, step } = shown;
  const { drag } = handling;
  const { still, view } = stage;
  const hinted = stage.controls === 'all' && !still;
  const picture = words('picture.from', { picture: shown.picture, view: words(`view.${view}`) });
  return html`
    <div class="all" dir=${directionOfText(shown.language)}>
      <div
        class="stage ${shown.turning ? 'turning' : ''}"
        part="stage"
        tabindex="0"
        role="group"
        aria-roledescription=${words(still ? 'control.stillPicture' : 'control.movingPicture')}
        aria-label=${picture}
        aria-describedby=${hinted ? 'hint' : nothing}
        @keydown=${handling.pressed}
        @pointerdown=${drag.down}
        @pointermove=${drag.move}
        @pointerup=${drag.up}
        @pointercancel=${drag.up}
      >
        ${drawnOn(shown.drawing, stage.magnifier)}
        <span class="side" aria-hidden="true">${words(`view.${view}Cap`)}</span>
      </div>
      ${notice === '' ? nothing : html`<p class="notice" part="notice">${words(notice)}</p>`}
      ${stageControls({
        stage,
        words,
        show: still ? 'none' : stage.controls,
        heading: said.heading,
        step,
        switches: switchesFor(shown.drawing),
        playOrPause: handling.playOrPause,
        scrub: handling.scrub,
        key: handling.pressedOnControl,
      })}
      ${still ? nothing : moves(shown)}
    </div>
  `;
}

/** What the picture is drawn on; what the page has put in its place is seen while it waits. */
function drawnOn(drawing: Drawing, magnifier: boolean): TemplateResult {
  if (drawing === 'webgl') {
    return html`<canvas class="threads" part="canvas" aria-hidden="true"></canvas>
      ${
        magnifier
          ? html`<canvas class="magnified" part="magnifier" aria-hidden="true"></canvas>`
          : nothing
      }`;
  }
  return html`<svg part="drawing" aria-hidden="true" focusable="false"></svg>
    ${drawing === 'waiting' ? html`<slot name="poster"></slot>` : nothing}`;
}

/** The flat picture cannot be magnified. */
function switchesFor(drawing: Drawing): StageSwitch[] {
  return ['loop', 'ghost', 'trail', ...(drawing === 'flat' ? [] : ['magnifier' as const])];
}

/** The moves in writing, and what a screen reader says of them. */
function moves({ stage, words, said, brisk, short, step }: StageShown): TemplateResult {
  return html`
    <div class="caption ${short ? 'short' : ''}" part="caption" aria-hidden="true">
      <slot name="caption">
        <p class="heading">${said.heading}</p>
        ${
          said.moves.length === 0
            ? nothing
            : html`<ol>
              ${said.moves.map(
                (move, i) => html`<li class=${i === said.current ? 'current' : ''}>${move}</li>`,
              )}
            </ol>`
        }
      </slot>
    </div>
    <p class="said" part="live" aria-live="polite" aria-atomic="true">
      ${brisk ? said.saidPlaying : said.said}
    </p>
    ${
      stage.controls === 'all'
        ? html`<p class="hint" part="hint" id="hint">
          ${words('hint.drag')} <span class="keys">${words('hint.keys', { step })}</span>
        </p>`
        : nothing
    }
  `;
}
