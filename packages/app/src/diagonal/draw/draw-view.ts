import { ANY_COLOUR, BARE, type Chart, type DiagonalPattern, NO_KNOT } from '@halfhitch/core';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { counted } from '../../view/figures.js';
import { reasonOf } from '../../work/reason.js';
import '../../draw/palette/palette.js';
import '../../styles/diagonal.css';
import type { Place } from '../../draw/edit/place.js';
import { NO_SYMMETRY, type Symmetry } from '../../draw/edit/symmetry.js';
import type { ColourUses, PaletteEdit } from '../../draw/palette/palette.js';
import { type DiagonalChange, type DiagonalProject, titleOf } from '../../project/project.js';
import type { Session } from '../../project/session.js';
import { SessionWatch } from '../../view/session-watch.js';
import { kindInk, plainInk } from '../edit/ink.js';
import { pictureDrawn, readingOf, recoloured, relaid, shownBy, usesOf } from '../edit/pattern.js';
import { indexOf, isPlace } from '../edit/places.js';
import { pictureOfChart } from '../edit/sampled.js';
import { symmetriesOf } from '../edit/symmetry.js';
import '../lattice/lattice-sheet.js';
import type { LatticeSheet } from '../lattice/lattice-sheet.js';
import type { LatticeMark } from '../lattice/look.js';
import type { LatticeEdit, LatticeSettings, LatticeSubject } from '../lattice/subject.js';
import { cellInWords, kindInWords } from '../lattice/words.js';
import { conflictMarks, differenceMarks, type Offer } from '../solve/offer.js';
import { solveCard } from '../solve/solve-card.js';
import { Solving } from '../solve/solving.js';
import { USUAL_WISH, type WishSettings } from '../solve/wish-form.js';
import { changingCard } from './changing-card.js';
import { keyHelp } from './key-help.js';
import './new-dialog.js';
import type { NewDialog } from './new-dialog.js';
import './picture-dialog.js';
import type { PictureDialog } from './picture-dialog.js';
import { orderCard, stringsCard } from './strings-card.js';
import { knotsSubject, pictureSubject } from './subjects.js';
import { type DrawMode, toolBar } from './tool-bar.js';
import { DRAW_TOOLS, type DrawTool } from './tools.js';

/** From row to row, by string to string: strings run at 45 degrees. */
const ASPECT = 1;

const NO_MARKS: readonly LatticeMark[] = [];

/**
 * Where a diagonal pattern is drawn: as a picture for which a way to knot it is then found, or knot
 * by knot.
 */
export class DiagonalDrawView extends LitElement {
  static override properties = {
    session: { attribute: false },
    mode: { state: true },
    tool: { state: true },
    cell: { state: true },
    kind: { state: true },
    stringColour: { state: true },
    symmetry: { state: true },
    signs: { state: true },
    ways: { state: true },
    wish: { state: true },
    said: { state: true },
    problem: { state: true },
  };

  declare session: Session | null;
  declare private mode: DrawMode;
  declare private tool: DrawTool;
  /** What is drawn with in pictures: a colour, ANY_COLOUR or BARE. */
  declare private cell: number;
  /** What is drawn with in knots: a kind or NO_KNOT. */
  declare private kind: number;
  declare private stringColour: number;
  declare private symmetry: Symmetry;
  declare private signs: boolean;
  declare private ways: boolean;
  declare private wish: WishSettings;
  declare private said: string;
  declare private problem: string;

  private readonly solving = new Solving(this);
  private project: string | null = null;
  private subject: { readonly of: unknown; readonly subject: LatticeSubject } | null = null;
  private settings: LatticeSettings | null = null;
  private marked: { readonly of: unknown; readonly marks: readonly LatticeMark[] } | null = null;

  constructor() {
    super();
    this.session = null;
    this.mode = 'picture';
    this.tool = 'pencil';
    this.cell = 0;
    this.kind = 0;
    this.stringColour = 0;
    this.symmetry = NO_SYMMETRY;
    this.signs = false;
    this.ways = true;
    this.wish = USUAL_WISH;
    this.said = '';
    this.problem = '';
    new SessionWatch(this, ['open', 'project', 'piece']);
  }

  /** In the page itself, so that its style sheet, find and print reach everything. */
  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  get open(): DiagonalProject | null {
    return this.session?.diagonal ?? null;
  }

  private get sheet(): LatticeSheet | null {
    return this.querySelector('halfhitch-lattice');
  }

  private edit(change: DiagonalChange, what: string): void {
    this.problem = '';
    this.said = '';
    if (Object.keys(change).length > 0) this.session?.editDiagonal(change, what);
  }

  /** Does what may not be possible, and says why it is not. */
  private attempt(act: () => void): void {
    this.problem = '';
    try {
      act();
    } catch (error) {
      this.problem = reasonOf(error);
    }
  }

  // ---- following the session ----

  protected override willUpdate(): void {
    const { open } = this;
    if (open === null) return;
    if (open.id !== this.project) {
      this.project = open.id;
      this.begin(open);
    }
    const last = open.pattern.colours.length - 1;
    if (this.cell > last && this.cell !== ANY_COLOUR && this.cell !== BARE) this.cell = last;
    if (this.stringColour > last) this.stringColour = last;
    this.subjectOf(open);
  }

  private begin(open: DiagonalProject): void {
    this.solving.reset();
    this.cell = Math.min(1, open.pattern.colours.length - 1);
    this.stringColour = this.cell;
    this.said = '';
    this.problem = '';
    this.sheet?.reset();
  }

  protected override updated(): void {
    const { open, sheet } = this;
    if (open === null || sheet === null) return;
    sheet.set(this.sheetSettings());
    sheet.show(this.subjectOf(open), ASPECT);
    sheet.mark(this.marksOf(open));
  }

  private sheetSettings(): LatticeSettings {
    const { mode, cell, kind, symmetry, signs, offer } = this;
    const tool = offer === null ? this.tool : 'choose';
    const ink = mode === 'picture' ? plainInk(cell) : kindInk(kind);
    const before = this.settings;
    const same =
      before?.tool === tool &&
      before.symmetry === symmetry &&
      before.signs === signs &&
      before.ink.itself === ink.itself &&
      before.ink.sides === ink.sides;
    if (!same || before === null) this.settings = { tool, ink, symmetry, signs };
    return this.settings ?? { tool, ink, symmetry, signs };
  }

  private subjectOf(open: DiagonalProject): LatticeSubject {
    const { mode, offer, ways } = this;
    const nearest = offer?.showing === 'nearest' ? offer.solution.pattern : null;
    const key = [open.pattern, open.wanted, mode, nearest, ways];
    const before = this.subject;
    if (Array.isArray(before?.of) && key.every((one, at) => one === (before.of as unknown[])[at])) {
      return before.subject;
    }
    const subject =
      nearest !== null
        ? knotsSubject(nearest, ways)
        : mode === 'knots'
          ? knotsSubject(open.pattern, ways)
          : pictureSubject(open, ways);
    this.subject = { of: key, subject };
    return subject;
  }

  private marksOf(open: DiagonalProject): readonly LatticeMark[] {
    const { offer, mode } = this;
    const key = [open.pattern, open.wanted, offer, mode];
    const before = this.marked;
    if (Array.isArray(before?.of) && key.every((one, at) => one === (before.of as unknown[])[at])) {
      return before.marks;
    }
    const marks = this.workOutMarks(open);
    this.marked = { of: key, marks };
    return marks;
  }

  private workOutMarks({ pattern, wanted }: DiagonalProject): readonly LatticeMark[] {
    const { offer, mode } = this;
    if (offer !== null) {
      const nearest = offer.solution.pattern;
      if (offer.showing === 'conflict' || nearest === null) return conflictMarks(offer);
      return differenceMarks(nearest, offer.wanted);
    }
    return mode === 'knots' && wanted !== null ? differenceMarks(pattern, wanted) : NO_MARKS;
  }

  // ---- what is found ----

  /** Puts a pattern that was found in the place of the open one. */
  take(pattern: DiagonalPattern, what: string): void {
    const { open } = this;
    if (open === null) return;
    const { name, colours } = open.pattern;
    this.edit({ pattern: { ...pattern, name, colours }, wanted: null }, what);
  }

  fail(message: string): void {
    this.problem = message;
  }

  private get offer(): Offer | null {
    return this.solving.offer;
  }

  // ---- drawing ----

  private onEdit({ bytes, what }: LatticeEdit): void {
    const { open } = this;
    if (open === null || this.offer !== null) return;
    if (this.mode === 'picture') this.edit(pictureDrawn(open, bytes), what);
    else this.edit({ pattern: { ...open.pattern, knots: bytes } }, what);
  }

  private onPick(byte: number): void {
    if (this.mode === 'picture') {
      this.cell = byte;
      this.said = `Drawing with ${cellInWords(this.open?.pattern.colours ?? [], byte)}.`;
    } else {
      this.kind = byte;
      this.said = `Drawing with ${kindInWords(byte)}.`;
    }
  }

  private readonly onKey = (event: CustomEvent<string>): void => {
    const key = event.detail.toLowerCase();
    const tool = DRAW_TOOLS.find((one) => one.key === key);
    if (tool !== undefined) this.tool = tool.name;
    else if (key === 'h') this.signs = !this.signs;
    else if (!this.chooseByKey(key)) return;
    event.preventDefault();
  };

  private chooseByKey(key: string): boolean {
    const colours = this.open?.pattern.colours ?? [];
    if (this.mode === 'knots') {
      if (!/^[0-4]$/.test(key)) return false;
      this.kind = key === '0' ? NO_KNOT : Number(key) - 1;
      this.said = `Drawing with ${kindInWords(this.kind)}.`;
      return true;
    }
    if (key === 'a') this.cell = ANY_COLOUR;
    else if (key === '0') this.cell = BARE;
    else if (/^[1-9]$/.test(key) && Number(key) <= colours.length) this.cell = Number(key) - 1;
    else return false;
    this.said = `Drawing with ${cellInWords(colours, this.cell)}.`;
    return true;
  }

  private setString(open: DiagonalProject, slot: number): void {
    const { pattern } = open;
    if (pattern.start[slot] === this.stringColour) return;
    const start = pattern.start.slice();
    start[slot] = this.stringColour;
    this.edit({ pattern: { ...pattern, start } }, 'Hang a string in another colour');
  }

  private onPalette({ colours, places, what, colour }: PaletteEdit): void {
    const { open } = this;
    if (open === null) return;
    this.cell = colour;
    this.stringColour = colour;
    this.edit(recoloured(open, colours, places), what);
  }

  private sample(chart: Chart, open: DiagonalProject): void {
    this.attempt(() => this.edit(pictureOfChart(open, chart), 'Draw from a picture'));
    this.mode = 'picture';
  }

  // ---- the page ----

  protected override render(): TemplateResult {
    const { open, session } = this;
    if (open === null) return html`${nothing}`;
    return html`
      <div class="draw diagonal-draw">
        <div class="card draw-bar">
          ${toolBar({
            mode: this.mode,
            colours: open.pattern.colours,
            tool: this.tool,
            cell: this.cell,
            kind: this.kind,
            undoing: session?.undoing ?? null,
            undo: () => session?.undo(),
            chooseTool: (tool) => {
              this.tool = tool;
            },
            chooseCell: (cell) => {
              this.cell = cell;
            },
            chooseKind: (kind) => {
              this.kind = kind;
            },
          })}
        </div>
        ${this.board(open)}
        <div class="draw-side">${this.side(open)}</div>
      </div>
      <halfhitch-new-diagonal
        .session=${session}
        .colours=${open.pattern.colours}
      ></halfhitch-new-diagonal>
      <halfhitch-diagonal-picture
        .colours=${open.pattern.colours}
        @picture-made=${({ detail }: CustomEvent<Chart>) => this.sample(detail, open)}
      ></halfhitch-diagonal-picture>
    `;
  }

  private board(open: DiagonalProject): TemplateResult {
    const { pattern } = open;
    return html`<section class="card draw-board" aria-labelledby="draw-name">
      <div class="bar draw-head">
        <div class="draw-title">
          <h2 id="draw-name">${titleOf(open)}</h2>
          <p class="size">
            ${counted(pattern.rows, 'row')} on
            ${pattern.strings} strings
          </p>
        </div>
        <div class="draw-row draw-make">
          <button
            type="button"
            aria-haspopup="dialog"
            @click=${() => this.querySelector<NewDialog>('halfhitch-new-diagonal')?.open()}
          >New pattern</button>
          <button
            type="button"
            aria-haspopup="dialog"
            @click=${() => this.querySelector<PictureDialog>('halfhitch-diagonal-picture')?.open()}
          >From a picture</button>
        </div>
      </div>
      ${this.looks()}
      <halfhitch-lattice
        @lattice-edit=${({ detail }: CustomEvent<LatticeEdit>) => this.onEdit(detail)}
        @lattice-pick=${({ detail }: CustomEvent<number>) => this.onPick(detail)}
        @lattice-place=${() => this.requestUpdate()}
        @lattice-key=${this.onKey}
        @lattice-say=${({ detail }: CustomEvent<string>) => {
          this.said = detail;
        }}
      ></halfhitch-lattice>
      <p class="draw-here">${this.hereInWords(open)}</p>
      <p class="draw-said" role="status">${this.said}</p>
      ${
        this.problem === ''
          ? nothing
          : html`<p class="field-error draw-problem" role="alert">${this.problem}</p>`
      }
      ${keyHelp()}
    </section>`;
  }

  private looks(): TemplateResult {
    const modeChoice = (mode: DrawMode, label: string) => html`<label>
      <input
        type="radio"
        name="draw-mode"
        .checked=${this.mode === mode}
        @change=${() => {
          this.mode = mode;
          this.solving.leave();
        }}
      />
      <span>${label}</span>
    </label>`;
    return html`<div class="draw-row draw-look" role="group" aria-label="How the pattern is shown">
      <fieldset class="switch">
        <legend class="unseen">What is drawn</legend>
        ${modeChoice('picture', 'Picture')} ${modeChoice('knots', 'Knots')}
      </fieldset>
      <button type="button" aria-label="Smaller" title="Smaller (−)" @click=${() => this.sheet?.zoomBy(-1)}>−</button>
      <button type="button" aria-label="Larger" title="Larger (+)" @click=${() => this.sheet?.zoomBy(1)}>+</button>
      <button type="button" @click=${() => this.sheet?.fit()}>Whole width</button>
      <button
        type="button"
        title="Mark each colour with a sign as well (H)"
        aria-pressed=${String(this.signs)}
        @click=${() => {
          this.signs = !this.signs;
        }}
      >Signs</button>
      <button
        type="button"
        title="Draw on each knot the way of the string that ties it"
        aria-pressed=${String(this.ways)}
        @click=${() => {
          this.ways = !this.ways;
        }}
      >Ways</button>
    </div>`;
  }

  private hereInWords(open: DiagonalProject): string {
    const { sheet } = this;
    if (sheet === null) return '';
    const { subject } = this;
    if (subject === null) return '';
    return `${subject.subject.words(sheet.here, subject.subject.bytes)}.${
      isPlace(open.pattern, sheet.here) && this.offer === null && open.wanted !== null
        ? this.otherSide(open, sheet.here)
        : ''
    }`;
  }

  /** In knots what is wanted in a place, in the picture what the knots show there. */
  private otherSide({ pattern, wanted }: DiagonalProject, place: Place): string {
    if (wanted === null) return '';
    const at = indexOf(pattern, place);
    if (this.mode === 'knots') return ` Wanted: ${cellInWords(wanted.colours, wanted.cells[at])}.`;
    return ` The knots show: ${cellInWords(pattern.colours, shownBy(pattern).cells[at])}.`;
  }

  private side(open: DiagonalProject): TemplateResult {
    const { pattern } = open;
    const { solving } = this;
    const reading = readingOf(pattern);
    return html`
      <section class="card solve-card" aria-labelledby="solve-name">
        ${solveCard(open, this.wish, solving.search, solving.offer, solving.found, {
          find: () => {
            this.problem = '';
            solving.find(open, this.wish);
          },
          stop: () => solving.stop(),
          set: (change) => {
            this.wish = { ...this.wish, ...change };
          },
          look: (at) => solving.look(at),
          take: () => solving.takeNearest(),
          leave: () => solving.leave(),
        })}
      </section>
      <section class="card" aria-labelledby="strings-name">
        ${stringsCard(
          pattern.colours,
          pattern.start,
          this.stringColour,
          (colour) => {
            this.stringColour = colour;
          },
          (slot) => this.setString(open, slot),
        )}
        ${orderCard(
          pattern.colours,
          pattern.start,
          reading.order,
          Math.min(this.sheet?.here.row ?? 0, pattern.rows - 1),
        )}
      </section>
      <section class="card" aria-labelledby="changing-name">
        ${changingCard({
          project: open,
          symmetry: this.symmetry,
          has: symmetriesOf(pattern),
          choose: (symmetry) => {
            this.symmetry = symmetry;
          },
          relay: (lattice) =>
            this.attempt(() => this.edit(relaid(open, lattice), 'Change the size')),
          edit: (make, what) => this.attempt(() => this.edit(make(), what)),
        })}
      </section>
      <section class="card draw-legend" aria-labelledby="legend-name">
        <h2 id="legend-name">Colours</h2>
        <halfhitch-palette
          .colours=${pattern.colours}
          .uses=${colourUses(open)}
          .colour=${this.cell < pattern.colours.length ? this.cell : 0}
          .ground=${null}
          @palette-edit=${({ detail }: CustomEvent<PaletteEdit>) => this.onPalette(detail)}
        ></halfhitch-palette>
      </section>
    `;
  }
}

function colourUses(project: DiagonalProject): ColourUses {
  const many = usesOf(project);
  return {
    many,
    inWords: (count) => `Hangs or is wanted in ${counted(count, 'place')}.`,
    first: (colour) => ((many[colour] ?? 0) > 0 ? {} : null),
  };
}

customElements.define('halfhitch-diagonal-draw', DiagonalDrawView);
