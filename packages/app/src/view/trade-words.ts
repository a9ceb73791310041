import { html, type TemplateResult } from 'lit';

/** Words of the trade, as the instructions use them. */
const MEANINGS = {
  'base string': 'a string that hangs down all the way, and onto which the knots are tied.',
  'lead (L1, L2 …)':
    'a leading string: it ties the knots of a row. There is one for each colour, numbered in the order of their first use.',
  'string (S1, S2 …)':
    'every thread, numbered from the left as the strings are hung at the beginning. It keeps its number wherever it goes.',
  slot: 'a place in the front, counted from the left: whichever string hangs there.',
  'half hitch':
    'half a knot: one string is laid over the other, turned round it and brought up through its own loop.',
  'forward, backward':
    'the four kinds of knot are named by their two half hitches. Forward: laid from left to right; backward: from right to left.',
  bar: 'the stretch of a half hitch that lies across the string it is made around.',
  float:
    'the stretch of a lead that lies behind the work, from where it is laid aside to where it is taken up again.',
} as const;

export type TradeWord = keyof typeof MEANINGS;

/** What some words mean, to be opened where they are met. */
export function wordsUsed(...words: readonly TradeWord[]): TemplateResult {
  return html`<details class="trade-words">
    <summary>What the words mean</summary>
    <dl>${words.map((word) => html`<div><dt>${word}</dt><dd>${MEANINGS[word]}</dd></div>`)}</dl>
  </details>`;
}
