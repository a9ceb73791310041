import { ANY_COLOUR, BARE, type ChartColour, KNOT_KINDS, NO_KNOT } from '@halfhitch/core';
import { html, type TemplateResult } from 'lit';
import { chip, takeBackButton, toolButtons } from '../../draw/panels/tool-bar.js';
import type { DrawnWith } from './drawn-with.js';
import { DRAW_TOOLS, type DrawTool, wayIcon } from './tools.js';

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
      ${toolButtons(DRAW_TOOLS, wish.tool, wish.chooseTool)} ${takeBackButton(undoing, undo)}
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
    ${colours.map((colour, place) => chip(colour, place, keyOf(place), cell === place, () => draw({ cell: place })))}
    ${plain(ANY_COLOUR, 'Any colour', 'A knot in whatever colour comes of the rest (A)', 'any')}
    ${plain(BARE, 'No knot', 'The strings hang past each other (0)', 'bare')}
  </div>`;
}

/** The key that chooses a colour: 0 stands for no knot. */
function keyOf(place: number): string | null {
  return place < 9 ? String(place + 1) : null;
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
