import type { Chart, DiagonalPattern } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { PageElement } from '../../view/page-element.js';
import '../../styles/diagonal.css';
import { NO_SYMMETRY, type Symmetry } from '../../draw/edit/symmetry.js';
import { takeOwnRequest } from '../../draw/own-request.js';
import type { PaletteEdit } from '../../draw/palette/palette.js';
import { boardWords, lookButton, zoomButtons } from '../../draw/panels/board.js';
import { type DiagonalChange, type DiagonalProject, titleOf } from '../../project/project.js';
import type { Session } from '../../project/session.js';
import { counted } from '../../view/figures.js';
import { Remembered } from '../../view/remembered.js';
import { SessionWatch } from '../../view/session-watch.js';
import { StripEdges } from '../../view/strip-edges.js';
import { attempted } from '../../work/reason.js';
import { pictureDrawn, recoloured } from '../edit/pattern.js';
import { pictureOfChart } from '../edit/sampled.js';
import '../lattice/lattice-sheet.js';
import type { LatticeSheet } from '../lattice/lattice-sheet.js';
import type { LatticeEdit, LatticeSettings } from '../lattice/subject.js';
import { Solving } from '../solve/solving.js';
import { USUAL_WISH, type WishSettings } from '../solve/wish-form.js';
import {
  byKey,
  type DrawMode,
  type DrawnWith,
  drawnWithInWords,
  inkOf,
  picked,
  withinColours,
} from './drawn-with.js';
import { keyHelp } from './key-help.js';
import './new-dialog.js';
import type { NewDialog } from './new-dialog.js';
import './picture-dialog.js';
import type { PictureDialog } from './picture-dialog.js';
import { type Looked, ShownPattern } from './shown.js';
import { side } from './side.js';
import { toolBar } from './tool-bar.js';
import { DRAW_TOOLS, type DrawTool } from './tools.js';

/** From row to row, by string to string: strings run at 45 degrees. */
const ASPECT = 1;

/**
 * Where a diagonal pattern is drawn: as a picture for which a way to knot it is then found, or knot
 * by knot.
 */
export class DiagonalDrawView extends PageElement {
  static override properties = {
    session: { attribute: false },
    drawnWith: { state: true },
    tool: { state: true },
    stringColour: { state: true },
    symmetry: { state: true },
    signs: { state: true },
    ways: { state: true },
    wish: { state: true },
    said: { state: true },
    problem: { state: true },
  };

  declare session: Session | null;
  declare private drawnWith: DrawnWith;
  declare private tool: DrawTool;
  /** What strings are hung in. */
  declare private stringColour: number;
  declare private symmetry: Symmetry;
  declare private signs: boolean;
  declare private ways: boolean;
  declare private wish: WishSettings;
  declare private said: string;
  declare private problem: string;

  private readonly solving = new Solving(this);
  private project: string | null = null;
  private readonly shown = new ShownPattern();
  private readonly settings = new Remembered<LatticeSettings>();

  constructor() {
    super();
    this.session = null;
    this.drawnWith = { mode: 'picture', cell: 0, kind: 0 };
    this.tool = 'pencil';
    this.stringColour = 0;
    this.symmetry = NO_SYMMETRY;
    this.signs = false;
    this.ways = true;
    this.wish = USUAL_WISH;
    this.said = '';
    this.problem = '';
    new SessionWatch(this, ['open', 'project', 'piece']);
    new StripEdges(this, '.draw-tools, .draw-colours');
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
    this.problem = attempted(act);
  }

  // ---- following the session ----

  protected override willUpdate(): void {
    const { open } = this;
    if (open === null) return;
    if (open.id !== this.project) {
      this.project = open.id;
      this.begin(open);
    }
    const { colours } = open.pattern;
    this.drawnWith = withinColours(this.drawnWith, colours);
    this.stringColour = Math.min(this.stringColour, colours.length - 1);
  }

  private begin(open: DiagonalProject): void {
    this.solving.reset();
    this.stringColour = Math.min(1, open.pattern.colours.length - 1);
    this.drawnWith = { ...this.drawnWith, cell: this.stringColour };
    this.said = '';
    this.problem = '';
    this.sheet?.reset();
  }

  protected override updated(): void {
    const { open, sheet } = this;
    if (open === null || sheet === null) return;
    if (takeOwnRequest()) this.querySelector<NewDialog>('halfhitch-new-diagonal')?.open();
    sheet.set(this.sheetSettings());
    sheet.show(this.shown.subjectOf(open, this.looked), ASPECT);
    sheet.mark(this.shown.marksOf(open, this.looked));
  }

  private sheetSettings(): LatticeSettings {
    const { drawnWith, symmetry, signs } = this;
    const tool = this.solving.offer === null ? this.tool : 'choose';
    return this.settings.of([tool, drawnWith, symmetry, signs], () => ({
      tool,
      ink: inkOf(drawnWith),
      symmetry,
      signs,
    }));
  }

  private get looked(): Looked {
    return { mode: this.drawnWith.mode, offer: this.solving.offer, ways: this.ways };
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

  // ---- drawing ----

  private onEdit({ bytes, what }: LatticeEdit): void {
    const { open } = this;
    if (open === null || this.solving.offer !== null) return;
    if (this.drawnWith.mode === 'picture') this.edit(pictureDrawn(open, bytes), what);
    else this.edit({ pattern: { ...open.pattern, knots: bytes } }, what);
  }

  private drawWith(chosen: DrawnWith): void {
    this.drawnWith = chosen;
    this.said = drawnWithInWords(chosen, this.open?.pattern.colours ?? []);
  }

  private readonly onKey = (event: CustomEvent<string>): void => {
    const key = event.detail.toLowerCase();
    const tool = DRAW_TOOLS.find((one) => one.key === key);
    if (tool !== undefined) this.tool = tool.name;
    else if (key === 'h') this.signs = !this.signs;
    else {
      const chosen = byKey(this.drawnWith, key, this.open?.pattern.colours ?? []);
      if (chosen === null) return;
      this.drawWith(chosen);
    }
    event.preventDefault();
  };

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
    this.drawnWith = { ...this.drawnWith, cell: colour };
    this.stringColour = colour;
    this.edit(recoloured(open, colours, places), what);
  }

  private sample(chart: Chart, open: DiagonalProject): void {
    this.attempt(() => this.edit(pictureOfChart(open, chart), 'Draw from a picture'));
    this.drawnWith = { ...this.drawnWith, mode: 'picture' };
  }

  // ---- the page ----

  protected override render(): TemplateResult {
    const { open, session, drawnWith } = this;
    if (open === null) return html`${nothing}`;
    return html`
      <div class="draw diagonal-draw">
        <div class="card draw-bar">
          ${toolBar({
            ...drawnWith,
            colours: open.pattern.colours,
            tool: this.tool,
            undoing: session?.undoing ?? null,
            undo: () => session?.undo(),
            chooseTool: (tool) => {
              this.tool = tool;
            },
            draw: (chosen) => {
              this.drawnWith = { ...drawnWith, ...chosen };
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
    const { sheet } = this;
    const here = sheet === null ? '' : this.shown.wordsAt(open, this.looked, sheet.here);
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
        @lattice-pick=${({ detail }: CustomEvent<number>) => this.drawWith(picked(this.drawnWith, detail))}
        @lattice-place=${() => this.requestUpdate()}
        @lattice-key=${this.onKey}
        @lattice-say=${({ detail }: CustomEvent<string>) => {
          this.said = detail;
        }}
      ></halfhitch-lattice>
      ${boardWords(here, this.said, this.problem)}
      ${keyHelp()}
    </section>`;
  }

  private looks(): TemplateResult {
    const modeChoice = (mode: DrawMode, label: string) => html`<label>
      <input
        type="radio"
        name="draw-mode"
        .checked=${this.drawnWith.mode === mode}
        @change=${() => {
          this.drawnWith = { ...this.drawnWith, mode };
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
      ${zoomButtons(() => this.sheet)}
      ${lookButton('Signs', 'Mark each colour with a sign as well (H)', this.signs, () => {
        this.signs = !this.signs;
      })}
      ${lookButton(
        'Ways',
        'Draw on each knot the way of the string that ties it',
        this.ways,
        () => {
          this.ways = !this.ways;
        },
      )}
    </div>`;
  }

  private side(open: DiagonalProject): TemplateResult {
    const { solving } = this;
    return side({
      project: open,
      solving,
      wish: this.wish,
      stringColour: this.stringColour,
      cell: this.drawnWith.cell,
      symmetry: this.symmetry,
      row: this.sheet?.here.row ?? 0,
      find: () => {
        this.problem = '';
        solving.find(open, this.wish);
      },
      setWish: (change) => {
        this.wish = { ...this.wish, ...change };
      },
      chooseString: (colour) => {
        this.stringColour = colour;
      },
      setString: (slot) => this.setString(open, slot),
      chooseSymmetry: (symmetry) => {
        this.symmetry = symmetry;
      },
      edit: (make, what) => this.attempt(() => this.edit(make(), what)),
      onPalette: (edit) => this.onPalette(edit),
    });
  }
}

customElements.define('halfhitch-diagonal-draw', DiagonalDrawView);
