import { type Chart, changesInWords } from '@halfhitch/core';
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { titleOf } from '../project/project.js';
import type { Session } from '../project/session.js';
import { SessionWatch } from '../view/session-watch.js';
import { verdict } from '../view/verdict.js';
import type { Tile } from '../work/fabric-tile.js';
import type { Piece } from '../work/messages.js';
import './palette/palette.js';
import './palette/sample.js';
import './sheet/sheet.js';
import { type ChartForm, NEW_CHART, RENAME, REPEAT, RESIZE } from './dialogs/forms.js';
import { type ChartMade, MAKERS, type MakerName } from './dialogs/makers.js';
import { type Area, areaInWords, wholeOf } from './edit/area.js';
import { colourName, knotsByColour } from './edit/colours.js';
import { type Across, deleted, duplicated, inserted } from './edit/lines-of-knots.js';
import { patchOf } from './edit/patch.js';
import { NO_SYMMETRY, type Symmetry } from './edit/symmetry.js';
import { knotAspect } from './knot-aspect.js';
import type { PaletteEdit } from './palette/palette.js';
import type { Mark } from './sheet/marks.js';
import {
  cellInWords,
  rowInWords,
  type Sheet,
  type SheetAsk,
  type SheetEdit,
  type SheetSettings,
} from './sheet/sheet.js';
import { toolIcon } from './tools/icons.js';
import { TOOLS, type ToolName, toolInWords } from './tools/tools.js';

type Dialog =
  | { readonly kind: 'form'; readonly form: ChartForm }
  | { readonly kind: 'maker'; readonly maker: MakerName }
  | { readonly kind: 'made'; readonly made: ChartMade };

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
    dialog: { state: true },
    loaded: { state: true },
    warnings: { state: true },
    narrow: { state: true },
  };

  declare session: Session | null;
  declare private settings: SheetSettings;
  declare private aspect: number | null;
  declare private said: string;
  declare private problem: string;
  declare private dialog: Dialog | null;
  /** Makers whose script has come. */
  declare private loaded: ReadonlySet<MakerName>;
  declare private warnings: readonly string[];
  declare private narrow: boolean;

  private readonly width = matchMedia(NARROW);
  private project: string | null = null;
  private marked: { of: Piece; marks: readonly Mark[] } | null = null;
  private warned: Chart | null = null;

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
    this.dialog = null;
    this.loaded = new Set();
    this.warnings = [];
    this.narrow = this.width.matches;
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
    return this.session?.project?.chart ?? null;
  }

  private get sheet(): Sheet | null {
    return this.querySelector('halfhitch-sheet');
  }

  private choose(change: Partial<SheetSettings>): void {
    this.settings = { ...this.settings, ...change };
  }

  private edit(chart: Chart, what: string): void {
    this.problem = '';
    this.said = '';
    if (this.chart?.knots !== undefined && chart.knots === undefined) {
      this.said =
        'The kinds of knots that came with the chart no longer fit its size; they are worked out anew.';
    }
    if (chart !== this.chart) this.session?.edit({ chart }, what);
  }

  /** Does what may not be possible, and says why it is not. */
  private attempt(make: () => void): void {
    try {
      make();
    } catch (error) {
      this.problem = error instanceof Error ? error.message : String(error);
    }
  }

  // ---- following the session ----

  protected override willUpdate(): void {
    const { session, chart } = this;
    const id = session?.project?.id ?? null;
    if (chart === null) return;
    if (id !== this.project) {
      this.project = id;
      this.begin(chart);
    }
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

  protected override updated(changes: PropertyValues): void {
    const { session, sheet, chart, aspect } = this;
    const project = session?.project;
    if (project == null || sheet === null || chart === null) return;
    sheet.set(this.settings);
    void this.findAspect();
    if (aspect !== null) sheet.show(chart, project.choice.start, aspect);
    const piece = this.piece;
    sheet.found(piece === null ? NO_MARKS : this.marksOf(piece), piece?.chart ?? null);
    if (piece?.chart === chart) void this.findWarnings(chart);
    const dialog = this.querySelector('dialog');
    if (changes.has('dialog') && dialog !== null && !dialog.open) dialog.showModal();
  }

  /** The last that was worked out of this project. */
  private get piece(): Piece | null {
    const { session } = this;
    const piece = session?.piece ?? null;
    return piece?.id === session?.project?.id ? piece : null;
  }

  private marksOf(piece: Piece): readonly Mark[] {
    if (this.marked?.of !== piece) {
      const marks = piece.findings.flatMap(({ grade, row, column, message }): Mark[] =>
        row === null
          ? []
          : [{ grade, row: row - 1, column: column === null ? null : column - 1, message }],
      );
      this.marked = { of: piece, marks };
    }
    return this.marked.marks;
  }

  private async findAspect(): Promise<void> {
    const project = this.session?.project;
    if (project == null) return;
    const aspect = await knotAspect(project.choice, project.cut);
    if (aspect !== null && this.session?.project?.id === project.id) this.aspect = aspect;
    // Knots of a wrong shape can be drawn on; no knots can't.
    else if (aspect === null) this.aspect ??= 1;
  }

  private async findWarnings(chart: Chart): Promise<void> {
    if (this.warned === chart) return;
    this.warned = chart;
    const { colourWarnings } = await import('../colour/index.js');
    if (this.warned === chart) this.warnings = colourWarnings(chart);
  }

  // ---- the page ----

  protected override render(): TemplateResult {
    const { chart } = this;
    if (chart === null) return html`${nothing}`;
    return html`
      <div class="draw">
        ${this.bar(chart)}
        ${this.board(chart)}
        <div class="draw-side">
          ${this.outcome(chart)} ${this.changing()} ${this.legend(chart)}
        </div>
      </div>
      ${this.dialog === null ? nothing : this.dialogOf(chart, this.dialog)}
    `;
  }

  private board(chart: Chart): TemplateResult {
    const { session } = this;
    return html`<section class="card draw-board" aria-labelledby="draw-name">
      <div class="bar draw-head">
        <div class="draw-title">
          <h2 id="draw-name">${session?.project == null ? '' : titleOf(session.project)}</h2>
          <p class="size">
            ${chart.rows.toLocaleString('en-GB')} ${chart.rows === 1 ? 'row' : 'rows'} of
            ${chart.columns} ${chart.columns === 1 ? 'knot' : 'knots'}
          </p>
        </div>
        <div class="draw-row draw-make">
          ${this.opening('New chart', { kind: 'form', form: NEW_CHART })}
          ${this.opening('Rename', { kind: 'form', form: RENAME })}
          ${this.opening('Letters', { kind: 'maker', maker: 'letters' })}
          ${this.opening('From a picture', { kind: 'maker', maker: 'picture' })}
        </div>
      </div>
      <div class="draw-row draw-look" role="group" aria-label="How the chart is shown">
        <button type="button" aria-label="Smaller" title="Smaller (−)" @click=${() => this.sheet?.zoomBy(-1)}>−</button>
        <button type="button" aria-label="Larger" title="Larger (+)" @click=${() => this.sheet?.zoomBy(1)}>+</button>
        <button type="button" @click=${() => this.sheet?.fit()}>Whole width</button>
        ${this.looking('signs', 'Signs', 'Mark each colour with a sign as well (H)')}
        ${this.looking('asThread', 'As thread', 'Show the knots as they come out')}
        ${this.looking('repeat', 'Repeat', 'Show the drawing again above and below; the chart stays as it is')}
      </div>
      <halfhitch-sheet
        .drawTile=${(tile: Tile) => this.drawTile(tile)}
        @draw-edit=${(event: CustomEvent<SheetEdit>) => this.edit(event.detail.chart, event.detail.what)}
        @draw-ask=${(event: CustomEvent<SheetAsk>) => this.onAsk(event.detail)}
        @draw-place=${() => this.requestUpdate()}
      ></halfhitch-sheet>
      <p class="draw-here">${this.hereInWords(chart)}</p>
      <p class="draw-said" role="status">${this.said}</p>
      ${
        this.problem === ''
          ? nothing
          : html`<p class="field-error draw-problem" role="alert">${this.problem}</p>`
      }
      <details class="draw-keys">
        <summary>By keys, by hand</summary>
        <p>
          With the chart in focus: arrows from knot to knot, <kbd>Enter</kbd> or the space bar draws,
          <kbd>Shift</kbd> with arrows selects, <kbd>Alt</kbd> with arrows moves what is selected.
          ${TOOLS.map(({ label, key }) => html`<kbd>${key.toUpperCase()}</kbd> ${label}, `)} digits
          or <kbd>[</kbd> <kbd>]</kbd> choose a colour, <kbd>+</kbd> <kbd>−</kbd> the size,
          <kbd>Ctrl</kbd> with <kbd>C</kbd> <kbd>X</kbd> <kbd>V</kbd> copy, cut and paste,
          <kbd>Delete</kbd> empties, <kbd>Escape</kbd> gives up.
        </p>
        <p>
          Two fingers push and zoom. With a mouse: hold the space bar and drag, or use the wheel, with
          <kbd>Ctrl</kbd> to zoom. Each row's number stands on the side where the row begins, and the
          line beside the rows is the way of the lead from one to the next.
        </p>
      </details>
    </section>`;
  }

  private opening(label: string, dialog: Dialog): TemplateResult {
    return html`<button type="button" aria-haspopup="dialog" @click=${() => this.open(dialog)}>
      ${label}
    </button>`;
  }

  private looking(
    name: 'signs' | 'asThread' | 'repeat',
    label: string,
    about: string,
  ): TemplateResult {
    const on = this.settings[name];
    return html`<button
      type="button"
      title=${about}
      aria-pressed=${String(on)}
      @click=${() => this.choose({ [name]: !on })}
    >${label}</button>`;
  }

  private hereInWords(chart: Chart): string {
    const { sheet, session } = this;
    if (sheet === null) return '';
    const place = sheet.place;
    const inside = place.row < chart.rows && place.column < chart.columns;
    const here = inside
      ? `${cellInWords(chart, place)}. ${rowInWords(session?.project?.choice.start ?? 'left', place.row)}`
      : '';
    const { selection } = sheet;
    return selection === null ? here : `${here} Selected: ${areaInWords(selection)}.`;
  }

  private bar(chart: Chart): TemplateResult {
    const { session, settings } = this;
    return html`<div class="card draw-bar">
      <div class="draw-tools" role="group" aria-label="Tools">
        ${TOOLS.map(
          (tool) => html`<button
            type="button"
            class="tool"
            title=${toolInWords(tool)}
            aria-pressed=${String(settings.tool === tool.name)}
            aria-keyshortcuts=${tool.key}
            @click=${() => this.choose({ tool: tool.name })}
          >${toolIcon(tool.name)}<span>${tool.label}</span></button>`,
        )}
        <button
          type="button"
          class="tool crossing"
          aria-disabled=${String(session?.undoing == null)}
          title=${session?.undoing == null ? 'Nothing to take back' : `Take back: ${session.undoing}`}
          @click=${() => session?.undo()}
        ><svg class="tool-icon" viewBox="0 0 24 24" aria-hidden="true"><path d="M9 5 4.5 9.5 9 14M5 9.5h9a5 5 0 0 1 0 10h-4" /></svg><span>Take back</span></button>
      </div>
      <div class="draw-colours" role="group" aria-label="Colours">
        ${chart.colours.map((colour, place) => {
          const key = place < 10 ? ` (${(place + 1) % 10})` : '';
          return html`<button
            type="button"
            class="chip"
            title=${`Draw in ${colourName(colour)}${key}`}
            aria-pressed=${String(settings.colour === place)}
            @click=${() => this.choose({ colour: place })}
          >
            <halfhitch-sample .colour=${{ hex: colour.hex, place }}></halfhitch-sample>
            <span class="chip-number" aria-hidden="true">${place + 1}</span>
            <span class="chip-name">${colourName(colour)}</span>
          </button>`;
        })}
      </div>
      ${this.narrow ? nothing : this.symmetries()}
    </div>`;
  }

  private symmetries(): TemplateResult {
    return html`<fieldset class="draw-symmetry">
      <legend>Drawn alike</legend>
      ${this.symmetry('sides', 'both sides')} ${this.symmetry('ends', 'both ends')}
      ${this.symmetry('turn', 'turned by half')}
    </fieldset>`;
  }

  private symmetry(way: keyof Symmetry, label: string): TemplateResult {
    const { symmetry } = this.settings;
    return html`<label class="check">
      <input
        type="checkbox"
        .checked=${symmetry[way]}
        @change=${() => this.choose({ symmetry: { ...symmetry, [way]: !symmetry[way] } })}
      />
      ${label}
    </label>`;
  }

  private outcome(chart: Chart): TemplateResult {
    const { piece } = this;
    const latest = piece?.chart === chart;
    return html`<section class="card draw-outcome" aria-labelledby="outcome-name">
      <h2 id="outcome-name">What comes of it</h2>
      <p class="draw-working">${latest ? 'Worked out from the chart as it stands.' : 'Working it out …'}</p>
      ${
        piece === null
          ? nothing
          : html`<div class=${latest ? '' : 'draw-older'}>
            ${verdict(
              piece,
              changesInWords(piece.changes),
              (place) => this.sheet?.goTo(place, { focus: true }),
              this.narrow,
            )}
          </div>`
      }
    </section>`;
  }

  private changing(): TemplateResult {
    const selection = this.sheet?.selection ?? null;
    const where = selection === null ? 'the whole chart' : areaInWords(selection);
    return html`<section class="card draw-changing" aria-labelledby="changing-name">
      <h2 id="changing-name">Change</h2>
      ${this.narrow ? this.symmetries() : nothing}
      <h3>Selection</h3>
      <p class="hint">Now: ${where}.</p>
      <div class="draw-row">
        ${this.doing('Mirror left to right', (sheet) => sheet.mirror('sides'))}
        ${this.doing('Mirror top to bottom', (sheet) => sheet.mirror('ends'))}
        ${this.doing('Turn by half', (sheet) => sheet.mirror('turn'))}
        ${this.doing('Copy', (sheet) => sheet.copySelection())}
        ${this.doing('Cut', (sheet) => sheet.cutSelection())}
        ${this.doing('Paste', (sheet) => sheet.paste())}
        ${this.doing('Empty', (sheet) => sheet.empty(), selection === null)}
        ${this.doing('Select all', (sheet) => sheet.select(sheet.area === null ? null : wholeOf(this.chart as Chart)))}
        ${this.doing('Select nothing', (sheet) => sheet.select(null), selection === null)}
      </div>
      ${this.lines('rows', 'Rows', 'above', 'below')}
      ${this.lines('columns', 'Columns', 'on the left', 'on the right')}
      <h3>Whole chart</h3>
      <div class="draw-row">
        ${this.opening('Another size', { kind: 'form', form: RESIZE })}
        ${this.opening('Again and again', { kind: 'form', form: REPEAT })}
      </div>
    </section>`;
  }

  private doing(label: string, act: (sheet: Sheet) => void, disabled = false): TemplateResult {
    return html`<button
      type="button"
      aria-disabled=${String(disabled)}
      @click=${() => {
        const { sheet } = this;
        if (!disabled && sheet !== null) this.attempt(() => act(sheet));
      }}
    >${label}</button>`;
  }

  private lines(across: Across, name: string, before: string, after: string): TemplateResult {
    const { at, many } = this.linesHere(across);
    const one = across === 'rows' ? 'row' : 'column';
    const which = many === 1 ? `${one} ${at + 1}` : `${across} ${at + 1} to ${at + many}`;
    const ground = this.settings.ground;
    const act = (make: (chart: Chart) => Chart, what: string) => () => {
      const { chart } = this;
      if (chart !== null) this.attempt(() => this.edit(make(chart), what));
    };
    return html`
      <h3>${name}</h3>
      <p class="hint">At ${which}.</p>
      <div class="draw-row" role="group" aria-label=${name}>
        <button type="button" @click=${act((chart) => inserted(chart, across, at, many, ground), `Put in ${across}`)}>
          New ${before}
        </button>
        <button type="button" @click=${act((chart) => inserted(chart, across, at + many, many, ground), `Put in ${across}`)}>
          New ${after}
        </button>
        <button type="button" @click=${act((chart) => duplicated(chart, across, at, many), `Double ${across}`)}>
          Double
        </button>
        <button type="button" @click=${act((chart) => deleted(chart, across, at, many), `Take ${across} out`)}>
          Take out
        </button>
      </div>
    `;
  }

  /** Those of the selection, or the one that the cursor is in. */
  private linesHere(across: Across): { readonly at: number; readonly many: number } {
    const { sheet } = this;
    const one = across === 'rows' ? 'row' : 'column';
    const selection: Area | null = sheet?.selection ?? null;
    if (selection !== null) return { at: selection[one], many: selection[across] };
    const last = (this.chart?.[across] ?? 1) - 1;
    return { at: Math.min(last, sheet?.place[one] ?? 0), many: 1 };
  }

  private legend(chart: Chart): TemplateResult {
    const { settings, warnings } = this;
    return html`<section class="card draw-legend" aria-labelledby="legend-name">
      <h2 id="legend-name">Colours</h2>
      <halfhitch-palette
        .chart=${chart}
        .colour=${settings.colour}
        .ground=${settings.ground}
        @palette-edit=${(event: CustomEvent<PaletteEdit>) => this.onPalette(event.detail)}
        @palette-ground=${(event: CustomEvent<number>) => this.choose({ ground: event.detail })}
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

  private onPalette({ chart, what, colour, places }: PaletteEdit): void {
    this.choose({ colour, ground: places?.[this.settings.ground] ?? this.settings.ground });
    this.edit(chart, what);
  }

  private onAsk(asked: SheetAsk): void {
    switch (asked.ask) {
      case 'tool':
        this.choose({ tool: asked.tool satisfies ToolName });
        break;
      case 'colour':
        this.choose({ colour: asked.colour });
        this.said = `Drawing in ${this.colourInWords(asked.colour)}.`;
        break;
      case 'signs':
        this.choose({ signs: !this.settings.signs });
        break;
      case 'say':
        this.said = asked.text;
        break;
    }
  }

  private colourInWords(place: number): string {
    const colour = this.chart?.colours[place];
    return colour === undefined ? 'no colour' : colourName(colour);
  }

  private drawTile(tile: Tile): Promise<string> {
    if (this.session === null) return Promise.reject(new Error('There is no session.'));
    return this.session.desk.ask({ ask: 'tile', tile });
  }

  // ---- dialogs ----

  private open(dialog: Dialog): void {
    this.problem = '';
    this.dialog = dialog;
    if (dialog.kind !== 'maker' || this.loaded.has(dialog.maker)) return;
    const { maker } = dialog;
    MAKERS[maker].load().then(
      () => {
        this.loaded = new Set([...this.loaded, maker]);
      },
      () => {
        this.close();
        this.problem = `“${MAKERS[maker].title}” could not be loaded. Check the connection, and load the page anew.`;
      },
    );
  }

  private close(): void {
    this.querySelector('dialog')?.close();
    this.dialog = null;
  }

  private dialogOf(chart: Chart, dialog: Dialog): TemplateResult {
    const title =
      dialog.kind === 'form'
        ? dialog.form.title
        : dialog.kind === 'maker'
          ? MAKERS[dialog.maker].title
          : 'Where to?';
    return html`<dialog
      class="card draw-dialog ${dialog.kind}"
      aria-labelledby="dialog-name"
      @close=${(event: Event) => {
        if (event.target === event.currentTarget) this.dialog = null;
      }}
    >
      <div class="bar">
        <h2 id="dialog-name">${title}</h2>
        <button type="button" @click=${() => this.close()}>Close</button>
      </div>
      ${
        dialog.kind === 'form'
          ? this.formOf(chart, dialog.form)
          : dialog.kind === 'maker'
            ? this.makerOf(dialog.maker)
            : this.whereTo(chart, dialog.made)
      }
    </dialog>`;
  }

  private formOf(chart: Chart, form: ChartForm): TemplateResult {
    return html`<form
      novalidate
      @submit=${(event: Event) => {
        event.preventDefault();
        const answers = new FormData(event.target as HTMLFormElement);
        this.problem = '';
        this.attempt(() => {
          const made = form.make(chart, answers, this.settings.ground);
          this.close();
          if (form.what === null) this.session?.openChart(made);
          else this.edit(made, form.what);
        });
      }}
    >
      ${form.fields(chart)}
      ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
      <div class="draw-row"><button class="primary" type="submit">${form.button}</button></div>
    </form>`;
  }

  private makerOf(maker: MakerName): TemplateResult {
    return html`<div
      @chart-made=${(event: CustomEvent<ChartMade>) => {
        this.querySelector('dialog')?.close();
        this.dialog = { kind: 'made', made: event.detail };
      }}
    >
      ${this.loaded.has(maker) ? MAKERS[maker].show() : html`<p>One moment …</p>`}
    </div>`;
  }

  private whereTo(chart: Chart, { chart: made, what }: ChartMade): TemplateResult {
    const at = this.sheet?.selection ?? this.sheet?.place ?? { row: 0, column: 0 };
    const fits =
      at.row + made.rows <= chart.rows && at.column + made.columns <= chart.columns
        ? ''
        : ' What goes over the side is left out.';
    return html`
      <p>${made.rows} rows of ${made.columns} knots.</p>
      <div class="draw-row">
        <button
          type="button"
          class="primary"
          @click=${() => {
            this.close();
            this.session?.openChart(made);
          }}
        >
          Open as a new piece
        </button>
        <button
          type="button"
          @click=${() => {
            this.close();
            this.attempt(() => this.sheet?.putIn(patchOf(made, wholeOf(made)), what));
          }}
        >
          Put into the open chart
        </button>
      </div>
      <p class="hint">
        In the open chart its top left knot comes to row ${at.row + 1}, column ${at.column + 1}.${fits}
      </p>
    `;
  }
}

customElements.define('halfhitch-draw', DrawView);
