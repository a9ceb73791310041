import { html, svg, type TemplateResult } from 'lit';
import type { ToolName } from './tools.js';

/** The tools as outlines on a ground of 24 x 24. */
const SHAPES: Readonly<Record<ToolName, TemplateResult>> = {
  pencil: svg`<path d="M4.5 19.5 6 14.6 16.6 4l3.4 3.4L9.4 18z" /><path d="m14.4 6.2 3.4 3.4M4.5 19.5l2-.6" />`,
  line: svg`<path d="M5.5 18.5 18.5 5.5" /><path d="M3.5 16.5h4v4h-4zM16.5 3.5h4v4h-4z" class="solid" />`,
  frame: svg`<path d="M4 6h16v12H4z" /><path d="M8 10h8v4H8z" />`,
  block: svg`<path d="M4 6h16v12H4z" class="solid" />`,
  fill: svg`<path d="M10.5 4.5 18 12l-6.6 6.6-7.5-7.5z" /><path d="M4.4 11.4h13" /><path d="M20 15.2c1.4 2 1.9 3 1.9 3.8a1.9 1.9 0 0 1-3.8 0c0-.8.5-1.8 1.9-3.8z" class="solid" />`,
  pick: svg`<path d="M13 7.5 16.5 11 8.2 19.3l-4 .5.5-4z" /><path d="m11.5 6 6.5 6.5M14.5 9l2.6-2.6a1.8 1.8 0 0 1 2.5 2.5L17 11.5" />`,
  select: svg`<path d="M4 8V4h4M16 4h4v4M20 16v4h-4M8 20H4v-4" /><path d="M11 4h2M20 11v2M13 20h-2M4 13v-2" />`,
  view: svg`<path d="M7.5 12.5V7a1.5 1.5 0 0 1 3 0v4-5.5a1.5 1.5 0 0 1 3 0V11 6.8a1.5 1.5 0 0 1 3 0V12v-2a1.5 1.5 0 0 1 3 0v4.5c0 3.6-2.2 6-5.8 6-3 0-4.4-1.3-6-3.8l-2.9-4.3c-.9-1.5 1-2.8 2.2-1.5z" />`,
};

export function toolIcon(name: ToolName): TemplateResult {
  return html`<svg class="tool-icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
    ${SHAPES[name]}
  </svg>`;
}

export function takeBackIcon(): TemplateResult {
  return html`<svg class="tool-icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
    <path d="M9 5 4.5 9.5 9 14M5 9.5h9a5 5 0 0 1 0 10h-4" />
  </svg>`;
}
