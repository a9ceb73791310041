import { html, nothing, type TemplateResult } from 'lit';
import { type TradeWord, wordsUsed } from '../view/trade-words.js';
import { type CountingActions, countingButtons, moreButtons } from './counting-buttons.js';
import type { InHand } from './in-hand.js';
import { knotHead, knotWords } from './knot-card.js';
import { finished } from './notices.js';
import type { TieSettings } from './settings.js';
import { type LargerPicture, stageCard } from './stage.js';
import { aboutTime } from './time-words.js';
import type { Tying } from './tying.js';
import type { WorkInHand } from './work-in-hand.js';

/** What the knot in hand is shown with. */
export interface NowParts {
  /** Knots in all. */
  readonly total: number;
  readonly larger: LargerPicture;
  /** Opens the lesson about the knot in hand; null where there are none. */
  readonly lesson: (() => void) | null;
  readonly words: readonly TradeWord[];
  choose(picture: TieSettings['picture']): void;
}

/** Seconds of knotting that are worth telling of at the end. */
const WORTH_TELLING = 60;

/** The knot in hand, large and in words; when all is tied, what is left to do. */
export function nowCard(
  work: WorkInHand<InHand>,
  tying: Tying,
  settings: TieSettings,
  act: CountingActions,
  { total, larger, lesson, words, choose }: NowParts,
): TemplateResult {
  const { hand, place, problem } = work;
  const count = countingButtons(tying.done > 0, place !== null, act);
  if (place === null) {
    const active = tying.active > WORTH_TELLING ? aboutTime(tying.active) : null;
    return html`<div class="tie-words">
        ${finished(total, active, () => work.goTo(0))}
      </div>${count}`;
  }
  const head =
    problem !== ''
      ? html`<h2 id="knot-name" class="tie-knot">This knot can't be shown</h2>
        <p role="alert">${problem}</p>`
      : hand === null
        ? html`<h2 id="knot-name" class="tie-knot">The next knot</h2>`
        : knotHead(hand);
  return html`
    <div class="tie-head">${head}</div>
    ${count}
    <div class="tie-watch">${stageCard(hand, settings, larger, choose)}</div>
    ${moreButtons(hand, settings.voice, act)}
    <div class="tie-words">${hand === null ? nothing : html`${knotWords(hand, lesson)}${wordsUsed(...words)}`}</div>
  `;
}
