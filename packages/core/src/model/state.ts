import type { HalfWay } from './knot.js';
import type { ParkRoute } from './step.js';
import type { StringId, ThreadString } from './strings.js';

/** A place in the finished work; rows and columns are counted from 0 in code. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}

/** Where a string left the front, and how. */
export interface Parked {
  readonly string: StringId;
  readonly at: Cell;
  readonly how: ParkRoute;
}

/** A knot of which the first half is tied and the second is not. */
export interface HalfMade {
  readonly tying: StringId;
  readonly held: StringId;
  readonly first: HalfWay;
  /** The string laid through the middle, waiting for the second half to lock it. */
  readonly laid: StringId | null;
}

/**
 * Which string is where. A string of `strings` is in exactly one of: the front, the back
 * (`parked`), `ended`, or none of these because it has not been added yet.
 */
export interface State {
  /** Every string the piece will ever have, hung or not. */
  readonly strings: readonly ThreadString[];
  /** Base strings in the order they were hung; a knot's column is its held string's place here. */
  readonly hung: readonly StringId[];
  /** The strings in front, from left to right. */
  readonly front: readonly StringId[];
  /** The strings at the back, in the order they got there. */
  readonly parked: readonly Parked[];
  readonly ended: readonly StringId[];
  /** The string that tied last or was taken up to tie next. */
  readonly lead: StringId | null;
  readonly halfMade: HalfMade | null;
  /** A string locked in the knot tied last that still has to go to the back. */
  readonly locked: StringId | null;
  /** The place worked last; before the first knot, row 0 and column -1. */
  readonly at: Cell;
}
