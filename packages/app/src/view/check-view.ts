import { counted } from './figures.js';
import '@halfhitch/simulator';
import '../ease/ease-panel.js';
import '../mistakes/try-panel.js';
import '../mistakes/wrong-panel.js';
import { changesInWords, type KnotReading } from '@halfhitch/core';
import type { HalfhitchKnot, HalfhitchRow } from '@halfhitch/simulator';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { showLesson } from '../learn/show-lesson.js';
import { MistakesDesk } from '../mistakes/desk.js';
import type { MistakePlace } from '../mistakes/messages.js';
import type { Session } from '../project/session.js';
import type { Tile } from '../work/fabric-tile.js';
import type { KnotChoice, Piece, RowSheet } from '../work/messages.js';
import { WorkError } from '../work/work-error.js';
import { PageElement } from './page-element.js';
import './example-line.js';
import './fabric-picture.js';
import type { FabricPicture, Place, PlaceDetail } from './fabric-picture.js';
import { howKnotted } from './how-knotted.js';
import { knotStage, mirrored } from './knot-stage.js';
import { NarrowPage } from './narrow-page.js';
import { rowCard, showPart } from './row-card.js';
import { SessionWatch } from './session-watch.js';
import { verdict } from './verdict.js';
import { watchCard } from './watch-card.js';

/** What can be played. */
type Playing = 'knot' | 'row';

const PLAYED = [
  ['knot', 'One knot'],
  ['row', 'Whole row'],
] as const;

/** Whether the chart knots out as drawn, its picture as thread, and every knot to be watched. */
export class CheckView extends PageElement {
  static override properties = {
    session: { attribute: false },
    sheet: { state: true },
    place: { state: true },
    playing: { state: true },
    mirror: { state: true },
  };

  declare session: Session | null;
  declare private sheet: RowSheet | null;
  declare private place: Place;
  declare private playing: Playing;
  declare private mirror: boolean;

  private readonly mistakesDesk = new MistakesDesk();
  private readonly narrow = new NarrowPage(this);
  private shown: Piece | null = null;
  private sheetOf: Piece | null = null;
  private playNext = false;

  constructor() {
    super();
    this.session = null;
    this.sheet = null;
    this.place = { row: 0, column: 0 };
    this.playing = 'knot';
    this.mirror = false;
    new SessionWatch(this, ['project', 'piece']);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.shown = null;
  }

  private get piece(): Piece | null {
    return this.session?.piece ?? null;
  }

  private choose(choice: Partial<KnotChoice>): void {
    const project = this.session?.alpha;
    if (project == null) return;
    this.session?.edit({ choice: { ...project.choice, ...choice } }, 'Change how it is knotted');
  }

  private drawTile(tile: Tile): Promise<string> {
    if (this.session === null) return Promise.reject(new Error('There is no session.'));
    return this.session.desk.ask({ ask: 'tile', tile });
  }

  private async take(piece: Piece): Promise<void> {
    const other = this.shown;
    this.shown = piece;
    const place = other?.id === piece.id ? this.place : { row: 0, column: 0 };
    // Shown at once what the page is for, but not to those who want nothing to move by itself.
    this.playNext = !matchMedia('(prefers-reduced-motion: reduce)').matches;
    this.fabric?.show(piece, place);
    await this.goTo(place);
  }

  private async goTo(place: Place): Promise<void> {
    const { piece, session } = this;
    if (piece === null || session === null) return;
    this.place = {
      row: Math.min(place.row, piece.rows - 1),
      column: Math.min(place.column, piece.columns - 1),
    };
    const { row } = this.place;
    if (this.sheet !== null && this.sheet.reading.row === row && this.sheetOf === piece) return;
    try {
      const sheet = await session.desk.ask({ ask: 'row', row });
      if (this.place.row !== row || this.piece !== piece) return;
      this.sheet = sheet;
      this.sheetOf = piece;
    } catch (error) {
      this.sheet = null;
      session.complain(error instanceof WorkError ? error.message : 'The row could not be read.');
    }
  }

  protected override render(): TemplateResult {
    const { piece } = this;
    return piece === null ? html`${nothing}` : this.bench(piece);
  }

  private bench(piece: Piece): TemplateResult {
    return html`
      <halfhitch-example .session=${this.session}></halfhitch-example>
      <div class="bench">
        <section class="card about" aria-labelledby="piece-name">
          <h2 id="piece-name">${piece.name === '' ? 'A chart without a name' : piece.name}</h2>
          <p class="size">
            ${counted(piece.rows, 'row')} of ${counted(piece.columns, 'knot')}
          </p>
          ${verdict(
            piece,
            changesInWords(piece.changes),
            (place) => this.onFinding(place),
            this.narrow.matches,
          )}
          ${
            piece.notices.length === 0
              ? nothing
              : html`<ul class="notices">
                ${piece.notices.map((notice) => html`<li>${notice}</li>`)}
              </ul>`
          }
        </section>
        ${this.narrow.matches ? nothing : this.setup(piece)}
        <section class="card result" aria-labelledby="result-name">
          <div class="bar">
            <h2 id="result-name">The knotted piece</h2>
            <div class="zoom" role="group" aria-label="Size of the picture">
              <button type="button" aria-label="Smaller" @click=${() => this.fabric?.zoomBy(-1)}>−</button>
              <button type="button" aria-label="Larger" @click=${() => this.fabric?.zoomBy(1)}>+</button>
            </div>
          </div>
          <halfhitch-fabric
            .drawTile=${(tile: Tile) => this.drawTile(tile)}
            @place=${this.onPlace}
          ></halfhitch-fabric>
          <p class="hint">
            Choose a knot to watch it.
            <span class="by-keys">By keys: arrows from knot to knot, <kbd>Home</kbd>
            <kbd>End</kbd> to the ends of the row, <kbd>Enter</kbd> plays it.</span>
          </p>
        </section>
        ${this.watch()}
        ${this.sheet === null ? nothing : this.row(piece, this.sheet)}
      </div>
      <section class="card ease-card" aria-labelledby="ease-name">
        <halfhitch-ease
          .session=${this.session}
          @place=${(event: CustomEvent<Place>) => this.onFinding(event.detail)}
        ></halfhitch-ease>
      </section>
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
      ${this.narrow.matches ? this.setup(piece) : nothing}
    `;
  }

  private watch(): TemplateResult {
    const { playing, mirror } = this;
    return watchCard({
      choices: PLAYED,
      playing,
      mirror,
      stage:
        playing === 'row'
          ? html`<halfhitch-row ?mirror=${mirror} @halfhitch-step=${this.onRowStep}></halfhitch-row>`
          : knotStage(this.knot, mirror),
      below: html`
        ${mirror ? mirrored() : nothing}
        <button type="button" class="small" @click=${() => showLesson(this, this.place)}>
          Show me this one as a lesson
        </button>
      `,
      choosePlaying: (chosen) => {
        this.playing = chosen;
        this.playNext = false;
      },
      setMirror: (wanted) => {
        this.mirror = wanted;
      },
    });
  }

  private setup(piece: Piece): TemplateResult {
    const choice = this.session?.alpha?.choice ?? piece.choice;
    return howKnotted(choice, piece.colours, (change) => this.choose(change));
  }

  private row(piece: Piece, sheet: RowSheet): TemplateResult {
    const { row } = sheet.reading;
    return rowCard(
      sheet,
      piece.rows,
      this.place.column,
      (to) => this.toRow(to),
      (column) => this.pick({ row, column }, true),
    );
  }

  protected override updated(changes: PropertyValues): void {
    if (this.piece !== null && this.piece !== this.shown) void this.take(this.piece);
    const row = this.querySelector<HalfhitchRow>('halfhitch-row');
    const { sheet, knot } = this;
    if (row !== null && sheet !== null) {
      if (row.reading !== sheet.reading) row.show(sheet.reading, sheet.previous);
      const placed = changes.has('place') || changes.has('sheet') || changes.has('playing');
      if (placed && knot !== null && row.knot !== knot.order) row.seekKnot(knot.order);
    }
    if (changes.has('place') || changes.has('sheet')) showPart(this);
    if (!this.playNext || knot === null) return;
    if (sheet?.reading.row !== this.place.row) return;
    this.playNext = false;
    void this.playFromStart();
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
    if (chosen && this.narrow.matches) {
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
}

customElements.define('halfhitch-check', CheckView);
