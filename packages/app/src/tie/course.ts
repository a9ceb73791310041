import type { Place } from '../view/fabric-picture.js';
import type { InHand } from './in-hand.js';
import type { TiedRows } from './row-marks.js';

/** A knot of a piece, all from 0. */
export interface KnotPlace {
  readonly row: number;
  /** Of alpha work; in diagonal work the place in its row from the left. */
  readonly column: number;
  /** Place in its row in the order of knotting. */
  readonly order: number;
}

/** A piece as it is followed along: its knots one after another, and what is said of each. */
export interface Course<H extends InHand = InHand> extends TiedRows {
  /** Of the project. */
  readonly id: string;
  readonly kind: 'alpha' | 'diagonal';
  /** What it was made of: another one means that something has changed. */
  readonly piece: object;
  /** Whether the piece knots out as drawn. */
  readonly sound: boolean;
  knotsIn(row: number): number;
  /** The knot that comes after some are tied; null when there is none left. */
  placeAfter(done: number): KnotPlace | null;
  /** Knots tied before a knot; before the next one where the place has none. */
  doneBefore(place: Place): number;
  /** Changes of the string that ties that count for the pace, from one count to another. */
  changesBetween(from: number, to: number): number;
  /** "row 3, base string 4" */
  placeInWords(place: KnotPlace): string;
  /** What is filled in to say where one is, besides the row. */
  readonly across: { readonly label: string; most(row: number): number };
  /** The place that is filled in, from 1. */
  filledIn(row: number, across: number): Place;
  /** What is to be filled in for a place, from 1. */
  fieldOf(place: KnotPlace): number;
  /** All that is said of a knot. @throws WorkError */
  hand(place: KnotPlace): Promise<H | null>;
}
