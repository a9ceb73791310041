import '@halfhitch/simulator';
import '../view/fabric-picture.js';
import { directionOf } from '@halfhitch/core';
import { html } from 'lit';
import { showLesson } from '../learn/show-lesson.js';
import type { Session } from '../project/session.js';
import { type FabricPicture, knotInWords, type PlaceDetail } from '../view/fabric-picture.js';
import type { Tile } from '../work/fabric-tile.js';
import type { Piece } from '../work/messages.js';
import { AlphaCourse } from './alpha-course.js';
import type { Course, KnotPlace } from './course.js';
import type { AlphaInHand } from './in-hand.js';
import type { Shape } from './shape.js';
import type { Stage } from './stage.js';
import { TieBench } from './tie-bench.js';
import type { Tying } from './tying.js';
import type { WhereShown } from './where-card.js';

/**
 * Following alpha work along.
 *
 * Fires `show-lesson` (see learn/show-lesson.ts) when the lesson for a colour change or a turn is
 * asked for.
 */
export class TieView extends TieBench<AlphaInHand> {
  protected readonly larger = { label: 'In its row' };
  protected readonly words = [
    'lead (L1, L2 …)',
    'base string',
    'half hitch',
    'forward, backward',
    'bar',
  ] as const;
  private pictured: Piece | null = null;
  private veiledTo = -1;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.pictured = null;
    this.veiledTo = -1;
  }

  protected get piece(): Piece | null {
    const { session } = this;
    const piece = session?.piece ?? null;
    return piece !== null && piece.id === session?.alpha?.id ? piece : null;
  }

  protected newCourse(session: Session): AlphaCourse | null {
    return this.piece === null ? null : new AlphaCourse(session, this.piece);
  }

  protected override get lesson(): () => void {
    return () => {
      if (this.place !== null) showLesson(this, this.place);
    };
  }

  private get fabric(): FabricPicture | null {
    return this.querySelector('halfhitch-fabric');
  }

  private drawTile(tile: Tile): Promise<string> {
    if (this.session === null) return Promise.reject(new Error('There is no session.'));
    return this.session.desk.ask({ ask: 'tile', tile });
  }

  protected zoom(way: 1 | -1): void {
    this.fabric?.zoomBy(way);
  }

  protected where(): WhereShown {
    const { chosen, piece } = this;
    return {
      picture: html`<halfhitch-fabric
        .drawTile=${(tile: Tile) => this.drawTile(tile)}
        @place=${(event: CustomEvent<PlaceDetail>) => {
          this.chosen = event.detail;
        }}
      ></halfhitch-fabric>`,
      chosen:
        chosen === null || piece === null
          ? null
          : { place: chosen, inWords: knotInWords(piece, chosen) },
    };
  }

  /** The picture of the piece, with what is not tied veiled and the knot in hand marked. */
  protected showPiece(course: Course<AlphaInHand>, tying: Tying, place: KnotPlace | null): void {
    const { fabric, piece } = this;
    if (fabric === null || piece === null || !(course instanceof AlphaCourse)) return;
    const at = place ?? { row: piece.rows - 1, column: piece.columns - 1 };
    if (this.pictured !== piece) {
      this.pictured = piece;
      this.veiledTo = -1;
      fabric.show(piece, at);
      fabric.goTo(at);
    }
    if (this.veiledTo === tying.done) return;
    this.veiledTo = tying.done;
    fabric.veiled = untied(tying.done, course.shape);
    fabric.goTo(at);
  }

  protected largerIsStale({ row: { sheet } }: AlphaInHand): boolean {
    const { rowStage } = this;
    return rowStage !== null && rowStage.reading !== sheet.reading;
  }

  protected showInLarger({ row: { sheet }, knot }: AlphaInHand, again: boolean): Stage | null {
    const { rowStage } = this;
    if (again) rowStage?.show(sheet.reading, sheet.previous);
    rowStage?.seekKnot(knot.order);
    return rowStage;
  }
}

/** The parts of a piece that are not tied yet. */
function untied(done: number, { rows, columns, start }: Shape): Tile[] {
  const row = Math.floor(done / columns);
  const order = done % columns;
  const parts: Tile[] = [];
  const next = order === 0 ? row : row + 1;
  if (order > 0 && row < rows) {
    const rightwards = directionOf(start, row) === 'right';
    parts.push({
      firstRow: row,
      endRow: row + 1,
      firstColumn: rightwards ? order : 0,
      endColumn: rightwards ? columns : columns - order,
    });
  }
  if (next < rows) parts.push({ firstRow: next, endRow: rows, firstColumn: 0, endColumn: columns });
  return parts;
}

customElements.define('halfhitch-tie', TieView);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-tie': TieView;
  }
}
