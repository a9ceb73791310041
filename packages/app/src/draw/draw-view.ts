import type { Chart } from '@halfhitch/core';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { titleOf } from '../project/project.js';
import type { Session } from '../project/session.js';
import { counted } from '../view/figures.js';
import { SessionWatch } from '../view/session-watch.js';
import type { Tile } from '../work/fabric-tile.js';
import type { Piece } from '../work/messages.js';
import { reasonOf } from '../work/reason.js';
import './dialogs/draw-dialog.js';
import './palette/palette.js';
import './sheet/sheet.js';
import type { DialogDone, DialogPage, DrawDialog } from './dialogs/draw-dialog.js';
import { NEW_CHART, RENAME, REPEAT, RESIZE } from './dialogs/forms.js';
import { areaInWords, wholeOf } from './edit/area.js';
import { colourName, firstDrawn, knotsByColour, relegended } from './edit/colours.js';
import { pastedWithRoom, patchOf } from './edit/patch.js';
import type { Place } from './edit/place.js';
import { NO_SYMMETRY } from './edit/symmetry.js';
import { knotAspect } from './knot-aspect.js';
import type { ColourUses, PaletteEdit } from './palette/palette.js';
import { type ChangingWish, lineButtons, selectionButtons } from './panels/changing.js';
import { keyHelp } from './panels/key-help.js';
import { outcome } from './panels/outcome.js';
import { symmetries } from './panels/symmetries.js';
import { toolBar } from './panels/tool-bar.js';
import type { SheetAsk, SheetEdit, SheetSettings } from './sheet/events.js';
import type { Mark } from './sheet/marks.js';
import type { Sheet } from './sheet/sheet.js';
import { cellInWords, rowInWords } from './sheet/words.js';

/** Where all stands in one column, and only what is wrong is laid open. */
const NARROW = '(max-width: 56rem)';

const NO_MARKS: readonly Mark[] = [];

/** Where a chart is drawn, and where its verdict is seen while it is. */
export class DrawView extends LitElement {
  static override properties = {
    session: { attribute: false },
    settings: { state: true },
    aspect: { state: true },
    said: { state: true },
    problem: { state: true },
    warnings: { state: true },
    narrow: { state: true },
    easing: { state: true },
  };

  declare session: Session | null;
  declare private settings: SheetSettings;
  /** Width of a knot by its height; null until it is worked out. */
  declare private aspect: number | null;
  declare private said: string;
  declare private problem: string;
  declare private warnings: readonly string[];
  declare private narrow: boolean;
  /** Whether advice is being given. */
  declare private easing: boolean;

  private readonly width = matchMedia(NARROW);
  private project: string | null = null;
  private marked: { of: Piece; marks: readonly Mark[] } | null = null;
  private warned: Chart | null = null;
  private shownColour = -1;
  private counted: { readonly of: Chart; readonly uses: ColourUses } | null = null;

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
    this.warnings = [];
    this.narrow = this.width.matches;
    this.easing = false;
    new SessionWatch(this, ['open', 'project', 'piece', 'busy']);
  }

  /** In the page itself, so that its style sheet, find and print reach everything. */
  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.width.addEventListener('change', this.onWidth);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.width.removeEventListener('change', this.onWidth);
  }

  private readonly onWidth = (): void => {
    this.narrow = this.width.matches;
  };

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
    this.problem = '';
    try {
      act();
    } catch (error) {
      this.problem = reasonOf(error);
    }
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
    const many = knotsByColour(chart);
    const order = many.map((_, place) => place).sort((a, b) => (many[b] ?? 0) - (many[a] ?? 0));
    this.choose({ ground: order[0] ?? 0, colour: order[1] ?? 0 });
    this.said = '';
    this.problem = '';
    this.sheet?.reset();
  }

  protected override updated(): void {
    const { session, sheet, chart, aspect, piece } = this;
    const project = session?.alpha;
    if (project == null || sheet === null || chart === null) return;
    sheet.set(this.settings);
    void this.findAspect();
    if (aspect !== null) sheet.show(chart, project.choice.start, aspect);
    sheet.found(piece === null ? NO_MARKS : this.marksOf(piece), piece?.chart ?? null);
    if (piece?.chart === chart) void this.findWarnings(chart);
    this.showChip();
  }

  /** Brings the colour that is drawn in into sight of its list, not of the page. */
  private showChip(): void {
    const list = this.querySelector<HTMLElement>('.draw-colours');
    const chip = list?.querySelector<HTMLElement>('.chip[aria-pressed=true]') ?? null;
    if (list === null || chip === null || this.shownColour === this.settings.colour) return;
    this.shownColour = this.settings.colour;
    list.scrollLeft = chip.offsetLeft - (list.clientWidth - chip.offsetWidth) / 2;
    list.scrollTop = chip.offsetTop - (list.clientHeight - chip.offsetHeight) / 2;
  }

  /** The last that was worked out of this project. */
  private get piece(): Piece | null {
    const { session } = this;
    const piece = session?.piece ?? null;
    return piece?.id === session?.alpha?.id ? piece : null;
  }

  private marksOf(piece: Piece): readonly Mark[] {
    if (this.marked?.of !== piece) {
      const marks = piece.findings.flatMap(({ grade, row, column, message }): Mark[] => {
        if (row === null) return [];
        return [{ grade, row: row - 1, column: column === null ? null : column - 1, message }];
      });
      this.marked = { of: piece, marks };
    }
    return this.marked.marks;
  }

  private async findAspect(): Promise<void> {
    const project = this.session?.alpha;
    if (project == null) return;
    const aspect = await knotAspect(project.choice, project.cut);
    if (this.session?.alpha?.id !== project.id) return;
    // Knots of a wrong shape can be drawn on; no knots can't.
    this.aspect = aspect ?? this.aspect ?? 1;
  }

  private async findWarnings(chart: Chart): Promise<void> {
    if (this.warned === chart) return;
    this.warned = chart;
    const { colourWarnings } = await import('../colour/index.js');
    if (this.warned === chart) this.warnings = colourWarnings(chart);
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
          ${this.narrow ? nothing : this.symmetries()}
        </div>
        ${this.board(chart)}
        <div class="draw-side">
          <section class="card" aria-labelledby="outcome-name">
            <h2 id="outcome-name">What comes of it</h2>
            ${outcome(this.piece, this.piece?.chart === chart, this.narrow, (place) =>
              sheet?.goTo(place, { focus: true }),
            )}
          </section>
          ${this.changing(chart)} ${this.legend(chart)} ${this.easier()}
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
      <p class="draw-here">${this.hereInWords(chart)}</p>
      <p class="draw-said" role="status">${this.said}</p>
      ${
        this.problem === ''
          ? nothing
          : html`<p class="field-error draw-problem" role="alert">${this.problem}</p>`
      }
      ${keyHelp()}
    </section>`;
  }

  private opening(label: string, page: DialogPage): TemplateResult {
    return html`<button
      type="button"
      aria-haspopup="dialog"
      @click=${() => this.querySelector<DrawDialog>('halfhitch-draw-dialog')?.open(page)}
    >
      ${label}
    </button>`;
  }

  private looks(): TemplateResult {
    const { sheet } = this;
    const look = (name: 'signs' | 'asThread' | 'repeat', label: string, about: string) => {
      const on = this.settings[name];
      return html`<button
        type="button"
        title=${about}
        aria-pressed=${String(on)}
        @click=${() => this.choose({ [name]: !on })}
      >${label}</button>`;
    };
    return html`<div class="draw-row draw-look" role="group" aria-label="How the chart is shown">
      <button
        type="button"
        aria-label="Smaller"
        title="Smaller (−)"
        @click=${() => sheet?.zoomBy(-1)}
      >−</button>
      <button
        type="button"
        aria-label="Larger"
        title="Larger (+)"
        @click=${() => sheet?.zoomBy(1)}
      >+</button>
      <button type="button" @click=${() => sheet?.fit()}>Whole width</button>
      ${look('signs', 'Signs', 'Mark each colour with a sign as well (H)')}
      ${look('asThread', 'As thread', 'Show the knots as they come out')}
      ${look('repeat', 'Repeat', 'Show the drawing again above and below; the chart stays as it is')}
    </div>`;
  }

  private hereInWords(chart: Chart): string {
    const { sheet, session } = this;
    if (sheet === null) return '';
    const { here, selected } = sheet.drawing;
    const start = session?.alpha?.choice.start ?? 'left';
    const words =
      here.row < chart.rows && here.column < chart.columns
        ? `${cellInWords(chart, here)}. ${rowInWords(start, here.row)}`
        : '';
    return selected === null ? words : `${words} Selected: ${areaInWords(selected)}.`;
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
    return html`<section class="card" aria-labelledby="changing-name">
      <h2 id="changing-name">Change</h2>
      ${this.narrow ? this.symmetries() : nothing}
      ${selectionButtons(wish)} ${lineButtons('rows', wish)} ${lineButtons('columns', wish)}
      <h3>Whole chart</h3>
      <div class="draw-row">
        ${this.opening('Another size', { kind: 'form', form: RESIZE })}
        ${this.opening('Again and again', { kind: 'form', form: REPEAT })}
      </div>
    </section>`;
  }

  private legend(chart: Chart): TemplateResult {
    const { settings, warnings } = this;
    return html`<section class="card draw-legend" aria-labelledby="legend-name">
      <h2 id="legend-name">Colours</h2>
      <halfhitch-palette
        .colours=${chart.colours}
        .uses=${this.usesOf(chart)}
        .colour=${settings.colour}
        .ground=${settings.ground}
        @palette-edit=${({ detail }: CustomEvent<PaletteEdit>) => this.onPalette(detail)}
        @palette-ground=${({ detail }: CustomEvent<number>) => this.choose({ ground: detail })}
      ></halfhitch-palette>
      ${
        warnings.length === 0
          ? nothing
          : html`<details class="draw-warnings" ?open=${warnings.length <= 2}>
            <summary>Hard to tell apart: ${warnings.length}</summary>
            <ul class="notices">
              ${warnings.slice(0, 20).map((warning) => html`<li>${warning}</li>`)}
            </ul>
          </details>`
      }
    </section>`;
  }

  /** Looked through anew after every stroke, it would take the device's breath: only when opened. */
  private easier(): TemplateResult {
    return html`<details
      class="card draw-easier"
      @toggle=${(event: Event) => this.onEasier((event.target as HTMLDetailsElement).open)}
    >
      <summary>Advice</summary>
      ${
        this.easing
          ? html`<halfhitch-ease
              .session=${this.session}
              @place=${({ detail }: CustomEvent<Place>) => this.sheet?.goTo(detail, { focus: true })}
            ></halfhitch-ease>`
          : nothing
      }
    </details>`;
  }

  private async onEasier(open: boolean): Promise<void> {
    if (open) await import('../ease/ease-panel.js');
    this.easing = open;
  }

  private onPalette({ what, colour, ...legend }: PaletteEdit): void {
    const { chart } = this;
    if (chart === null) return;
    const { ground } = this.settings;
    this.choose({ colour, ground: legend.places[ground] ?? ground });
    this.edit(relegended(chart, legend), what);
  }

  private usesOf(chart: Chart): ColourUses {
    if (this.counted?.of !== chart) {
      const uses: ColourUses = {
        many: knotsByColour(chart),
        inWords: (many) => `Drawn in ${counted(many, 'knot')}.`,
        first: (colour) => firstDrawn(chart, colour),
      };
      this.counted = { of: chart, uses };
    }
    return this.counted.uses;
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
