import '@halfhitch/simulator';
import { knotIndex } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import '../../styles/diagonal.css';
import type { Place } from '../../draw/edit/place.js';
import { NO_SYMMETRY } from '../../draw/edit/symmetry.js';
import type { Session } from '../../project/session.js';
import type { Course, KnotPlace } from '../../tie/course.js';
import type { InHand } from '../../tie/in-hand.js';
import type { Stage } from '../../tie/stage.js';
import { TieBench } from '../../tie/tie-bench.js';
import type { Tying } from '../../tie/tying.js';
import type { WhereShown } from '../../tie/where-card.js';
import { plainInk } from '../edit/ink.js';
import '../lattice/lattice-sheet.js';
import type { LatticeSheet } from '../lattice/lattice-sheet.js';
import { pieceSubject } from '../lattice/piece-subject.js';
import type { LatticeSettings, LatticeSubject } from '../lattice/subject.js';
import '../mistakes/wrong-panel.js';
import type { DiagonalPiece } from '../work/messages.js';
import { DiagonalCourse } from './course.js';
import { orderNow } from './order-now.js';

const SETTINGS: LatticeSettings = {
  tool: 'choose',
  ink: plainInk(0),
  symmetry: NO_SYMMETRY,
  signs: false,
};

/** Following a diagonal pattern along. */
export class DiagonalTieView extends TieBench<InHand> {
  protected readonly larger = { label: 'In its row' };
  protected readonly words = [
    'string (S1, S2 …)',
    'slot',
    'half hitch',
    'forward, backward',
    'bar',
  ] as const;
  private pictured: { readonly of: DiagonalPiece; readonly subject: LatticeSubject } | null = null;
  private veiledTo = -1;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.pictured = null;
    this.veiledTo = -1;
  }

  protected get piece(): DiagonalPiece | null {
    const { session } = this;
    const piece = session?.diagonalPiece ?? null;
    return piece !== null && piece.id === session?.diagonal?.id ? piece : null;
  }

  protected newCourse(session: Session): DiagonalCourse | null {
    return this.piece === null ? null : new DiagonalCourse(session, this.piece);
  }

  private get sheet(): LatticeSheet | null {
    return this.querySelector('.tie-where halfhitch-lattice');
  }

  protected zoom(way: 1 | -1): void {
    this.sheet?.zoomBy(way);
  }

  protected where(): WhereShown {
    const { chosen, piece, place } = this;
    const subject = this.pictured?.subject ?? null;
    const choose = (knot: Place): void => {
      this.chosen = knot;
    };
    return {
      picture: html`
        <halfhitch-lattice
          @lattice-choose=${({ detail }: CustomEvent<Place>) => choose(detail)}
        ></halfhitch-lattice>
        ${piece === null ? '' : orderNow(piece, place)}
      `,
      chosen:
        chosen === null || subject === null
          ? null
          : { place: chosen, inWords: subject.words(chosen, subject.bytes) },
    };
  }

  protected showPiece(_course: Course, tying: Tying, place: KnotPlace | null): void {
    const { piece, sheet } = this;
    if (piece === null || sheet === null) return;
    if (this.pictured?.of !== piece) {
      this.pictured = { of: piece, subject: pieceSubject(piece) };
      this.veiledTo = -1;
    }
    sheet.set(SETTINGS);
    sheet.show(this.pictured.subject, 1);
    if (this.veiledTo === tying.done) return;
    this.veiledTo = tying.done;
    sheet.veil(place === null ? null : knotIndex(piece.pattern, place.row, place.column));
    if (place !== null) sheet.goTo(place);
  }

  protected override below(tying: Tying): TemplateResult | typeof nothing {
    const { course, piece } = this;
    if (course === null || piece === null) return nothing;
    return html`<section class="card wrong-card" aria-labelledby="wrong-name">
      <halfhitch-diagonal-wrong
        .pattern=${piece.pattern}
        .rows=${course.rowsOf(Math.min(tying.done, course.total))}
      ></halfhitch-diagonal-wrong>
    </section>`;
  }

  protected largerIsStale({ knot }: InHand): boolean {
    const { rowStage } = this;
    if (rowStage === null) return false;
    return rowStage.pattern !== this.piece?.pattern || rowStage.row !== knot.row;
  }

  protected showInLarger({ knot }: InHand, again: boolean): Stage | null {
    const { rowStage, piece } = this;
    if (rowStage === null || piece === null) return null;
    if (again) {
      if (rowStage.pattern !== piece.pattern) rowStage.pattern = piece.pattern;
      rowStage.row = knot.row;
    }
    rowStage.seekKnot(knot.order);
    return rowStage;
  }
}

customElements.define('halfhitch-diagonal-tie', DiagonalTieView);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-diagonal-tie': DiagonalTieView;
  }
}
