import { DIAGNOSE_LIMITS } from '@halfhitch/core';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { PageElement } from '../view/page-element.js';
import type { Piece } from '../work/messages.js';
import './compare.js';
import { type MistakesDesk, MOST_KNOTS } from './desk.js';
import { type Choice, explanations } from './explanations.js';
import type { MistakenView, MistakePlace, SeenRow, Told } from './messages.js';
import { problemInWords, tooLargeInWords } from './problem-words.js';
import { colourNames } from './seen-colours.js';
import { seenForm } from './seen-form.js';
import { isMarked, unseenRow } from './seen-rows.js';

/** Larger files are refused before they are read at all. */
const MOST_BYTES = 8 * 1024 * 1024;

export type SeenErrors = { readonly [field in 'row' | 'knots' | 'file' | 'whole']?: string };

/**
 * "What went wrong?": takes down what a maker sees, and lists what explains it.
 *
 * Fires `mistake-place` with a MistakePlace when an explanation is to be shown in the piece.
 */
export class WrongPanel extends PageElement {
  static override properties = {
    piece: { attribute: false },
    place: { attribute: false },
    desk: { attribute: false },
    mirror: { type: Boolean },
    open: { state: true },
    row: { state: true },
    column: { state: true },
    rows: { state: true },
    errors: { state: true },
    told: { state: true },
    choice: { state: true },
    view: { state: true },
    busy: { state: true },
    stale: { state: true },
    news: { state: true },
  };

  declare piece: Piece | null;
  /** The knot chosen in the piece: its row is the first to be marked. */
  declare place: MistakePlace;
  declare desk: MistakesDesk | null;
  /** Whether knots are shown in the mirror. */
  declare mirror: boolean;
  declare private open: boolean;
  declare private row: number;
  /** The cell that the keys are at. */
  declare private column: number;
  declare private rows: ReadonlyMap<number, SeenRow>;
  declare private errors: SeenErrors;
  declare private told: Told | null;
  declare private choice: Choice | null;
  declare private view: MistakenView | null;
  declare private busy: boolean;
  /** Whether something was marked since the explanations were found. */
  declare private stale: boolean;
  declare private news: string;
  private turn = 0;

  constructor() {
    super();
    this.piece = null;
    this.place = { row: 0, column: 0 };
    this.desk = null;
    this.mirror = false;
    this.open = false;
    this.row = 0;
    this.column = 0;
    this.rows = new Map();
    this.errors = {};
    this.told = null;
    this.choice = null;
    this.view = null;
    this.busy = false;
    this.stale = false;
    this.news = '';
  }

  protected override willUpdate(changes: PropertyValues): void {
    if (changes.has('open') && this.open && this.rows.size === 0) this.row = this.place.row;
    if (!changes.has('piece')) return;
    const before = changes.get('piece') as Piece | null | undefined;
    // What was seen of the same drawing stays, however it is to be knotted.
    if (before?.chart === this.piece?.chart && before?.choice === this.piece?.choice) return;
    this.forgetAnswers();
    if (before?.chart === this.piece?.chart) return;
    this.rows = new Map();
    this.row = 0;
    this.column = 0;
    this.errors = {};
    this.news = '';
  }

  private forgetAnswers(): void {
    this.turn++;
    this.told = null;
    this.choice = null;
    this.view = null;
    this.busy = false;
    this.stale = false;
  }

  // ---- marking ----

  private get current(): SeenRow {
    return this.rows.get(this.row) ?? unseenRow(this.row, this.piece?.columns ?? 1);
  }

  private readonly mark = (change: Partial<SeenRow>, said = ''): void => {
    const changed = { ...this.current, ...change };
    const rows = new Map(this.rows);
    if (isMarked(changed)) rows.set(this.row, changed);
    else rows.delete(this.row);
    this.rows = rows;
    this.stale = this.told !== null;
    if (said !== '') this.news = said;
  };

  private readonly toRow = (row: number): void => {
    this.row = row;
    this.errors = { ...this.errors, row: '', knots: '' };
  };

  private readonly fail = (field: keyof SeenErrors, message: string): void => {
    this.errors = { ...this.errors, [field]: message };
  };

  private readonly clear = (): void => {
    this.forgetAnswers();
    this.rows = new Map();
    this.errors = {};
    this.news = 'Nothing is marked now.';
  };

  private readonly openFile = async (file: File): Promise<void> => {
    const { piece, desk } = this;
    if (piece === null || desk === null) return;
    this.fail('file', '');
    if (file.size > MOST_BYTES) {
      this.fail(
        'file',
        `${file.name}: The file is larger than 8 MiB. Write down only a few rows about the first one that looks wrong.`,
      );
      return;
    }
    const turn = ++this.turn;
    this.busy = true;
    try {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const rows = await desk.ask(piece, { ask: 'read', bytes, fileName: file.name });
      if (turn !== this.turn) return;
      // A file may have been made for a longer piece.
      this.rows = new Map(rows.filter(({ row }) => row < piece.rows).map((row) => [row.row, row]));
      this.row = this.rows.keys().next().value ?? 0;
      await this.find();
    } catch (error) {
      if (turn !== this.turn) return;
      this.busy = false;
      this.fail('file', problemInWords(error));
    }
  };

  // ---- explaining ----

  private readonly find = async (): Promise<void> => {
    const { piece, desk } = this;
    if (piece === null || desk === null) return;
    if (this.errors.row || this.errors.knots) {
      this.news = 'Mend what is marked first.';
      return;
    }
    const rows = [...this.rows.values()].sort((one, other) => one.row - other.row);
    this.fail('whole', '');
    if (rows.length === 0) {
      this.fail('whole', 'Nothing is marked yet. Mark at least one thing that you see in the row.');
      return;
    }
    this.forgetAnswers();
    const { turn } = this;
    this.busy = true;
    this.news = 'Looking for what explains it.';
    try {
      const told = await desk.ask(piece, { ask: 'diagnose', rows });
      if (turn !== this.turn) return;
      this.told = told;
      this.news = toldInShort(told);
      await this.updateComplete;
      this.querySelector('.told')?.scrollIntoView({ block: 'nearest' });
    } catch (error) {
      if (turn !== this.turn) return;
      this.news = '';
      this.fail('whole', problemInWords(error));
    } finally {
      if (turn === this.turn) this.busy = false;
    }
  };

  private readonly stop = (): void => {
    this.turn++;
    this.desk?.stop();
    this.busy = false;
    this.news = 'Stopped. What was marked is still there.';
  };

  private readonly show = async (choice: Choice): Promise<void> => {
    const { piece, desk, told } = this;
    const alternative =
      told?.explanations[choice.explanation]?.parts[choice.part]?.alternatives[choice.alternative];
    if (piece === null || desk === null || alternative === undefined) return;
    const turn = ++this.turn;
    this.choice = choice;
    this.view = null;
    try {
      const view = await desk.ask(piece, {
        ask: 'make',
        mistakes: alternative.mistakes,
        undo: alternative.undoTo,
      });
      if (turn !== this.turn) return;
      this.view = view;
      const { row, column } = view.place;
      this.news = `Shown below, and chosen in the piece: row ${row + 1}, column ${column + 1}. ${alternative.words}`;
      this.dispatchEvent(new CustomEvent('mistake-place', { detail: view.place, bubbles: true }));
    } catch (error) {
      if (turn !== this.turn) return;
      this.choice = null;
      this.fail('whole', problemInWords(error));
    }
  };

  // ---- the page ----

  protected override render(): TemplateResult {
    return html`
      <p class="unseen" role="status">${this.news}</p>
      <details
        class="bench-fold"
        @toggle=${(event: Event) => {
          // Details within it open and close too.
          if (event.target === event.currentTarget) {
            this.open = (event.target as HTMLDetailsElement).open;
          }
        }}
      >
        <summary><h2 id="wrong-name">What went wrong?</h2></summary>
        ${this.open ? this.inside() : nothing}
      </details>
    `;
  }

  private inside(): TemplateResult {
    const { piece, told } = this;
    if (piece === null) return html``;
    if (piece.rows * piece.columns > MOST_KNOTS) {
      return html`<p class="note">${tooLargeInWords()}</p>`;
    }
    if (!piece.ok) {
      return html`<p class="note">This plan does not knot out as drawn, so nothing can be held against it. Put it right first.</p>`;
    }
    return html`
      <p class="hint">
        Mark what you see in your own piece: one row about where it first looks wrong is often
        enough, and what you did not look at may stay open. Look at it from the front.
      </p>
      ${seenForm({
        piece,
        row: this.current,
        column: this.column,
        marked: [...this.rows.keys()].sort((one, other) => one - other),
        mostRows: Math.min(piece.rows, Math.floor(DIAGNOSE_LIMITS.knots / piece.columns)),
        colours: colourNames(piece),
        errors: this.errors,
        busy: this.busy,
        mark: this.mark,
        toRow: this.toRow,
        toColumn: (column) => {
          this.column = column;
        },
        fail: this.fail,
        find: () => void this.find(),
        stop: this.stop,
        clear: this.clear,
        openFile: (file) => void this.openFile(file),
      })}
      ${
        told === null
          ? nothing
          : html`<section class="told" aria-labelledby="told-name">
            <h3 id="told-name">${toldInShort(told)}</h3>
            ${this.stale ? html`<p class="note">Found before the last thing was marked. Ask again to take it in.</p>` : nothing}
            ${explanations(told, this.choice, this.view, this.mirror, (choice) => void this.show(choice))}
          </section>`
      }
    `;
  }
}

function toldInShort({ explanations: found, baffling }: Told): string {
  if (baffling > 0) {
    return `${baffling === 1 ? 'One thing differs' : `${baffling} things differ`} from the plan, and no mistake was found that explains it. Look again at the first row that differs, and at the row above it.`;
  }
  if (found.length === 0) return 'Nothing that you marked differs from the plan.';
  return found.length === 1
    ? 'One explanation was found.'
    : `${found.length} explanations were found, the likeliest first.`;
}

customElements.define('halfhitch-wrong', WrongPanel);
