import type { Chart, ChartColour } from '@halfhitch/core';
import { html, type TemplateResult } from 'lit';
import '../palette/sample.js';
import { colourName } from '../edit/colours.js';
import type { SheetSettings } from '../sheet/events.js';
import { takeBackIcon, toolIcon } from '../tools/icons.js';
import { TOOLS, type Tool, type ToolName, toolInWords } from '../tools/tools.js';

export interface ToolBarWish {
  readonly chart: Chart;
  readonly settings: SheetSettings;
  /** What would be taken back; null for nothing. */
  readonly undoing: string | null;
  readonly undo: () => void;
  readonly choose: (change: Partial<SheetSettings>) => void;
}

/** Tools and colours: beside the chart, or at the thumb. */
export function toolBar({ chart, settings, undoing, undo, choose }: ToolBarWish): TemplateResult {
  return html`
    <div class="draw-tools" role="group" aria-label="Tools">
      ${toolButtons(TOOLS, settings.tool, (tool) => choose({ tool }))}
      ${takeBackButton(undoing, undo)}
    </div>
    <div class="draw-colours" role="group" aria-label="Colours">
      ${chart.colours.map((colour, place) => {
        const key = place < 10 ? String((place + 1) % 10) : null;
        const pressed = settings.colour === place;
        return chip(colour, place, key, pressed, () => choose({ colour: place }));
      })}
    </div>
  `;
}

export function toolButtons<Name extends ToolName>(
  tools: readonly Tool<Name>[],
  chosen: Name,
  choose: (tool: Name) => void,
): TemplateResult[] {
  return tools.map(
    (tool) => html`<button
      type="button"
      class="tool"
      title=${toolInWords(tool)}
      aria-pressed=${String(tool.name === chosen)}
      aria-keyshortcuts=${tool.key}
      @click=${() => choose(tool.name)}
    >${toolIcon(tool.name)}<span>${tool.label}</span></button>`,
  );
}

/** @param undoing what would be taken back; null for nothing */
export function takeBackButton(undoing: string | null, undo: () => void): TemplateResult {
  return html`<button
    type="button"
    class="tool crossing"
    aria-disabled=${String(undoing === null)}
    title=${undoing === null ? 'Nothing to take back' : `Take back: ${undoing}`}
    @click=${undo}
  >${takeBackIcon()}<span>Take back</span></button>`;
}

/** A colour to draw in. @param key that chooses it; null where none does */
export function chip(
  colour: ChartColour,
  place: number,
  key: string | null,
  pressed: boolean,
  choose: () => void,
): TemplateResult {
  return html`<button
    type="button"
    class="chip"
    title=${`Draw in ${colourName(colour)}${key === null ? '' : ` (${key})`}`}
    aria-pressed=${String(pressed)}
    @click=${choose}
  >
    <halfhitch-sample .colour=${{ hex: colour.hex, place }}></halfhitch-sample>
    <span class="chip-number" aria-hidden="true">${place + 1}</span>
    <span class="chip-name">${colourName(colour)}</span>
  </button>`;
}
