import { ANY_COLOUR, BARE, type ChartColour, KNOT_KINDS, NO_KNOT } from '@halfhitch/core';
import { html, type TemplateResult } from 'lit';
import '../../draw/palette/sample.js';
import { colourName } from '../../draw/edit/colours.js';
import { takeBackIcon } from '../../draw/tools/icons.js';
import type { DrawnWith } from './drawn-with.js';
import { DRAW_TOOLS, type DrawTool, drawToolIcon, wayIcon } from './tools.js';

export interface ToolBarWish extends DrawnWith {
  readonly colours: readonly ChartColour[];
  readonly tool: DrawTool;
  readonly undoing: string | null;
  readonly undo: () => void;
  readonly chooseTool: (tool: DrawTool) => void;
  readonly draw: (chosen: Partial<DrawnWith>) => void;
}

/** Tools, and what to draw with: beside the lattice, or at the thumb. */
export function toolBar(wish: ToolBarWish): TemplateResult {
  const { undoing, undo } = wish;
  return html`
    <div class="draw-tools" role="group" aria-label="Tools">
      ${DRAW_TOOLS.map(
        ({ name, label, key, about }) => html`<button
          type="button"
          class="tool"
          title=${`${label} (${key.toUpperCase()}): ${about}`}
          aria-pressed=${String(wish.tool === name)}
          aria-keyshortcuts=${key}
          @click=${() => wish.chooseTool(name)}
        >${drawToolIcon(name)}<span>${label}</span></button>`,
      )}
      <button
        type="button"
        class="tool crossing"
        aria-disabled=${String(undoing === null)}
        title=${undoing === null ? 'Nothing to take back' : `Take back: ${undoing}`}
        @click=${undo}
      >${takeBackIcon()}<span>Take back</span></button>
    </div>
    ${wish.mode === 'picture' ? inks(wish) : kinds(wish)}
  `;
}

function inks({ colours, cell, draw }: ToolBarWish): TemplateResult {
  const plain = (value: number, label: string, about: string, className: string) =>
    html`<button
      type="button"
      class="chip"
      title=${about}
      aria-pressed=${String(cell === value)}
      @click=${() => draw({ cell: value })}
    ><span class="ink-sign ${className}" aria-hidden="true"></span><span class="chip-name">${label}</span></button>`;
  return html`<div class="draw-colours" role="group" aria-label="Colours">
    ${colours.map((colour, place) => chip(colour, place, cell === place, () => draw({ cell: place })))}
    ${plain(ANY_COLOUR, 'Any colour', 'A knot in whatever colour comes of the rest (A)', 'any')}
    ${plain(BARE, 'No knot', 'The strings hang past each other (0)', 'bare')}
  </div>`;
}

/** A colour to draw in, or to hang a string in. */
export function chip(
  colour: ChartColour,
  place: number,
  pressed: boolean,
  choose: () => void,
): TemplateResult {
  return html`<button
    type="button"
    class="chip"
    title=${`Draw in ${colourName(colour)}${place < 9 ? ` (${place + 1})` : ''}`}
    aria-pressed=${String(pressed)}
    @click=${choose}
  >
    <halfhitch-sample .colour=${{ hex: colour.hex, place }}></halfhitch-sample>
    <span class="chip-number" aria-hidden="true">${place + 1}</span>
    <span class="chip-name">${colourName(colour)}</span>
  </button>`;
}

const KIND_ABOUT = [
  'The left string ties; the two change places',
  'The right string ties; the two change places',
  'The left string ties and comes back',
  'The right string ties and comes back',
];

function kinds({ kind, draw }: ToolBarWish): TemplateResult {
  const one = (value: number, label: string, about: string, key: number) => html`<button
    type="button"
    class="chip"
    title=${`${about} (${key})`}
    aria-pressed=${String(kind === value)}
    @click=${() => draw({ kind: value })}
  >${wayIcon(value)}<span class="chip-name">${label}</span></button>`;
  return html`<div class="draw-colours" role="group" aria-label="Kinds of knot">
    ${KNOT_KINDS.map((name, value) => one(value, name, KIND_ABOUT[value] ?? '', value + 1))}
    ${one(NO_KNOT, 'no knot', 'The strings hang past each other', 0)}
  </div>`;
}
