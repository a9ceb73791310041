import type { Chart } from '@halfhitch/core';
import { html, type TemplateResult } from 'lit';
import '../palette/sample.js';
import { colourName } from '../edit/colours.js';
import type { SheetSettings } from '../sheet/events.js';
import { takeBackIcon, toolIcon } from '../tools/icons.js';
import { TOOLS, toolInWords } from '../tools/tools.js';

export interface ToolBarWish {
  readonly chart: Chart;
  readonly settings: SheetSettings;
  /** What would be taken back; null for nothing. */
  readonly undoing: string | null;
  readonly undo: () => void;
  readonly choose: (change: Partial<SheetSettings>) => void;
}

/** Tools and colours: beside the chart, or at the thumb. */
export function toolBar(wish: ToolBarWish): TemplateResult {
  return html`
    <div class="draw-tools" role="group" aria-label="Tools">${tools(wish)} ${takeBack(wish)}</div>
    <div class="draw-colours" role="group" aria-label="Colours">${chips(wish)}</div>
  `;
}

function tools({ settings, choose }: ToolBarWish): TemplateResult[] {
  return TOOLS.map(
    (tool) => html`<button
      type="button"
      class="tool"
      title=${toolInWords(tool)}
      aria-pressed=${String(settings.tool === tool.name)}
      aria-keyshortcuts=${tool.key}
      @click=${() => choose({ tool: tool.name })}
    >${toolIcon(tool.name)}<span>${tool.label}</span></button>`,
  );
}

function takeBack({ undoing, undo }: ToolBarWish): TemplateResult {
  return html`<button
    type="button"
    class="tool crossing"
    aria-disabled=${String(undoing === null)}
    title=${undoing === null ? 'Nothing to take back' : `Take back: ${undoing}`}
    @click=${undo}
  >${takeBackIcon()}<span>Take back</span></button>`;
}

function chips({ chart, settings, choose }: ToolBarWish): TemplateResult[] {
  return chart.colours.map((colour, place) => {
    const key = place < 10 ? ` (${(place + 1) % 10})` : '';
    return html`<button
      type="button"
      class="chip"
      title=${`Draw in ${colourName(colour)}${key}`}
      aria-pressed=${String(settings.colour === place)}
      @click=${() => choose({ colour: place })}
    >
      <halfhitch-sample .colour=${{ hex: colour.hex, place }}></halfhitch-sample>
      <span class="chip-number" aria-hidden="true">${place + 1}</span>
      <span class="chip-name">${colourName(colour)}</span>
    </button>`;
  });
}
