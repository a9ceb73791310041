import type { HalfWay } from './knot.js';
import type { StringId } from './strings.js';

/**
 * How a lead leaves the front:
 * - `through`: it lies through the middle of the knot just tied, whose second half locked it;
 * - `behind`: passed behind and under a knot, not caught in it;
 * - `down`: taken down and behind at a turn.
 */
export type ParkRoute = 'through' | 'behind' | 'down';

export const PARK_ROUTES: readonly ParkRoute[] = ['through', 'behind', 'down'];

/**
 * The smallest thing a maker does. Slots are counted from 0 at the left of the front.
 */
export type Step =
  /** Tie one half hitch with `tying` on `held`, which hang side by side. */
  | {
      readonly do: 'halfHitch';
      readonly way: HalfWay;
      readonly tying: StringId;
      readonly held: StringId;
    }
  /** Lay a string through the middle of the half-made knot, under its tying string. */
  | { readonly do: 'layThrough'; readonly string: StringId }
  /** Move a string from the front to the back, where it rests. */
  | { readonly do: 'park'; readonly string: StringId; readonly route: ParkRoute }
  /** Bring a parked string back to the front, into a slot. */
  | { readonly do: 'takeUp'; readonly string: StringId; readonly slot: number }
  /** Add a new string from behind, its tail left at the back, into a slot. */
  | { readonly do: 'add'; readonly string: StringId; readonly slot: number }
  /** Finish a string for good: what is left of it is a tail at the back. */
  | { readonly do: 'end'; readonly string: StringId }
  /** Turn round for the next row. */
  | { readonly do: 'turn' };

export type StepName = Step['do'];
