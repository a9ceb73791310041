import { html, svg, type TemplateResult } from 'lit';
import type { Tool } from '../../draw/tools/tools.js';
import type { LatticeTool } from '../lattice/subject.js';

export type DrawTool = Exclude<LatticeTool, 'choose'>;

export const DRAW_TOOLS: readonly Tool<DrawTool>[] = [
  { name: 'pencil', label: 'Pencil', key: 'p', about: 'Draw knot by knot' },
  { name: 'line', label: 'Line', key: 'l', about: 'Draw a straight line from one knot to another' },
  {
    name: 'fill',
    label: 'Fill',
    key: 'f',
    about: 'Fill a patch of knots that touch and are alike',
  },
  { name: 'pick', label: 'Pick up', key: 'k', about: 'Take what a knot is to draw with' },
  { name: 'view', label: 'Move view', key: 'v', about: 'Push the pattern about without drawing' },
];

const PATHS = ['M5 4 19 20', 'M19 4 5 20', 'M7 3 18 12 7 21', 'M17 3 6 12 17 21'];

/** The way of the string that ties, by kind in the order of KNOT_KINDS; 255 for no knot. */
export function wayIcon(kind: number): TemplateResult {
  const path = PATHS[kind];
  return html`<svg class="tool-icon way-icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
    ${path === undefined ? svg`<path d="M8 3v18M16 3v18" class="hanging" />` : svg`<path d=${path} />`}
  </svg>`;
}
