import type { Session } from '../project/session.js';
import type { Place } from '../view/fabric-picture.js';
import { figures } from '../view/figures.js';
import type { Piece } from '../work/messages.js';
import { ChangeCount } from './changes-left.js';
import type { Course, KnotPlace } from './course.js';
import { type AlphaInHand, inHand } from './in-hand.js';
import { AlphaRows } from './row-marks.js';
import { RowSheets } from './row-sheets.js';
import { doneBefore, placeAfter, type Shape, shapeOf } from './shape.js';

/** Alpha work as it is followed along: row by row, each in its way. */
export class AlphaCourse extends AlphaRows implements Course<AlphaInHand> {
  readonly kind = 'alpha';
  readonly id: string;
  readonly sound: boolean;
  readonly across: Course['across'];
  readonly shape: Shape;
  private readonly sheets: RowSheets;
  private readonly changes: ChangeCount;

  constructor(
    session: Session,
    readonly piece: Piece,
  ) {
    super(piece.chart, piece.choice);
    this.id = piece.id;
    this.sound = piece.ok;
    this.shape = shapeOf(piece);
    this.across = { label: 'Base string', most: () => piece.columns };
    this.sheets = new RowSheets(session, piece);
    this.changes = new ChangeCount(piece);
  }

  knotsIn(): number {
    return this.columns;
  }

  placeAfter(done: number): KnotPlace | null {
    return placeAfter(done, this.shape);
  }

  doneBefore({ row, column }: Place): number {
    return doneBefore(row, column, this.shape);
  }

  changesBetween(from: number, to: number): number {
    return this.changes.between(from, to);
  }

  placeInWords({ row, column }: KnotPlace): string {
    return `row ${figures(row + 1)}, base string ${column + 1}`;
  }

  filledIn(row: number, across: number): Place {
    return { row: row - 1, column: across - 1 };
  }

  fieldOf({ column }: KnotPlace): number {
    return column + 1;
  }

  async hand(place: KnotPlace): Promise<AlphaInHand | null> {
    const { sheets } = this;
    const [row, next] = await Promise.all([sheets.get(place.row), sheets.get(place.row + 1)]);
    return row === null ? null : inHand(row, next, place);
  }
}
