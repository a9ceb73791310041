import type { Count } from './count.js';
import type { CellEdit, SuggestionKind } from './suggestion.js';

type Saved = Readonly<Omit<Count, 'floats'>>;

/** Float saved that is worth a suggestion by itself, in knots. */
const WORTH_IN_FLOAT = 1;

/** Whether nothing is worse and something is better enough to speak of. */
export function isWorthwhile({ changes, edgeChanges, floatKnots, longFloats }: Saved): boolean {
  if (changes < 0 || edgeChanges < 0 || longFloats < 0 || floatKnots < -1e-6) return false;
  return changes > 0 || edgeChanges > 0 || longFloats > 0 || floatKnots >= WORTH_IN_FLOAT;
}

/** Something to be ranked; `edits` or `cells` are the knots it changes, in order. */
interface Ranked {
  readonly kind: SuggestionKind;
  readonly ofShape: boolean;
  readonly gain: Saved;
  readonly edits?: readonly CellEdit[];
  readonly cells?: readonly CellEdit[];
}

/**
 * Below 0 when the first is worth more: what changes no knot, then by what is gained for each
 * knot changed, in colour changes, in long floats, in knots alone at edges and in length of
 * floats; where these are alike, what spares the drawing's shapes and then what comes first.
 */
export function compareWorth(one: Ranked, other: Ranked): number {
  const [first, second] = [one.edits ?? one.cells ?? [], other.edits ?? other.cells ?? []];
  const free = (knots: readonly CellEdit[]): number => (knots.length === 0 ? 1 : 0);
  const each = (of: (gain: Saved) => number): number =>
    of(other.gain) * first.length - of(one.gain) * second.length;
  return (
    free(second) - free(first) ||
    each(({ changes }) => changes) ||
    Number(one.ofShape) - Number(other.ofShape) ||
    each(({ longFloats }) => longFloats) ||
    each(({ edgeChanges }) => edgeChanges) ||
    each(({ floatKnots }) => Math.round(floatKnots * 1e6)) ||
    first.length - second.length ||
    comparePlaces(first[0], second[0]) ||
    (first[0]?.to ?? 0) - (second[0]?.to ?? 0) ||
    (one.kind < other.kind ? -1 : one.kind > other.kind ? 1 : 0)
  );
}

function comparePlaces(one: CellEdit | undefined, other: CellEdit | undefined): number {
  if (one === undefined || other === undefined) return 0;
  return one.row - other.row || one.column - other.column;
}
