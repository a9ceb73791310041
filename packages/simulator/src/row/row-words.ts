import {
  changesPlaces,
  halvesOf,
  type KnotKind,
  type KnotReading,
  mirrorKnot,
  type ThreadString,
} from '@halfhitch/core';
import type { RowPhase } from '@halfhitch/geometry/row';
import { capital } from '../knot/knot-words.js';
import { IN_ENGLISH, type Words } from '../messages/words.js';

/** What each move of a knot in a row is called, for one knot. */
export interface RowKnotWords {
  readonly heading: string;
  /** A sentence or two for each phase. */
  readonly moves: readonly string[];
}

/** A sentence for the first or the second half hitch of a knot. */
export function halfInWords(
  which: 0 | 1,
  kind: KnotKind,
  values: Readonly<Record<string, string>>,
  words: Words,
): string {
  const way = halvesOf(kind)[which];
  const [from, to] =
    way === 'forward' ? (['left', 'right'] as const) : (['right', 'left'] as const);
  return words(which === 0 ? 'row.first' : 'row.second', {
    ...values,
    way: words(`half.${way}`),
    from: words(`side.${from}`),
    to: words(`side.${to}`),
  });
}

/**
 * @param phases moves of the knot, as the geometry names them
 * @param knots how many knots the row has
 * @param mirror for left-handers: left and right change places
 */
export function rowKnotWords(
  knot: KnotReading,
  phases: readonly RowPhase[],
  knots: number,
  mirror: boolean,
  words: Words = IN_ENGLISH,
): RowKnotWords {
  const kind = mirror ? mirrorKnot(knot.kind) : knot.kind;
  const lead = leadName(knot.tying, words);
  const held = words('name.base', { number: knot.column + 1 });
  const oldLead = knot.change?.oldLead ?? null;
  const old = oldLead === null ? '' : leadName(oldLead, words);
  const enters = newLead(knot, lead, words);
  const values = { lead, held, old };
  const half = (which: 0 | 1): string => halfInWords(which, kind, values, words);
  const moves = phases.map((phase): string => {
    switch (phase) {
      case 'lay-aside':
        return `${words('row.layAside', values)} ${enters}`;
      case 'pass-behind':
        return `${words('row.passBehind', values)} ${enters}`;
      case 'take-down':
        return `${words('row.takeDown', values)} ${enters}`;
      case 'first-half':
        return knot.change !== null && phases[0] === 'first-half'
          ? `${enters} ${half(0)}`
          : half(0);
      case 'lay-through':
        return words('row.layThrough', values);
      case 'second-half':
        return phases.includes('lay-through')
          ? `${half(1)} ${words('row.locks', values)}`
          : half(1);
      default:
        return phase satisfies never;
    }
  });
  const edge = knot.place !== 'inner' && !changesPlaces(kind);
  const heading = words(edge ? 'row.headingEdge' : 'row.heading', {
    row: knot.row + 1,
    knot: knot.order + 1,
    knots,
    kind: words(`kind.${kind}`),
    held,
    lead,
  });
  return { heading, moves };
}

function newLead(knot: KnotReading, lead: string, words: Words): string {
  const { change } = knot;
  if (change === null) return '';
  if (change.join) return words('row.join', { lead });
  if (change.firstUse) return words('row.firstUse', { lead });
  const { float } = change;
  const up = words('row.takeUp', { lead });
  return float !== null && float.rows + float.columns > 1 ? `${up} ${words('row.flatFloat')}` : up;
}

/** "L2 (buoy orange)"; on a screen names are always set as text. */
export function leadName(string: ThreadString, words: Words = IN_ENGLISH): string {
  const colour = string.name.trim() === '' ? string.colour : string.name.trim();
  return words('name.lead', { id: string.id, colour });
}

export function said(words: RowKnotWords, move: number, say: Words = IN_ENGLISH): string {
  return say('row.move', {
    heading: capital(words.heading),
    move: move + 1,
    moves: words.moves.length,
    text: words.moves[move] ?? '',
  });
}
