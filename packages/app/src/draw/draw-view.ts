import type { Chart } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { titleOf } from '../project/project.js';
import type { Session } from '../project/session.js';
import { counted } from '../view/figures.js';
import { NarrowPage } from '../view/narrow-page.js';
import { PageElement } from '../view/page-element.js';
import { Remembered } from '../view/remembered.js';
import { SessionWatch } from '../view/session-watch.js';
import { StripEdges } from '../view/strip-edges.js';
import type { Tile } from '../work/fabric-tile.js';
import type { Piece } from '../work/messages.js';
import { attempted } from '../work/reason.js';
import { ColourWarnings } from './colour-warnings.js';
import './dialogs/draw-dialog.js';
import './sheet/sheet.js';
import type { DialogDone, DialogPage, DrawDialog } from './dialogs/draw-dialog.js';
import { NEW_CHART, RENAME, REPEAT, RESIZE } from './dialogs/forms.js';
import { wholeOf } from './edit/area.js';
import { colourName, groundAndInk, relegended } from './edit/colours.js';
import { pastedWithRoom, patchOf } from './edit/patch.js';
import { NO_SYMMETRY } from './edit/symmetry.js';
import { knotAspect } from './knot-aspect.js';
import { takeOwnRequest } from './own-request.js';
import type { ColourUses, PaletteEdit } from './palette/palette.js';
import { Advice } from './panels/advice.js';
import { boardWords, lookButton, zoomButtons } from './panels/board.js';
import { type ChangingWish, changingCard } from './panels/changing.js';
import { keyHelp } from './panels/key-help.js';
import { legendCard, usesOf } from './panels/legend-card.js';
import { outcome } from './panels/outcome.js';
import { ShownChip } from './panels/shown-chip.js';
import { symmetries } from './panels/symmetries.js';
import { toolBar } from './panels/tool-bar.js';
import type { SheetAsk, SheetEdit, SheetSettings } from './sheet/events.js';
import { marksOf } from './sheet/found.js';
import type { Mark } from './sheet/marks.js';
import type { Sheet } from './sheet/sheet.js';
import { hereInWords } from './sheet/words.js';

const NO_MARKS: readonly Mark[] = [];

/** Where a chart is drawn, and where its verdict is seen while it is. */
export class DrawView extends PageElement {
  static override properties = {
    session: { attribute: false },
    settings: { state: true },
    aspect: { state: true },
    said: { state: true },
    problem: { state: true },
  };

  declare session: Session | null;
  declare private settings: SheetSettings;
  /** Width of a knot by its height; null until it is worked out. */
  declare private aspect: number | null;
  declare private said: string;
  declare private problem: string;

  private readonly narrow = new NarrowPage(this);
  private project: string | null = null;
  private readonly marks = new Remembered<readonly Mark[]>();
  private readonly uses = new Remembered<ColourUses>();
  private readonly shownChip = new ShownChip();
  private readonly warnings = new ColourWarnings(this);
  private readonly advice = new Advice(this);

  constructor() {
    super();
    this.session = null;
    this.settings = {
      tool: 'pencil',
      colour: 0,
      ground: 0,
      symmetry: NO_SYMMETRY,
      signs: false,
      asThread: false,
      repeat: false,
    };
    this.aspect = null;
    this.said = '';
    this.problem = '';
    new SessionWatch(this, ['open', 'project', 'piece', 'busy']);
    new StripEdges(this, '.draw-tools, .draw-colours');
  }

  private get chart(): Chart | null {
    return this.session?.alpha?.chart ?? null;
  }

  private get sheet(): Sheet | null {
    return this.querySelector('halfhitch-sheet');
  }

  private choose(change: Partial<SheetSettings>): void {
    this.settings = { ...this.settings, ...change };
  }

  private edit(chart: Chart, what: string): void {
    const before = this.chart;
    this.problem = '';
    this.said = '';
    if (before === null || chart === before) return;
    if (before.knots !== undefined && chart.knots === undefined) {
      this.said =
        'The kinds of knots that came with the chart no longer fit its size; they are worked out anew.';
    }
    this.session?.edit({ chart }, what);
  }

  /** Does what may not be possible, and says why it is not. */
  private attempt(act: () => void): void {
    this.problem = attempted(act);
  }

  // ---- following the session ----

  protected override willUpdate(): void {
    const { session, chart } = this;
    const id = session?.alpha?.id ?? null;
    if (chart === null) return;
    if (id !== this.project) {
      this.project = id;
      this.begin(chart);
    }
    // Taken back, a colour may be there no longer.
    const last = chart.colours.length - 1;
    const { colour, ground } = this.settings;
    if (colour > last || ground > last) {
      this.choose({ colour: Math.min(colour, last), ground: Math.min(ground, last) });
    }
  }

  /** The ground is what most of a chart is drawn in, and one draws in what comes second. */
  private begin(chart: Chart): void {
    this.choose(groundAndInk(chart));
    this.said = '';
    this.problem = '';
    this.sheet?.reset();
  }

  protected override updated(): void {
    const { session, sheet, chart, aspect, piece } = this;
    const project = session?.alpha;
    if (project == null || sheet === null || chart === null) return;
    if (takeOwnRequest()) this.openDialog({ kind: 'form', form: NEW_CHART });
    sheet.set(this.settings);
    void this.findAspect();
    if (aspect !== null) sheet.show(chart, project.choice.start, aspect);
    const marks = piece === null ? NO_MARKS : this.marks.of([piece], () => marksOf(piece));
    sheet.found(marks, piece?.chart ?? null);
    if (piece?.chart === chart) void this.warnings.find(chart);
    this.shownChip.show(this, this.settings.colour);
  }

  /** The last that was worked out of this project. */
  private get piece(): Piece | null {
    const { session } = this;
    const piece = session?.piece ?? null;
    return piece?.id === session?.alpha?.id ? piece : null;
  }

  private async findAspect(): Promise<void> {
    const project = this.session?.alpha;
    if (project == null) return;
    const aspect = await knotAspect(project.choice, project.cut);
    if (this.session?.alpha?.id !== project.id) return;
    // Knots of a wrong shape can be drawn on; no knots can't.
    this.aspect = aspect ?? this.aspect ?? 1;
  }

  // ---- the page ----

  protected override render(): TemplateResult {
    const { chart, sheet, settings, session } = this;
    if (chart === null) return html`${nothing}`;
    return html`
      <div class="draw">
        <div class="card draw-bar">
          ${toolBar({
            chart,
            settings,
            undoing: session?.undoing ?? null,
            undo: () => session?.undo(),
            choose: (change) => this.choose(change),
          })}
          ${this.narrow.matches ? nothing : this.symmetries()}
        </div>
        ${this.board(chart)}
        <div class="draw-side">
          <section class="card" aria-labelledby="outcome-name">
            <h2 id="outcome-name">What comes of it</h2>
            ${outcome(this.piece, this.piece?.chart === chart, this.narrow.matches, (place) =>
              sheet?.goTo(place, { focus: true }),
            )}
          </section>
          ${this.changing(chart)} ${this.legend(chart)} ${this.advice.card(session, (place) =>
            sheet?.goTo(place, { focus: true }),
          )}
        </div>
      </div>
      <halfhitch-draw-dialog
        .chart=${chart}
        .ground=${settings.ground}
        .aspect=${this.aspect}
        .at=${sheet?.drawing.selected ?? sheet?.drawing.here ?? { row: 0, column: 0 }}
        @dialog-done=${(event: CustomEvent<DialogDone>) => this.onDone(event.detail)}
      ></halfhitch-draw-dialog>
      <halfhitch-new-diagonal
        .session=${session}
        .colours=${chart.colours}
      ></halfhitch-new-diagonal>
    `;
  }

  private async newDiagonal(): Promise<void> {
    await import('../diagonal/draw/new-dialog.js');
    this.querySelector('halfhitch-new-diagonal')?.open();
  }

  private board(chart: Chart): TemplateResult {
    const { session } = this;
    return html`<section class="card draw-board" aria-labelledby="draw-name">
      <div class="bar draw-head">
        <div class="draw-title">
          <h2 id="draw-name">${session?.alpha == null ? '' : titleOf(session.alpha)}</h2>
          <p class="size">
            ${counted(chart.rows, 'row')} of
            ${counted(chart.columns, 'knot')}
          </p>
        </div>
        <div class="draw-row draw-make">
          ${this.opening('New chart', { kind: 'form', form: NEW_CHART })}
          <button type="button" aria-haspopup="dialog" @click=${() => void this.newDiagonal()}>
            New diagonal pattern
          </button>
          ${this.opening('Rename', { kind: 'form', form: RENAME })}
          ${this.opening('Letters', { kind: 'maker', maker: 'letters' })}
          ${this.opening('From a picture', { kind: 'maker', maker: 'picture' })}
        </div>
      </div>
      ${this.looks()}
      <halfhitch-sheet
        .drawTile=${(tile: Tile) => this.drawTile(tile)}
        @draw-edit=${({ detail }: CustomEvent<SheetEdit>) => this.edit(detail.chart, detail.what)}
        @draw-ask=${({ detail }: CustomEvent<SheetAsk>) => this.onAsk(detail)}
        @draw-place=${() => this.requestUpdate()}
      ></halfhitch-sheet>
      ${boardWords(this.hereInWords(chart), this.said, this.problem)}
      ${keyHelp()}
    </section>`;
  }

  private openDialog(page: DialogPage): void {
    this.querySelector<DrawDialog>('halfhitch-draw-dialog')?.open(page);
  }

  private opening(label: string, page: DialogPage): TemplateResult {
    return html`<button
      type="button"
      aria-haspopup="dialog"
      @click=${() => this.openDialog(page)}
    >
      ${label}
    </button>`;
  }

  private looks(): TemplateResult {
    const look = (name: 'signs' | 'asThread' | 'repeat', label: string, about: string) => {
      const on = this.settings[name];
      return lookButton(label, about, on, () => this.choose({ [name]: !on }));
    };
    return html`<div class="draw-row draw-look" role="group" aria-label="How the chart is shown">
      ${zoomButtons(() => this.sheet)}
      ${look('signs', 'Signs', 'Mark each colour with a sign as well (H)')}
      ${look('asThread', 'As thread', 'Show the knots as they come out')}
      ${look('repeat', 'Repeat', 'Show the drawing again above and below; the chart stays as it is')}
    </div>`;
  }

  private hereInWords(chart: Chart): string {
    const { sheet, session } = this;
    if (sheet === null) return '';
    return hereInWords(chart, session?.alpha?.choice.start ?? 'left', sheet.drawing);
  }

  private symmetries(): TemplateResult {
    return symmetries(this.settings.symmetry, (symmetry) => this.choose({ symmetry }));
  }

  private changing(chart: Chart): TemplateResult {
    const drawing = this.sheet?.drawing;
    const wish: ChangingWish = {
      chart,
      selection: drawing?.selected ?? null,
      place: drawing?.here ?? { row: 0, column: 0 },
      ground: this.settings.ground,
      act: (act) => {
        if (drawing !== undefined) this.attempt(() => act(drawing));
      },
      edit: (make, what) => this.attempt(() => this.edit(make(chart), what)),
    };
    return changingCard(
      wish,
      this.narrow.matches ? this.symmetries() : nothing,
      html`${this.opening('Another size', { kind: 'form', form: RESIZE })}
        ${this.opening('Again and again', { kind: 'form', form: REPEAT })}`,
    );
  }

  private legend(chart: Chart): TemplateResult {
    const { colour, ground } = this.settings;
    return legendCard({
      chart,
      uses: this.uses.of([chart], () => usesOf(chart)),
      colour,
      ground,
      warnings: this.warnings.found,
      edit: (edit) => this.onPalette(edit),
      setGround: (chosen) => this.choose({ ground: chosen }),
    });
  }

  private onPalette({ what, colour, ...legend }: PaletteEdit): void {
    const { chart } = this;
    if (chart === null) return;
    const { ground } = this.settings;
    this.choose({ colour, ground: legend.places[ground] ?? ground });
    this.edit(relegended(chart, legend), what);
  }

  private onAsk(asked: SheetAsk): void {
    switch (asked.ask) {
      case 'tool':
        this.choose({ tool: asked.tool });
        break;
      case 'colour': {
        const colour = this.chart?.colours[asked.colour];
        if (colour === undefined) return;
        this.choose({ colour: asked.colour });
        this.said = `Drawing in ${colourName(colour)}.`;
        break;
      }
      case 'signs':
        this.choose({ signs: !this.settings.signs });
        break;
      case 'say':
        this.said = asked.text;
        break;
    }
  }

  private onDone({ chart, as, what }: DialogDone): void {
    if (as === 'open') this.session?.openChart(chart);
    else if (as === 'edit') this.edit(chart, what);
    else this.attempt(() => this.put(chart, as === 'room', what));
  }

  private put(made: Chart, room: boolean, what: string): void {
    const { chart, sheet, settings } = this;
    if (chart === null || sheet === null) return;
    const patch = patchOf(made, wholeOf(made));
    if (!room) {
      sheet.drawing.putIn(patch, what);
      return;
    }
    const at = sheet.drawing.selected ?? sheet.drawing.here;
    this.edit(pastedWithRoom(chart, patch, at, settings.ground), what);
  }

  private drawTile(tile: Tile): Promise<string> {
    if (this.session === null) return Promise.reject(new Error('There is no session.'));
    return this.session.desk.ask({ ask: 'tile', tile });
  }
}

customElements.define('halfhitch-draw', DrawView);
