import type { Place } from '../../draw/edit/place.js';
import type { Session } from '../../project/session.js';
import type { Course, KnotPlace } from '../../tie/course.js';
import type { InHand } from '../../tie/in-hand.js';
import { placeInWords } from '../lattice/words.js';
import type { DiagonalPiece, DiagonalRowSheet } from '../work/messages.js';
import { diagonalInHand } from './in-hand.js';
import { DiagonalRows } from './rows.js';

/** Rows around the one in hand; more would only take up room. */
const MOST_KEPT = 6;

/** A diagonal pattern as it is followed along: row by row, each from the left. */
export class DiagonalCourse extends DiagonalRows implements Course {
  readonly kind = 'diagonal';
  readonly id: string;
  readonly sound: boolean;
  readonly across: Course['across'];
  private readonly sheets = new Map<number, Promise<DiagonalRowSheet>>();

  constructor(
    private readonly session: Session,
    readonly piece: DiagonalPiece,
  ) {
    const { pattern, reading } = piece;
    super(pattern, reading.tying, reading.held);
    this.id = piece.id;
    this.sound = piece.ok;
    this.across = { label: 'Knot', most: (row) => Math.max(1, this.knotsIn(row)) };
  }

  knotsIn(row: number): number {
    return this.before(row + 1) - this.before(row);
  }

  placeAfter(done: number): KnotPlace | null {
    if (done < 0 || done >= this.total) return null;
    const row = this.rowsOf(done + 1) - 1;
    const order = done - this.before(row);
    return { row, order, column: this.placesOf(row)[order] ?? 0 };
  }

  doneBefore({ row, column }: Place): number {
    const places = this.placesOf(row);
    const at = places.findIndex((place) => place >= column);
    return this.before(row) + (at < 0 ? places.length : at);
  }

  /** Each knot has a string of its own that ties: there is nothing to take up or to lay aside. */
  changesBetween(): number {
    return 0;
  }

  placeInWords({ row, column }: KnotPlace): string {
    return placeInWords(this.piece.pattern, { row, column }).toLowerCase();
  }

  filledIn(row: number, across: number): Place {
    return { row: row - 1, column: this.placesOf(row - 1)[across - 1] ?? 0 };
  }

  fieldOf({ order }: KnotPlace): number {
    return order + 1;
  }

  async hand(place: KnotPlace): Promise<InHand | null> {
    const after = this.placeAfter(this.before(place.row + 1));
    const [sheet, next] = await Promise.all([
      this.sheet(place.row),
      after === null ? null : this.sheet(after.row),
    ]);
    return diagonalInHand(sheet, next, place);
  }

  private sheet(row: number): Promise<DiagonalRowSheet> {
    const known = this.sheets.get(row);
    if (known !== undefined) return known;
    const sheet = this.session.diagonalDesk.then((desk) => desk.ask({ ask: 'row', row }));
    this.sheets.set(row, sheet);
    // What failed is asked for again the next time.
    sheet.catch(() => this.sheets.delete(row));
    for (const kept of this.sheets.keys()) {
      if (this.sheets.size <= MOST_KEPT) break;
      this.sheets.delete(kept);
    }
    return sheet;
  }
}
