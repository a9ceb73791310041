import { css } from 'lit';

/** Shared by the elements. Colours are custom properties, so that a page can set its own. */
export const hostStyles = css`
  :host {
    --_ground: var(--halfhitch-ground, light-dark(#e6ebed, #1c2a36));
    --_ink: var(--halfhitch-ink, light-dark(#17304a, #e8eef2));
    --_faint: var(--halfhitch-faint, light-dark(#4a5f72, #a9bac8));
    --_panel: var(--halfhitch-panel, light-dark(#ffffff, #14202b));
    --_line: var(--halfhitch-line, light-dark(#76889a, #6f8496));
    --_accent: var(--halfhitch-accent, light-dark(#1d5c8a, #8cc4ea));
    --_on-accent: var(--halfhitch-on-accent, light-dark(#ffffff, #0d1b27));
    color-scheme: light dark;
    display: block;
    color: var(--_ink);
    font: inherit;
    container-type: inline-size;
  }
  :host([hidden]) {
    display: none;
  }
  * {
    box-sizing: border-box;
  }
`;
