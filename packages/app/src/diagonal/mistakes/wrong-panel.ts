import {
  ANY_COLOUR,
  BARE,
  type ChartColour,
  DiagonalLook,
  type DiagonalPattern,
  KNOT_KINDS,
} from '@halfhitch/core';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { PageElement } from '../../view/page-element.js';
import '../../styles/diagonal.css';
import { NO_SYMMETRY } from '../../draw/edit/symmetry.js';
import '../../draw/palette/sample.js';
import { chip } from '../../draw/panels/tool-bar.js';
import { wayIcon } from '../draw/tools.js';
import { plainInk } from '../edit/ink.js';
import { indexOf } from '../edit/places.js';
import '../lattice/lattice-sheet.js';
import type { LatticeSheet } from '../lattice/lattice-sheet.js';
import type { LatticeEdit, LatticeSettings, LatticeSubject } from '../lattice/subject.js';
import { cellInWords, placeInWords } from '../lattice/words.js';
import { LookDesk } from './desk.js';
import { explanations, toldInShort } from './explanations.js';
import type { Told } from './messages.js';
import {
  asDrawn,
  isAnythingSeen,
  mostRows,
  nothingSeen,
  type Seen,
  seenOf,
  seenUpTo,
} from './seen.js';

type Marking = 'colours' | 'ways';

/** "Something looks wrong": takes down what a maker sees of a piece, and says what explains it. */
export class DiagonalWrongPanel extends PageElement {
  static override properties = {
    pattern: { attribute: false },
    rows: { type: Number },
    open: { state: true },
    seen: { state: true },
    marking: { state: true },
    cell: { state: true },
    look: { state: true },
    told: { state: true },
    stale: { state: true },
    busy: { state: true },
    said: { state: true },
  };

  declare pattern: DiagonalPattern | null;
  /** Rows that are tied so far, where it is known. */
  declare rows: number;
  declare private open: boolean;
  declare private seen: Seen | null;
  declare private marking: Marking;
  declare private cell: number;
  declare private look: number;
  declare private told: Told | null;
  /** Whether something was marked since. */
  declare private stale: boolean;
  declare private busy: boolean;
  declare private said: string;

  private readonly desk = new LookDesk();
  private settings: LatticeSettings | null = null;
  private subject: {
    readonly of: Seen;
    readonly marking: Marking;
    readonly subject: LatticeSubject;
  } | null = null;

  constructor() {
    super();
    this.pattern = null;
    this.rows = 0;
    this.open = false;
    this.seen = null;
    this.marking = 'colours';
    this.cell = 0;
    this.look = 0;
    this.told = null;
    this.stale = false;
    this.busy = false;
    this.said = '';
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.desk.abandon();
    this.busy = false;
  }

  protected override willUpdate(changes: PropertyValues): void {
    if (!changes.has('pattern')) return;
    this.desk.abandon();
    this.busy = false;
    this.seen = null;
    this.told = null;
    this.said = '';
  }

  private get sheet(): LatticeSheet | null {
    return this.querySelector('halfhitch-lattice');
  }

  private begin(pattern: DiagonalPattern): Seen {
    const tied = this.rows > 0 ? this.rows : Math.min(pattern.rows, 12);
    this.seen ??= nothingSeen(pattern, Math.max(1, Math.min(tied, mostRows(pattern))));
    return this.seen;
  }

  private mark(seen: Seen, said = ''): void {
    this.seen = seen;
    this.stale = this.told !== null;
    this.said = said;
  }

  private async find(pattern: DiagonalPattern, seen: Seen): Promise<void> {
    if (!isAnythingSeen(seen)) {
      this.said = 'Nothing is marked yet. Mark the knots about the place that looks wrong.';
      return;
    }
    this.busy = true;
    this.told = null;
    this.stale = false;
    this.said = 'Looking for what explains it.';
    const told = await this.desk.ask({ pattern, seen: seenOf(seen, pattern) });
    if (told === null) return;
    this.busy = false;
    this.told = told;
    this.said = toldInShort(told);
    await this.updateComplete;
    this.querySelector('.told')?.scrollIntoView({ block: 'nearest' });
  }

  private stop(): void {
    this.desk.abandon();
    this.busy = false;
    this.said = 'Stopped. What was marked is still there.';
  }

  // ---- the page ----

  protected override render(): TemplateResult {
    return html`
      <p class="unseen" role="status">${this.said}</p>
      <details
        class="bench-fold"
        @toggle=${(event: Event) => {
          if (event.target !== event.currentTarget) return;
          this.open = (event.target as HTMLDetailsElement).open;
        }}
      >
        <summary><h2 id="wrong-name">Something looks wrong?</h2></summary>
        ${this.open && this.pattern !== null ? this.inside(this.pattern) : nothing}
      </details>
    `;
  }

  private inside(pattern: DiagonalPattern): TemplateResult {
    const seen = this.begin(pattern);
    const marking = (value: Marking, label: string) => html`<label>
      <input
        type="radio"
        name="seen-marking"
        .checked=${this.marking === value}
        @change=${() => {
          this.marking = value;
        }}
      />
      <span>${label}</span>
    </label>`;
    return html`
      <p class="hint">
        Mark what you see in your own piece, from the front: a few knots about the place that looks
        wrong are often enough. Where you did not look, leave it as it is.
      </p>
      <div class="seen-tools">
        <label class="seen-rows">
          Rows tied so far
          <input
            type="number"
            inputmode="numeric"
            min="1"
            max=${mostRows(pattern)}
            .value=${String(seen.lattice.rows)}
            @change=${(event: Event) => this.setRows(pattern, seen, event)}
          />
        </label>
        <fieldset class="switch">
          <legend class="unseen">What is marked</legend>
          ${marking('colours', 'Colours')} ${marking('ways', 'Kinds of knot')}
        </fieldset>
      </div>
      <div class="seen-inks" role="group" aria-label=${this.marking === 'colours' ? 'Colours' : 'Kinds of knot'}>
        ${this.marking === 'colours' ? this.colourInks(pattern.colours) : this.lookInks()}
      </div>
      <halfhitch-lattice
        @lattice-edit=${({ detail }: CustomEvent<LatticeEdit>) =>
          this.mark(
            this.marking === 'colours'
              ? { ...seen, cells: detail.bytes }
              : { ...seen, looks: detail.bytes },
          )}
      ></halfhitch-lattice>
      <div class="draw-row">
        <button type="button" class="primary" aria-disabled=${String(this.busy)} @click=${() => {
          if (!this.busy) void this.find(pattern, seen);
        }}>Find out what happened</button>
        ${this.busy ? html`<button type="button" @click=${() => this.stop()}>Stop</button>` : nothing}
        <button type="button" @click=${() =>
          this.mark(
            asDrawn(seen, pattern),
            'All colours are marked as drawn.',
          )}>All as drawn</button>
        <button type="button" @click=${() =>
          this.mark(
            nothingSeen(pattern, seen.lattice.rows),
            'Nothing is marked now.',
          )}>Clear</button>
      </div>
      <p class="draw-said" aria-hidden="true">${this.said}</p>
      ${
        this.told === null
          ? nothing
          : explanations(this.told, this.stale, (at) => this.sheet?.goTo(at, { focus: true }))
      }
    `;
  }

  private setRows(pattern: DiagonalPattern, seen: Seen, event: Event): void {
    const rows = Number((event.target as HTMLInputElement).value);
    const most = mostRows(pattern);
    if (!Number.isInteger(rows) || rows < 1 || rows > most) {
      this.said = `Give a whole number of rows from 1 to ${most}.`;
      return;
    }
    this.mark(seenUpTo(seen, pattern, rows));
  }

  private colourInks(colours: readonly ChartColour[]): TemplateResult {
    const plain = (value: number, label: string, className: string) => html`<button
      type="button"
      class="chip"
      aria-pressed=${String(this.cell === value)}
      @click=${() => {
        this.cell = value;
      }}
    ><span class="ink-sign ${className}" aria-hidden="true"></span><span class="chip-name">${label}</span></button>`;
    return html`
      ${colours.map((colour, place) =>
        chip(colour, place, null, this.cell === place, () => {
          this.cell = place;
        }),
      )}
      ${plain(BARE, 'No knot', 'bare')} ${plain(ANY_COLOUR, 'Not looked at', 'any')}
    `;
  }

  private lookInks(): TemplateResult {
    const one = (value: number, label: string, icon: TemplateResult) => html`<button
      type="button"
      class="chip"
      aria-pressed=${String(this.look === value)}
      @click=${() => {
        this.look = value;
      }}
    >${icon}<span class="chip-name">${label}</span></button>`;
    const sign = (className: string) =>
      html`<span class="ink-sign ${className}" aria-hidden="true"></span>`;
    return html`
      ${KNOT_KINDS.map((kind, value) => one(value, kind, wayIcon(value)))}
      ${one(DiagonalLook.half, 'half a knot', sign('half'))}
      ${one(DiagonalLook.none, 'no knot', wayIcon(255))}
      ${one(DiagonalLook.notLooked, 'not looked at', sign('any'))}
    `;
  }

  protected override updated(): void {
    const { sheet, pattern, seen } = this;
    if (sheet === null || pattern === null || seen === null) return;
    sheet.set(this.sheetSettings());
    if (this.subject?.of !== seen || this.subject.marking !== this.marking) {
      const { marking } = this;
      this.subject = { of: seen, marking, subject: subjectOf(pattern, seen, marking) };
    }
    sheet.show(this.subject.subject, 1);
  }

  private sheetSettings(): LatticeSettings {
    const byte = this.marking === 'colours' ? this.cell : this.look;
    if (this.settings?.ink.itself !== byte) {
      this.settings = { tool: 'pencil', ink: plainInk(byte), symmetry: NO_SYMMETRY, signs: false };
    }
    return this.settings;
  }
}

function subjectOf(pattern: DiagonalPattern, seen: Seen, marking: Marking): LatticeSubject {
  const { colours } = pattern;
  const { lattice } = seen;
  return {
    lattice,
    bytes: marking === 'colours' ? seen.cells : seen.looks,
    look: (bytes) => ({
      lattice,
      colours,
      cells: marking === 'colours' ? bytes : seen.cells,
      kinds: marking === 'ways' ? bytes : seen.looks,
      strings: null,
    }),
    words: (place, bytes) => {
      const at = indexOf(lattice, place);
      const cell = marking === 'colours' ? bytes[at] : seen.cells[at];
      const look = marking === 'ways' ? bytes[at] : seen.looks[at];
      const colour = cell === ANY_COLOUR ? 'colour not looked at' : cellInWords(colours, cell);
      return `${placeInWords(lattice, place)}: ${colour}, ${lookInWords(look)}`;
    },
  };
}

function lookInWords(look: number | undefined): string {
  if (look === DiagonalLook.half) return 'half a knot';
  if (look === DiagonalLook.none) return 'no knot';
  const kind = KNOT_KINDS[look ?? DiagonalLook.notLooked];
  return kind === undefined ? 'kind not looked at' : `${kind} knot`;
}

customElements.define('halfhitch-diagonal-wrong', DiagonalWrongPanel);
