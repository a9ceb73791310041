import { type Mistake, mistakeKey } from '@halfhitch/core';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { PageElement } from '../view/page-element.js';
import type { Piece } from '../work/messages.js';
import './compare.js';
import { type MistakesDesk, MOST_KNOTS } from './desk.js';
import type { MistakenView, MistakePlace, OfferGroup } from './messages.js';
import { problemInWords, tooLargeInWords } from './problem-words.js';

/** "Try a mistake": what the piece becomes when the chosen knot is made wrong. */
export class TryPanel extends PageElement {
  static override properties = {
    piece: { attribute: false },
    place: { attribute: false },
    desk: { attribute: false },
    mirror: { type: Boolean },
    open: { state: true },
    groups: { state: true },
    chosen: { state: true },
    view: { state: true },
    problem: { state: true },
    news: { state: true },
  };

  declare piece: Piece | null;
  declare place: MistakePlace;
  declare desk: MistakesDesk | null;
  /** Whether knots are shown in the mirror. */
  declare mirror: boolean;
  declare private open: boolean;
  declare private groups: readonly OfferGroup[];
  declare private chosen: string;
  declare private view: MistakenView | null;
  declare private problem: string;
  declare private news: string;
  /** Grows with each thing asked for; answers to earlier ones come too late. */
  private turn = 0;

  constructor() {
    super();
    this.piece = null;
    this.place = { row: 0, column: 0 };
    this.desk = null;
    this.mirror = false;
    this.open = false;
    this.groups = [];
    this.chosen = '';
    this.view = null;
    this.problem = '';
    this.news = '';
  }

  protected override willUpdate(changes: PropertyValues): void {
    const before = changes.get('place') as MistakePlace | undefined;
    const moved =
      changes.has('place') &&
      (before?.row !== this.place.row || before.column !== this.place.column);
    if (!changes.has('piece') && !moved && !changes.has('open')) return;
    if (changes.has('piece') || moved) {
      this.chosen = '';
      this.view = null;
      this.problem = '';
      this.news = '';
      // What can be done wrong at another knot must not be pressed for this one.
      this.groups = [];
    }
    if (this.open) void this.offer();
  }

  private get tooLarge(): boolean {
    return this.piece !== null && this.piece.rows * this.piece.columns > MOST_KNOTS;
  }

  private async offer(): Promise<void> {
    const { piece, place, desk } = this;
    const turn = ++this.turn;
    if (piece === null || desk === null || this.tooLarge || !piece.ok) return;
    try {
      const groups = await desk.ask(piece, { ask: 'possible', place });
      if (turn === this.turn) this.groups = groups;
    } catch (error) {
      if (turn === this.turn) this.problem = problemInWords(error);
    }
  }

  private async make(mistake: Mistake): Promise<void> {
    const { piece, desk } = this;
    if (piece === null || desk === null) return;
    const turn = ++this.turn;
    this.chosen = mistakeKey(mistake);
    this.problem = '';
    this.news = 'Knotting the piece with the mistake.';
    try {
      const view = await desk.ask(piece, { ask: 'make', mistakes: [mistake], undo: null });
      if (turn !== this.turn) return;
      this.view = view;
      this.news = `${view.what.join(' ')} ${view.seen[0] ?? ''}`;
      await this.updateComplete;
      this.querySelector('.tried')?.scrollIntoView({ block: 'nearest' });
    } catch (error) {
      if (turn !== this.turn) return;
      this.view = null;
      this.chosen = '';
      this.news = '';
      this.problem = problemInWords(error);
    }
  }

  private putRight(): void {
    this.turn++;
    // The button goes away, so the focus returns to where it was chosen.
    this.querySelector<HTMLElement>('.offer[aria-pressed="true"]')?.focus();
    this.view = null;
    this.chosen = '';
    this.news = 'Put right: the piece is as drawn.';
  }

  protected override render(): TemplateResult {
    const { open, place, view } = this;
    return html`
      <p class="unseen" role="status">${this.news}</p>
      <details
        class="bench-fold"
        @toggle=${(event: Event) => {
          this.open = (event.target as HTMLDetailsElement).open;
        }}
      >
        <summary><h2 id="try-name">Try a mistake</h2></summary>
        ${open ? this.offers() : nothing}
        ${
          open && view !== null
            ? html`<section class="tried" aria-labelledby="tried-name">
              <div class="bar">
                <h3 id="tried-name">
                  What becomes of it, from row ${place.row + 1}, column ${place.column + 1}
                </h3>
                <button type="button" class="primary" @click=${() => this.putRight()}>Put it right</button>
              </div>
              <halfhitch-compare ?mirror=${this.mirror} .view=${view}></halfhitch-compare>
            </section>`
            : nothing
        }
      </details>
    `;
  }

  private offers(): TemplateResult {
    if (this.tooLarge) return html`<p class="note">${tooLargeInWords()}</p>`;
    if (this.piece?.ok === false) {
      return html`<p class="note">This plan does not knot out as drawn. Put it right first; then mistakes can be tried.</p>`;
    }
    const { row, column } = this.place;
    return html`
      <p class="hint">
        Choose a knot in the picture above, and what to do wrong there. The piece is then knotted on
        as by someone who has not noticed.
      </p>
      ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
      <p class="which">At row ${row + 1}, column ${column + 1}:</p>
      <div class="offers">
        ${this.groups.map(
          ({ name, offers }) => html`<div role="group" aria-label=${name} class="offer-group">
            <h3 aria-hidden="true">${name}</h3>
            ${offers.map(({ mistake, label }) => {
              const pressed = mistakeKey(mistake) === this.chosen;
              return html`<button
                type="button"
                class="offer"
                aria-pressed=${pressed ? 'true' : 'false'}
                @click=${() => (pressed ? this.putRight() : void this.make(mistake))}
              >${label}</button>`;
            })}
          </div>`,
        )}
      </div>
    `;
  }
}

customElements.define('halfhitch-try', TryPanel);
