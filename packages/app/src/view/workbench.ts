import '@halfhitch/simulator';
import '../cut/cut-panel.js';
import '../mistakes/try-panel.js';
import '../mistakes/wrong-panel.js';
import { changesInWords, type KnotReading, mirrorKnot } from '@halfhitch/core';
import type { HalfhitchKnot, HalfhitchRow } from '@halfhitch/simulator';
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { MistakesDesk } from '../mistakes/desk.js';
import type { MistakePlace } from '../mistakes/messages.js';
import { Desk, WorkError } from '../work/desk.js';
import type { Tile } from '../work/fabric-tile.js';
import type { KnotChoice, Piece, RowSheet } from '../work/messages.js';
import { burgee } from './burgee.js';
import { cautions } from './cautions.js';
import './fabric-picture.js';
import './swatch.js';
import type { FabricPicture, Place, PlaceDetail } from './fabric-picture.js';
import { rowInstructions } from './row-instructions.js';
import { verdict } from './verdict.js';

const demos = import.meta.glob<string>('../../../../examples/otter.json', {
  query: '?raw',
  import: 'default',
});

/** Larger files are refused before they are read at all. */
const MOST_BYTES = 32 * 1024 * 1024;

type Playing = 'knot' | 'row';

/** Where all stands in one column, and the picture must come before what is seldom changed. */
const NARROW = '(max-width: 56rem)';

/**
 * The page. Names, legends and messages come from files, so they are only ever set as text: no
 * markup is made from them here, and the page's policy lets none become script.
 */
export class Workbench extends LitElement {
  static override properties = {
    piece: { state: true },
    sheet: { state: true },
    place: { state: true },
    problem: { state: true },
    news: { state: true },
    busy: { state: true },
    dragging: { state: true },
    playing: { state: true },
    mirror: { state: true },
    narrow: { state: true },
    asked: { state: true },
  };

  declare private piece: Piece | null;
  declare private sheet: RowSheet | null;
  declare private place: Place;
  declare private problem: string;
  declare private news: string;
  declare private busy: boolean;
  declare private dragging: boolean;
  declare private playing: Playing;
  declare private mirror: boolean;
  declare private narrow: boolean;
  /** What is chosen in the options, also while it is being worked out. */
  declare private asked: KnotChoice;

  private readonly desk = new Desk();
  private readonly mistakesDesk = new MistakesDesk();
  private readonly width = matchMedia(NARROW);
  private opened = 0;
  private playNext = false;

  constructor() {
    super();
    this.piece = null;
    this.sheet = null;
    this.place = { row: 0, column: 0 };
    this.problem = '';
    this.news = '';
    this.busy = false;
    this.dragging = false;
    this.playing = 'knot';
    this.mirror = false;
    this.narrow = this.width.matches;
    this.asked = { edge: 'straight', start: 'left' };
  }

  /** In the page itself, so that its style sheet, find and print reach everything. */
  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('dragover', this.onDragOver);
    addEventListener('dragleave', this.onDragLeave);
    addEventListener('drop', this.onDrop);
    this.width.addEventListener('change', this.onWidth);
    void this.openDemo();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('dragover', this.onDragOver);
    removeEventListener('dragleave', this.onDragLeave);
    removeEventListener('drop', this.onDrop);
    this.width.removeEventListener('change', this.onWidth);
  }

  private readonly onWidth = (): void => {
    this.narrow = this.width.matches;
  };

  // ---- charts ----

  private async openDemo(): Promise<void> {
    const [load] = Object.values(demos);
    if (load === undefined) return;
    const text = await load();
    await this.open(new TextEncoder().encode(text), 'otter.json');
  }

  private async openFile(file: File): Promise<void> {
    if (file.size > MOST_BYTES) {
      this.problem = `${file.name}: The file is larger than 32 MiB, so it cannot be a chart. Choose a PNG with one pixel for each knot, a text chart or a chart document.`;
      return;
    }
    try {
      await this.open(new Uint8Array(await file.arrayBuffer()), file.name);
    } catch {
      this.problem = `${file.name}: The file could not be read. Check that it is still there, and choose it again.`;
    }
  }

  private async open(bytes: Uint8Array, fileName: string): Promise<void> {
    const opened = ++this.opened;
    await this.work(opened, async () => {
      const piece = await this.desk.ask({ ask: 'open', bytes, fileName });
      if (opened !== this.opened) return;
      this.asked = piece.choice;
      await this.take(piece, { row: 0, column: 0 });
    });
  }

  private async choose(choice: Partial<KnotChoice>): Promise<void> {
    const opened = ++this.opened;
    this.asked = { ...this.asked, ...choice };
    await this.work(opened, async () => {
      const piece = await this.desk.ask({ ask: 'replan', choice: this.asked });
      if (opened !== this.opened) return;
      await this.take({ ...piece, chart: this.piece?.chart ?? piece.chart }, this.place);
    });
    if (this.piece !== null) this.asked = this.piece.choice;
  }

  private async work(opened: number, doing: () => Promise<void>): Promise<void> {
    this.busy = true;
    this.problem = '';
    try {
      await doing();
    } catch (error) {
      if (opened !== this.opened) return;
      this.problem =
        error instanceof WorkError ? error.message : 'Something went wrong. Load the page anew.';
    } finally {
      if (opened === this.opened) this.busy = false;
    }
  }

  private async take(piece: Piece, place: Place): Promise<void> {
    this.piece = piece;
    // Shown at once what the page is for, but not to those who want nothing to move by itself.
    this.playNext = !matchMedia('(prefers-reduced-motion: reduce)').matches;
    this.news = `${piece.name === '' ? 'The chart' : piece.name}: ${piece.ok ? 'knots out as drawn' : 'does not knot out as drawn'}.`;
    await this.updateComplete;
    this.fabric?.show(piece, place);
    await this.goTo(place);
  }

  private async goTo(place: Place): Promise<void> {
    const { piece } = this;
    if (piece === null) return;
    this.place = place;
    if (this.sheet === null || this.sheet.reading.row !== place.row || this.sheetOf !== piece) {
      try {
        const sheet = await this.desk.ask({ ask: 'row', row: place.row });
        if (this.place.row !== place.row || this.piece !== piece) return;
        this.sheet = sheet;
        this.sheetOf = piece;
      } catch (error) {
        this.sheet = null;
        this.problem = error instanceof WorkError ? error.message : 'The row could not be read.';
      }
    }
  }
  private sheetOf: Piece | null = null;

  // ---- the page ----

  protected override render(): TemplateResult {
    return html`
      ${this.letterhead()}
      <p class="unseen" role="status">${this.busy ? 'Working the chart out.' : this.news}</p>
      ${
        this.problem === ''
          ? nothing
          : html`<div class="problem" role="alert">
            <p>${this.problem}</p>
            ${this.piece === null ? nothing : html`<p>${this.keptInWords()}</p>`}
            <button type="button" @click=${() => {
              this.problem = '';
            }}>Close this message</button>
          </div>`
      }
      <main aria-busy=${this.busy ? 'true' : 'false'}>
        ${this.piece === null ? this.nothingYet() : this.bench(this.piece)}
      </main>
      ${cautions()}
      ${this.dragging ? html`<div class="drop" aria-hidden="true">Let go to open the chart</div>` : nothing}
    `;
  }

  private letterhead(): TemplateResult {
    return html`
      <header class="letterhead">
        <div class="name">${burgee()}<h1>Halfhitch</h1></div>
        <div class="open">
          <label class="button primary">
            Open a chart
            <input
              class="unseen"
              type="file"
              accept=".png,.txt,.json,image/png,text/plain,application/json"
              @change=${this.onFile}
            />
          </label>
          <button type="button" @click=${() => this.openDemo()}>Show the demo</button>
        </div>
      </header>
    `;
  }

  private nothingYet(): TemplateResult {
    return html`<section class="card welcome">
      <h2>${this.busy ? 'Working the chart out' : 'No chart is open'}</h2>
      <p>
        Open a chart or drop one here: a PNG with one pixel for each knot, a text chart, or a chart
        document. It stays on this device.
      </p>
    </section>`;
  }

  private bench(piece: Piece): TemplateResult {
    return html`
      <div class="bench">
        <section class="card about" aria-labelledby="piece-name">
          <h2 id="piece-name">${piece.name === '' ? 'A chart without a name' : piece.name}</h2>
          <p class="size">
            ${number(piece.rows)} ${piece.rows === 1 ? 'row' : 'rows'} of ${piece.columns}
            ${piece.columns === 1 ? 'knot' : 'knots'}
          </p>
          ${verdict(
            piece,
            changesInWords(piece.changes),
            (place) => this.onFinding(place),
            this.narrow,
          )}
          ${
            piece.notices.length === 0
              ? nothing
              : html`<ul class="notices">
                ${piece.notices.map((notice) => html`<li>${notice}</li>`)}
              </ul>`
          }
        </section>
        ${this.narrow ? nothing : this.setup(piece)}
        <section class="card result" aria-labelledby="result-name">
          <div class="bar">
            <h2 id="result-name">The knotted piece</h2>
            <div class="zoom" role="group" aria-label="Size of the picture">
              <button type="button" aria-label="Smaller" @click=${() => this.fabric?.zoomBy(-1)}>−</button>
              <button type="button" aria-label="Larger" @click=${() => this.fabric?.zoomBy(1)}>+</button>
            </div>
          </div>
          <halfhitch-fabric
            .drawTile=${(tile: Tile) => this.desk.ask({ ask: 'tile', tile })}
            @place=${this.onPlace}
          ></halfhitch-fabric>
          <p class="hint">
            Choose a knot to watch it. By keys: arrows from knot to knot,
            <kbd>Home</kbd> <kbd>End</kbd> to the ends of the row, <kbd>Enter</kbd> plays it.
          </p>
        </section>
        <section class="card watch" aria-labelledby="watch-name">
          <div class="bar">
            <h2 id="watch-name">Watch it tied</h2>
            <fieldset class="switch">
              <legend class="unseen">What is played</legend>
              ${this.playingChoice('knot', 'One knot')} ${this.playingChoice('row', 'Whole row')}
            </fieldset>
          </div>
          ${this.stage()}
          <label class="check">
            <input
              type="checkbox"
              .checked=${this.mirror}
              @change=${(event: Event) => {
                this.mirror = (event.target as HTMLInputElement).checked;
              }}
            />
            Left-handed: mirror the 3D picture
          </label>
          ${this.mirror ? this.mirrored() : nothing}
        </section>
        ${this.sheet === null ? nothing : this.row(piece, this.sheet)}
      </div>
      <section class="card try-card" aria-labelledby="try-name">
        <halfhitch-try
          ?mirror=${this.mirror}
          .piece=${piece}
          .place=${this.place}
          .desk=${this.mistakesDesk}
        ></halfhitch-try>
      </section>
      <section class="card wrong-card" aria-labelledby="wrong-name">
        <halfhitch-wrong
          ?mirror=${this.mirror}
          .piece=${piece}
          .place=${this.place}
          .desk=${this.mistakesDesk}
          @mistake-place=${this.onMistakePlace}
        ></halfhitch-wrong>
      </section>
      <section class="card cut-card" aria-labelledby="cut-name">
        <halfhitch-cut .piece=${piece}></halfhitch-cut>
      </section>
      ${this.narrow ? this.setup(piece) : nothing}
    `;
  }

  /** The picture and the rows stay as they are: mirrored, they would no longer be the drawing. */
  private mirrored(): TemplateResult {
    return html`<p class="hand" role="status">
      <strong>Shown for the left hand: mirror image.</strong> The chart, its picture and the written
      rows stay as drawn. Worked in the mirror throughout, left and right change places in every
      row, and the piece comes out as the mirror image of the drawing: draw letters and numbers the
      wrong way round for that.
    </p>`;
  }

  private setup(piece: Piece): TemplateResult {
    return html`<section class="card setup" aria-labelledby="setup-name">
      <h2 id="setup-name">How it is knotted</h2>
      ${this.options()}
      <h3 class="legend-name">Colours</h3>
      <ul class="legend">
        ${piece.colours.map(
          (colour) => html`<li><halfhitch-swatch .colour=${colour.hex}></halfhitch-swatch>
            <span>${colour.name === '' ? colour.hex : colour.name}</span></li>`,
        )}
      </ul>
    </section>`;
  }

  private options(): TemplateResult {
    const { edge, start } = this.asked;
    return html`
      <div class="options">
        <label>
          Edges
          <select
            name="edge"
            @change=${(event: Event) => this.choose({ edge: chosenIn(event) as KnotChoice['edge'] })}
          >
            <option value="straight" ?selected=${edge === 'straight'}>straight</option>
            <option value="wrapped" ?selected=${edge === 'wrapped'}>wrapped</option>
          </select>
        </label>
        <label>
          First row from the
          <select
            name="start"
            @change=${(event: Event) => this.choose({ start: chosenIn(event) as KnotChoice['start'] })}
          >
            <option value="left" ?selected=${start === 'left'}>left</option>
            <option value="right" ?selected=${start === 'right'}>right</option>
          </select>
        </label>
      </div>
    `;
  }

  private playingChoice(value: Playing, name: string): TemplateResult {
    return html`<label>
      <input
        type="radio"
        name="playing"
        value=${value}
        .checked=${this.playing === value}
        @change=${() => {
          this.playing = value;
          this.playNext = false;
        }}
      />
      <span>${name}</span>
    </label>`;
  }

  private stage(): TemplateResult {
    const knot = this.knot;
    if (this.playing === 'row')
      return html`<halfhitch-row
        ?mirror=${this.mirror}
        @halfhitch-step=${this.onRowStep}
      ></halfhitch-row>`;
    if (knot === null) return html`<p>No knot here.</p>`;
    return html`
      <p class="which">
        ${this.knotName(knot)}${this.mirror ? `; mirrored: ${mirrorKnot(knot.kind)}` : nothing}
      </p>
      <halfhitch-knot
        ?mirror=${this.mirror}
        .kind=${knot.kind}
        .tyingColour=${knot.tying.colour}
        .heldColour=${knot.held.colour}
        .tyingName=${`lead ${knot.tying.id}`}
        .heldName=${`base string ${knot.column + 1}`}
      ></halfhitch-knot>
    `;
  }

  private row(piece: Piece, sheet: RowSheet): TemplateResult {
    const { row } = sheet.reading;
    return html`<section class="card row-card" aria-labelledby="row-name">
      <div class="bar">
        <h2 id="row-name">${sheet.instructions.heading}</h2>
        <div class="turner">
          <button
            type="button"
            aria-disabled=${row === 0 ? 'true' : 'false'}
            @click=${() => this.toRow(row - 1)}
          >
            Previous row
          </button>
          <button
            type="button"
            aria-disabled=${row + 1 >= piece.rows ? 'true' : 'false'}
            @click=${() => this.toRow(row + 1)}
          >
            Next row
          </button>
        </div>
      </div>
      ${rowInstructions(sheet.instructions, this.place.column, (column) =>
        this.pick({ row, column }, true),
      )}
    </section>`;
  }

  protected override updated(changes: PropertyValues): void {
    const row = this.querySelector<HalfhitchRow>('halfhitch-row');
    const { sheet, knot } = this;
    if (row !== null && sheet !== null) {
      if (row.reading !== sheet.reading) row.show(sheet.reading, sheet.previous);
      const placed = changes.has('place') || changes.has('sheet') || changes.has('playing');
      if (placed && knot !== null && row.knot !== knot.order) row.seekKnot(knot.order);
    }
    if (changes.has('place') || changes.has('sheet')) this.showPart();
    if (!this.playNext || knot === null) return;
    if (sheet?.reading.row !== this.place.row) return;
    this.playNext = false;
    void this.playFromStart();
  }

  /** Brings the part of the row with the chosen knot into sight of the list, not of the page. */
  private showPart(): void {
    const parts = this.querySelector<HTMLElement>('.parts');
    const part = parts?.querySelector<HTMLElement>('.current') ?? null;
    if (parts === null || part === null) return;
    const { scrollTop, clientHeight } = parts;
    const above = part.offsetTop < scrollTop;
    const below = part.offsetTop + part.offsetHeight > scrollTop + clientHeight;
    if (above || below) parts.scrollTop = part.offsetTop - clientHeight / 4;
  }

  /** Once its new kind has reached the element. */
  private async playFromStart(): Promise<void> {
    const stage = this.querySelector<HalfhitchKnot | HalfhitchRow>('halfhitch-knot, halfhitch-row');
    if (stage === null) return;
    await stage.updateComplete;
    if (this.playing === 'knot') stage.seek(0);
    stage.play();
  }

  // ---- places ----

  private get knot(): KnotReading | null {
    return this.sheet?.reading.knots.find((knot) => knot.column === this.place.column) ?? null;
  }

  private knotName(knot: KnotReading): string {
    const colour = knot.tying.name === '' ? knot.tying.colour : knot.tying.name;
    return `Row ${knot.row + 1}, column ${knot.column + 1}: ${knot.kind} knot, ${colour}`;
  }

  private get fabric(): FabricPicture | null {
    return this.querySelector('halfhitch-fabric');
  }

  private pick(place: Place, play: boolean): void {
    this.playNext = play;
    this.fabric?.goTo(place);
    void this.goTo(place).then(() => this.requestUpdate());
  }

  private toRow(row: number): void {
    const { piece } = this;
    if (piece === null || row < 0 || row >= piece.rows) return;
    this.pick({ row, column: this.place.column }, false);
  }

  private onFinding(place: Place): void {
    this.pick(place, false);
    this.fabric?.goTo(place, { focus: true });
  }

  private readonly onPlace = (event: CustomEvent<PlaceDetail>): void => {
    const { row, column, chosen } = event.detail;
    this.playNext = chosen;
    void this.goTo({ row, column }).then(() => this.requestUpdate());
    // On a narrow page the knot is played below the picture, out of sight.
    if (chosen && this.narrow) {
      this.querySelector('.watch')?.scrollIntoView({ block: 'nearest' });
    }
  };

  private readonly onMistakePlace = (event: CustomEvent<MistakePlace>): void => {
    this.pick(event.detail, false);
  };

  /** The knot that the row has come to is the one chosen in the picture. */
  private readonly onRowStep = (event: Event): void => {
    const element = event.currentTarget as HalfhitchRow;
    const knot = element.reading?.knots[element.knot];
    if (knot === undefined || knot.row !== this.place.row || knot.column === this.place.column) {
      return;
    }
    this.place = { row: knot.row, column: knot.column };
    this.fabric?.goTo(this.place);
  };

  private keptInWords(): string {
    const name = this.piece?.name ?? '';
    return `${name === '' ? 'The chart that was open' : name} is still open, as it was.`;
  }

  private readonly onFile = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    // Emptied, so that the same file can be chosen again once it is mended.
    input.value = '';
    if (file !== undefined) void this.openFile(file);
  };

  private readonly onDragOver = (event: DragEvent): void => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    this.dragging = true;
  };

  private readonly onDragLeave = (event: DragEvent): void => {
    if (event.relatedTarget === null) this.dragging = false;
  };

  private readonly onDrop = (event: DragEvent): void => {
    this.dragging = false;
    const file = event.dataTransfer?.files[0];
    if (file === undefined) return;
    event.preventDefault();
    void this.openFile(file);
  };
}

function chosenIn(event: Event): string {
  return (event.target as HTMLSelectElement).value;
}

function number(value: number): string {
  return value.toLocaleString('en-GB');
}

customElements.define('halfhitch-workbench', Workbench);
