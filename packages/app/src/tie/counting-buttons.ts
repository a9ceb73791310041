import { html, nothing, type TemplateResult } from 'lit';
import type { InHand } from './in-hand.js';

export interface CountingActions {
  done(): void;
  back(): void;
  runDone(): void;
  rowDone(): void;
  sayAgain(): void;
  openBig(): void;
}

/** Back and on, by one knot. */
export function countingButtons(
  canGoBack: boolean,
  canGoOn: boolean,
  act: CountingActions,
): TemplateResult {
  return html`
    <div
      class="tie-actions"
      role="group"
      aria-label="Counting"
      @keydown=${ignoreHeldKey}
      @click=${giveKeysBack}
    >
      <button type="button" aria-disabled=${not(canGoBack)} @click=${act.back}>Back</button>
      <button
        type="button"
        class="primary tie-done"
        aria-disabled=${not(canGoOn)}
        @click=${act.done}
      >Tied</button>
    </div>
  `;
}

/**
 * On by many knots, and other ways to count.
 *
 * @param hand null while it is fetched
 */
export function moreButtons(
  hand: InHand | null,
  voice: boolean,
  act: CountingActions,
): TemplateResult {
  const run = hand === null ? 0 : restOfRun(hand);
  return html`
    <div class="tie-more" @keydown=${ignoreHeldKey} @click=${giveKeysBack}>
      <button type="button" aria-disabled=${not(run >= 2)} @click=${act.runDone}>
        ${run < 2 ? 'All alike tied' : `All ${run} alike tied`}
      </button>
      <button type="button" @click=${act.rowDone}>The row is tied</button>
      <button type="button" class="tie-big" @click=${act.openBig}>Big buttons</button>
      ${voice ? html`<button type="button" @click=${act.sayAgain}>Say it again</button>` : nothing}
    </div>
  `;
}

/** Knots left of the run, the one in hand included. */
export function restOfRun({ run }: InHand): number {
  return run.of - run.at + 1;
}

/** Of a button that stays where it is, and keeps the focus, while it does nothing. */
function not(can: boolean): 'true' | 'false' {
  return can ? 'false' : 'true';
}

/** A key that is held down presses a button again and again, and would count knots. */
export function ignoreHeldKey(event: KeyboardEvent): void {
  if (event.repeat && (event.key === 'Enter' || event.key === ' ')) event.preventDefault();
}

/** Pressed by a finger, a button gives the keys back: the next Space is for the next knot. */
export function giveKeysBack({ detail, target, currentTarget }: MouseEvent): void {
  const button = target instanceof Element ? target.closest('button') : null;
  if (detail === 0 || button === null || button.matches('.tie-big')) return;
  const around = (currentTarget as Element).closest('dialog, .tie-now');
  const done = around?.querySelector<HTMLElement>('.big-done, .tie-done');
  done?.focus({ preventScroll: true });
}
