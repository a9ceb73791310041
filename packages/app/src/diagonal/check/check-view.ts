import { counted, figures } from '../../view/figures.js';
import '@halfhitch/simulator';
import { printable } from '@halfhitch/core';
import type { ForcedKnots } from '@halfhitch/core/solve';
import type { HalfhitchKnot, HalfhitchPiece } from '@halfhitch/simulator';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { PageElement } from '../../view/page-element.js';
import '../../styles/diagonal.css';
import '../../view/example-line.js';
import '../../view/swatch.js';
import type { Place } from '../../draw/edit/place.js';
import { NO_SYMMETRY } from '../../draw/edit/symmetry.js';
import { type DiagonalProject, untitled } from '../../project/project.js';
import type { Session } from '../../project/session.js';
import { NarrowPage } from '../../view/narrow-page.js';
import { Remembered } from '../../view/remembered.js';
import { SessionWatch } from '../../view/session-watch.js';
import { verdict } from '../../view/verdict.js';
import { watchCard } from '../../view/watch-card.js';
import { WorkError } from '../../work/work-error.js';
import { plainInk } from '../edit/ink.js';
import { differing } from '../edit/pattern.js';
import '../lattice/lattice-sheet.js';
import type { LatticeSheet } from '../lattice/lattice-sheet.js';
import type { LatticeMark } from '../lattice/look.js';
import { pieceSubject } from '../lattice/piece-subject.js';
import type { LatticeSettings, LatticeSubject } from '../lattice/subject.js';
import { placeInWords } from '../lattice/words.js';
import '../mistakes/wrong-panel.js';
import type { DiagonalPiece } from '../work/messages.js';
import { forcedInWords, forcedMarks } from './forced.js';
import { knotStage, watchedAt } from './knot-stage.js';
import { sharesCard } from './shares-card.js';

type Playing = 'knot' | 'piece';

const PLAYED = [
  ['knot', 'One knot'],
  ['piece', 'Whole piece'],
] as const;

const SETTINGS: LatticeSettings = {
  tool: 'choose',
  ink: plainInk(0),
  symmetry: NO_SYMMETRY,
  signs: false,
};

/** Where a diagonal pattern is checked: its proof, its repeat, its strings, and every knot. */
export class DiagonalCheckView extends PageElement {
  static override properties = {
    session: { attribute: false },
    place: { state: true },
    playing: { state: true },
    mirror: { state: true },
    forced: { state: true },
    reading: { state: true },
  };

  declare session: Session | null;
  declare private place: Place;
  declare private playing: Playing;
  declare private mirror: boolean;
  /** What the picture alone says, and of which piece. */
  declare private forced: {
    readonly of: DiagonalPiece;
    readonly told: ForcedKnots | string;
  } | null;
  /** Whether the picture is being read. */
  declare private reading: boolean;
  private giveUp: AbortController | null = null;

  private shown: DiagonalPiece | null = null;
  private subject: LatticeSubject | null = null;
  private staged: DiagonalPiece | null = null;
  private readonly marks = new Remembered<readonly LatticeMark[]>();
  /** Where all stands in one column, and only what is wrong is laid open. */
  private readonly narrow = new NarrowPage(this);

  constructor() {
    super();
    this.session = null;
    this.place = { row: 0, column: 0 };
    this.playing = 'knot';
    this.mirror = false;
    this.forced = null;
    this.reading = false;
    new SessionWatch(this, ['project', 'piece']);
  }

  private get piece(): DiagonalPiece | null {
    const piece = this.session?.diagonalPiece ?? null;
    return piece !== null && piece.id === this.session?.diagonal?.id ? piece : null;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.giveUp?.abort();
    this.reading = false;
  }

  private async readForced(piece: DiagonalPiece): Promise<void> {
    this.giveUp?.abort();
    const giveUp = new AbortController();
    this.giveUp = giveUp;
    this.reading = true;
    const { readForced } = await import('../solve/forced.js');
    const told = await readForced(piece.reading.picture, giveUp.signal).catch((error: unknown) =>
      error instanceof WorkError ? error.message : 'The picture could not be read.',
    );
    if (giveUp !== this.giveUp || giveUp.signal.aborted) return;
    this.reading = false;
    this.forced = { of: piece, told };
  }

  private get sheet(): LatticeSheet | null {
    return this.querySelector('.result halfhitch-lattice');
  }

  private goTo(place: Place, focus = false): void {
    this.place = place;
    this.sheet?.goTo(place, { focus });
  }

  /** What the picture alone says of how it was knotted. */
  private alone(piece: DiagonalPiece): TemplateResult {
    const { forced, reading } = this;
    const told = forced?.of === piece ? forced.told : null;
    return html`
      <h3>The picture alone</h3>
      <p role="status">
        ${
          told === null
            ? 'How many of the knots could only be as they are, for this picture?'
            : typeof told === 'string'
              ? told
              : forcedInWords(told, piece.knots)
        }
      </p>
      ${
        told === null
          ? html`<button type="button" aria-disabled=${String(reading)} @click=${() => {
              if (!reading) void this.readForced(piece);
            }}>${reading ? 'Reading it …' : 'Read the picture'}</button>`
          : nothing
      }
    `;
  }

  private marksOf(piece: DiagonalPiece): readonly LatticeMark[] {
    const told = this.forced?.of === piece ? this.forced.told : null;
    const forced = told === null || typeof told === 'string' ? null : told;
    return this.marks.of([piece, forced], () => [
      ...piece.findings.flatMap(({ grade, row, place, message }): LatticeMark[] => {
        if (row === null || place === null) return [];
        const what = grade === 'wrong' ? 'conflict' : 'found';
        return [{ row: row - 1, column: place - 1, what, message }];
      }),
      ...(forced === null ? [] : forcedMarks(piece, forced)),
    ]);
  }

  // ---- the page ----

  protected override render(): TemplateResult {
    const { piece, session } = this;
    const project = session?.diagonal ?? null;
    if (piece === null || project === null) {
      return html`<section class="card"><p>Working the pattern out.</p></section>`;
    }
    return html`
      <halfhitch-example .session=${session}></halfhitch-example>
      <div class="bench">
        <section class="card about" aria-labelledby="piece-name">${this.about(piece, project)}</section>
        <section class="card setup" aria-labelledby="repeat-name">
          <h2 id="repeat-name">Knotted again and again</h2>
          <ul class="repeat">${piece.repeat.map((sentence) => html`<li>${sentence}</li>`)}</ul>
          ${this.alone(piece)}
        </section>
        <section class="card result" aria-labelledby="result-name">
          <div class="bar">
            <h2 id="result-name">The knotted piece</h2>
            <div class="zoom" role="group" aria-label="Size of the picture">
              <button type="button" aria-label="Smaller" @click=${() => this.sheet?.zoomBy(-1)}>−</button>
              <button type="button" aria-label="Larger" @click=${() => this.sheet?.zoomBy(1)}>+</button>
            </div>
          </div>
          <halfhitch-lattice
            @lattice-place=${() => {
              this.place = this.sheet?.here ?? this.place;
            }}
            @lattice-choose=${({ detail }: CustomEvent<Place>) => this.choose(detail)}
          ></halfhitch-lattice>
          <p class="hint">
            Choose a knot to watch it. On each knot is the way of the string that ties it.
            <span class="by-keys">By keys: arrows from knot to knot, <kbd>Enter</kbd> plays it.</span>
          </p>
        </section>
        ${this.watch(piece)}
        <section class="card row-card" aria-labelledby="shares-name">${sharesCard(piece)}</section>
      </div>
      <section class="card wrong-card" aria-labelledby="wrong-name">
        <halfhitch-diagonal-wrong .pattern=${piece.pattern}></halfhitch-diagonal-wrong>
      </section>
    `;
  }

  private about(piece: DiagonalPiece, { pattern, wanted }: DiagonalProject): TemplateResult {
    const many = wanted === null ? 0 : differing(piece.reading.picture, wanted).length;
    return html`
      <h2 id="piece-name">${printable(pattern.name) || untitled('diagonal')}</h2>
      <p class="size">
        ${counted(pattern.rows, 'row')} on ${pattern.strings} strings
      </p>
      ${this.verdict(piece)}
      ${
        many === 0
          ? nothing
          : html`<p class="note">
            ${many === 1 ? 'One knot shows' : `${figures(many)} knots show`} something
            else than the picture that is wanted. <a href="#draw">Find a way to knot it</a> in the
            Draw view.
          </p>`
      }
      ${
        piece.notices.length === 0
          ? nothing
          : html`<ul class="notices">${piece.notices.map((notice) => html`<li>${notice}</li>`)}</ul>`
      }
    `;
  }

  private verdict(piece: DiagonalPiece): TemplateResult {
    const { pattern } = piece;
    const findings = piece.findings.map((finding) => ({ ...finding, column: finding.place }));
    return verdict(
      { ...piece, findings },
      '',
      (place) => this.goTo(place, true),
      this.narrow.matches,
      (row, place) => placeInWords(pattern, { row: row - 1, column: place - 1 }),
    );
  }

  private watch(piece: DiagonalPiece): TemplateResult {
    const { playing, mirror } = this;
    return watchCard({
      choices: PLAYED,
      playing,
      mirror,
      stage:
        playing === 'piece'
          ? html`<halfhitch-piece ?mirror=${mirror}></halfhitch-piece>`
          : knotStage(piece, this.place, mirror),
      choosePlaying: (chosen) => {
        this.playing = chosen;
      },
      setMirror: (wanted) => {
        this.mirror = wanted;
      },
    });
  }

  private choose(place: Place): void {
    this.place = place;
    void this.updateComplete.then(async () => {
      const stage = this.querySelector<HalfhitchKnot>('halfhitch-knot');
      if (stage === null) return;
      await stage.updateComplete;
      stage.seek(0);
      stage.play();
    });
  }

  protected override updated(changes: PropertyValues): void {
    const { piece, sheet } = this;
    if (piece === null || sheet === null) return;
    if (this.shown !== piece) {
      if (this.shown?.id !== piece.id) this.goTo({ row: 0, column: 0 });
      this.shown = piece;
      this.subject = pieceSubject(piece);
    }
    sheet.set(SETTINGS);
    if (this.subject !== null) sheet.show(this.subject, 1);
    sheet.mark(this.marksOf(piece));
    const whole = this.querySelector<HalfhitchPiece>('halfhitch-piece');
    if (whole === null) this.staged = null;
    else if (this.staged !== piece) {
      this.staged = piece;
      whole.pattern = piece.pattern;
    } else if (changes.has('place') && watchedAt(piece, this.place) !== null) {
      whole.seekKnot(this.place.row, this.place.column);
    }
  }
}

customElements.define('halfhitch-diagonal-check', DiagonalCheckView);
