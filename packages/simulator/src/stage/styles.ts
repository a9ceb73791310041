import { css } from 'lit';
import { hostStyles } from '../elements/host-styles.js';

export const stageStyles = css`
  ${hostStyles}
  /* Where a page gives the element a height, the picture makes room for the words and the buttons. */
  .all {
    display: flex;
    flex-direction: column;
    max-block-size: 100%;
  }
  .all > :not(.stage) {
    flex: none;
  }
  .stage {
    position: relative;
    flex: 0 1 auto;
    min-block-size: 9rem;
    inline-size: 100%;
    block-size: var(--halfhitch-stage-height, clamp(17rem, 92cqi, 28rem));
    overflow: hidden;
    background: var(--_ground);
    border-radius: var(--halfhitch-radius, 4px);
    touch-action: pan-y;
    cursor: grab;
  }
  .stage.turning {
    cursor: grabbing;
  }
  .stage:focus-visible,
  button:focus-visible,
  input:focus-visible,
  select:focus-visible,
  summary:focus-visible {
    outline: 3px solid var(--_accent);
    outline-offset: 2px;
  }
  canvas.threads,
  .stage > svg,
  slot[name='poster']::slotted(*) {
    position: absolute;
    inset: 0;
    inline-size: 100%;
    block-size: 100%;
    display: block;
  }
  .stage > svg {
    direction: ltr;
  }
  canvas.magnified {
    position: absolute;
    inset-block-start: 0.5rem;
    inset-inline-end: 0.5rem;
    inline-size: 38%;
    max-inline-size: 11rem;
    aspect-ratio: 1;
    border: 3px solid var(--_accent);
    border-radius: 50%;
    background: var(--_ground);
    pointer-events: none;
  }
  .label {
    position: absolute;
    /* Placed by the picture, which no direction of text turns round. */
    left: 0;
    top: 0;
    padding: 0.05rem 0.4rem;
    font-size: 0.8125rem;
    line-height: 1.35;
    color: var(--_ink);
    background: color-mix(in srgb, var(--_panel) 86%, transparent);
    border-radius: 3px;
    white-space: nowrap;
    pointer-events: none;
    max-inline-size: 45%;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .side {
    position: absolute;
    inset-block-end: 0.5rem;
    inset-inline-end: 0.6rem;
    padding: 0.05rem 0.35rem;
    font-size: 0.8125rem;
    color: var(--_faint);
    background: color-mix(in srgb, var(--_ground) 80%, transparent);
    border-radius: 3px;
    pointer-events: none;
  }
  .notice {
    margin: 0.5rem 0 0;
    padding: 0.35rem 0.6rem;
    font-size: 0.8125rem;
    color: var(--_ink);
    background: var(--_panel);
    border: 1px solid var(--_line);
    border-radius: 3px;
  }
  /* High enough that what follows stays where it is as the words change. */
  .caption {
    margin-block: 0.75rem 0.5rem;
    min-block-size: 11.5em;
  }
  .caption.short {
    min-block-size: 3.2em;
  }
  /* Where a move takes one line or two, the moves of a knot take fewer. */
  @container (inline-size >= 60em) {
    .caption:not(.short) {
      min-block-size: 9em;
    }
  }
  .heading {
    margin: 0 0 0.25rem;
    font-weight: 600;
  }
  ol {
    margin: 0;
    padding-inline-start: 1.6em;
  }
  li {
    color: var(--_faint);
    padding-block: 0.1rem;
  }
  li::marker {
    font-variant-numeric: tabular-nums;
  }
  li.current {
    color: var(--_ink);
    font-weight: 600;
  }
  .said {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    margin: -1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .controls {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
    align-items: center;
    margin-block-start: 0.35rem;
  }
  button,
  select {
    min-block-size: 44px;
    min-inline-size: 44px;
    padding: 0.25rem 0.7rem;
    font: inherit;
    font-size: 0.9375rem;
    color: var(--_ink);
    background: var(--_panel);
    border: 1px solid var(--_line);
    border-radius: 4px;
    cursor: pointer;
  }
  button:hover {
    border-color: var(--_accent);
  }
  button.play {
    min-inline-size: 5.4rem;
    color: var(--_on-accent);
    background: var(--_accent);
    border-color: var(--_accent);
    font-weight: 600;
  }
  button[aria-disabled='true'] {
    color: var(--_faint);
    border-style: dashed;
    cursor: default;
  }
  .scrub {
    flex: 1 1 100%;
    min-inline-size: 0;
    block-size: 44px;
    margin: 0;
    accent-color: var(--_accent);
  }
  .icon:dir(rtl) {
    transform: scaleX(-1);
  }
  .more {
    position: relative;
  }
  .more[open] {
    flex-basis: 100%;
  }
  summary {
    display: inline-flex;
    align-items: center;
    min-block-size: 44px;
    padding-inline: 0.7rem;
    font-size: 0.9375rem;
    border: 1px solid var(--_line);
    border-radius: 4px;
    background: var(--_panel);
    cursor: pointer;
  }
  .menu {
    display: flex;
    flex-wrap: wrap;
    gap: 0.2rem 1.2rem;
    padding-block: 0.5rem;
  }
  .menu label {
    min-block-size: 44px;
  }
  input[type='checkbox'] {
    inline-size: 1.25rem;
    block-size: 1.25rem;
    accent-color: var(--_accent);
  }
  label {
    display: inline-flex;
    align-items: center;
    gap: 0.4rem;
    font-size: 0.9375rem;
  }
  .hint {
    margin: 0.1rem 0 0;
    font-size: 0.8125rem;
    line-height: 1.7;
    color: var(--_faint);
  }
  @media (hover: none) and (pointer: coarse) {
    .hint .keys {
      display: none;
    }
  }
  @media (forced-colors: active) {
    li.current {
      text-decoration: underline;
    }
  }
  @media print {
    .controls,
    .hint {
      display: none;
    }
    .all {
      break-inside: avoid;
    }
  }
`;
