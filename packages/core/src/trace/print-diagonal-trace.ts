import type { DiagonalPlan } from '../diagonal/plan.js';
import { DiagonalPlanReader } from '../diagonal/reading.js';
import { changesPlaces } from '../model/knot.js';

/**
 * Prints what a diagonal plan's steps do as lines of JSON, one for each knot, with their line ends:
 * where the knot is, which strings tie it, and where every string is after it. Rows, places and
 * slots are counted from 1; the slot is that of the left string.
 *
 * @throws InputError at the first step that cannot be done; the rows before it are printed
 */
export function* printDiagonalTrace(plan: DiagonalPlan): Generator<string, void, undefined> {
  for (const { row, knots, before } of new DiagonalPlanReader(plan)) {
    const front = [...before.front];
    for (const { place, slot, kind, tying, held } of knots) {
      if (changesPlaces(kind)) {
        front.splice(slot, 2, front[slot + 1] as string, front[slot] as string);
      }
      const line = {
        row: row + 1,
        place: place + 1,
        slot: slot + 1,
        kind,
        tying: tying.id,
        held: held.id,
        colour: tying.colour,
        front,
      };
      yield `${JSON.stringify(line)}\n`;
    }
  }
}
