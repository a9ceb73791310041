import { css } from 'lit';
import { hostStyles } from './host-styles.js';

export const lessonStyles = css`
  ${hostStyles}
  :host {
    line-height: 1.5;
  }
  h2,
  h3 {
    margin: 0;
    font-size: 1.125rem;
    line-height: 1.3;
  }
  h3 {
    font-size: 1rem;
    outline: none;
  }
  .where {
    margin: 0.15rem 0 0.8rem;
    font-size: 0.875rem;
    color: var(--_faint);
  }
  .text,
  .answer p {
    max-inline-size: 42rem;
    margin-block: 0 0.7rem;
  }
  .shows {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 1rem;
    margin-block: 0.5rem 1rem;
  }
  @container (min-inline-size: 44rem) {
    .shows.several {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }
  }
  .shows.one {
    max-inline-size: 34rem;
  }
  figure {
    margin: 0;
    min-inline-size: 0;
  }
  figcaption {
    margin-block-end: 0.3rem;
    font-weight: 600;
  }
  .fabric {
    padding: 0.5rem;
    background: var(--_ground);
    border-radius: var(--halfhitch-radius, 4px);
    overflow-x: auto;
  }
  .fabric svg {
    display: block;
    inline-size: min(100%, 22rem);
    block-size: auto;
    max-block-size: 24rem;
    margin-inline: auto;
    direction: ltr;
  }
  fieldset {
    min-inline-size: 0;
    margin: 0 0 1rem;
    padding: 0;
    border: 0;
  }
  legend {
    max-inline-size: 42rem;
    padding: 0;
    margin-block-end: 0.4rem;
    font-weight: 600;
  }
  .choices {
    display: grid;
    gap: 0.5rem;
    max-inline-size: 42rem;
  }
  button {
    min-block-size: 44px;
    min-inline-size: 44px;
    padding: 0.5rem 0.9rem;
    font: inherit;
    color: var(--_ink);
    background: var(--_panel);
    border: 1px solid var(--_line);
    border-radius: 4px;
    cursor: pointer;
    text-align: start;
  }
  button:hover {
    border-color: var(--_accent);
  }
  button[aria-pressed='true'] {
    border: 3px solid var(--_accent);
    padding: calc(0.5rem - 2px) calc(0.9rem - 2px);
    font-weight: 600;
  }
  button[aria-disabled='true'] {
    color: var(--_faint);
    border-style: dashed;
    cursor: default;
  }
  button.next {
    color: var(--_on-accent);
    background: var(--_accent);
    border-color: var(--_accent);
    font-weight: 600;
  }
  button:focus-visible,
  h3:focus-visible {
    outline: 3px solid var(--_accent);
    outline-offset: 2px;
  }
  .hint {
    margin: 0 0 0.6rem;
    font-size: 0.875rem;
    color: var(--_faint);
  }
  .answer {
    padding-inline-start: 0.9rem;
    border-inline-start: 4px solid var(--_line);
  }
  .answer.right {
    border-inline-start-color: var(--_accent);
  }
  .answer:empty {
    display: none;
  }
  .verdict {
    font-weight: 600;
  }
  .answer ul {
    max-inline-size: 42rem;
    margin: 0 0 0.7rem;
    padding-inline-start: 1.3em;
  }
  nav {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem;
    margin-block-start: 0.5rem;
  }
  @media (forced-colors: active) {
    button[aria-pressed='true'] {
      outline: 2px solid Highlight;
    }
    .fabric {
      forced-color-adjust: none;
    }
  }
  @media print {
    nav,
    .hint {
      display: none;
    }
    figure {
      break-inside: avoid;
    }
  }
`;
