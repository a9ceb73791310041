import { halvesOf, type KnotReading, mirrorKnot, type ThreadString } from '@halfhitch/core';
import type { RowPhase } from '@halfhitch/geometry';
import { capital } from '../knot/knot-words.js';

/** What each move of a knot in a row is called, for one knot. */
export interface RowKnotWords {
  readonly heading: string;
  /** A sentence or two for each phase. */
  readonly moves: readonly string[];
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
): RowKnotWords {
  const kind = mirror ? mirrorKnot(knot.kind) : knot.kind;
  const lead = leadName(knot.tying);
  const held = `base string ${knot.column + 1}`;
  const old = knot.change?.oldLead ?? null;
  const oldName = old === null ? '' : leadName(old);
  const place =
    knot.place === 'inner' || kind === 'forward' || kind === 'backward' ? '' : 'edge knot, ';
  const heading = `Row ${knot.row + 1}, knot ${knot.order + 1} of ${knots}: ${place}${kind} on ${held}, tied by ${lead}`;
  const enters = newLead(knot, lead);
  const moves = phases.map((phase): string => {
    switch (phase) {
      case 'lay-aside':
        return `Lay ${oldName} aside. ${enters}`;
      case 'pass-behind':
        return `Pass ${oldName} behind and under this last knot, not caught in it. ${enters}`;
      case 'take-down':
        return `Take ${oldName} down and behind, and check that the last knot lies level. ${enters}`;
      case 'first-half': {
        const begin = knot.change !== null && phases[0] === 'first-half' ? `${enters} ` : '';
        return `${begin}First half, ${halfInShort(kind, 0, lead, held)}`;
      }
      case 'lay-through':
        return `Lay ${oldName} under ${lead}, through the middle of this half-made knot.`;
      case 'second-half': {
        const locks = phases.includes('lay-through')
          ? ` It locks ${oldName}, which now goes to the back.`
          : '';
        return `Second half, ${halfInShort(kind, 1, lead, held)}${locks}`;
      }
      default:
        return phase satisfies never;
    }
  });
  return { heading, moves };
}

function newLead(knot: KnotReading, lead: string): string {
  const { change } = knot;
  if (change === null) return '';
  if (change.join) return `Add ${lead} from behind, to go on with the same colour.`;
  if (change.firstUse) return `Add ${lead} as a new lead from behind, its tail left at the back.`;
  const float = change.float;
  const far =
    float !== null && float.rows + float.columns > 1
      ? ' Leave the float behind the work flat.'
      : '';
  return `Take ${lead} up from behind.${far}`;
}

function halfInShort(
  kind: Parameters<typeof halvesOf>[0],
  half: 0 | 1,
  lead: string,
  held: string,
): string {
  const way = halvesOf(kind)[half];
  const [from, to] = way === 'forward' ? ['left', 'right'] : ['right', 'left'];
  return `${way}: ${lead} over ${held} from ${from} to ${to}, behind it back to the ${from} above the bar, up through the loop, and snug.`;
}

/** "L2 (buoy orange)"; on a screen names are always set as text. */
export function leadName(string: ThreadString): string {
  const name = string.name.trim() === '' ? string.colour : string.name.trim();
  return `${string.id} (${name})`;
}

export function said(words: RowKnotWords, move: number): string {
  return `${capital(words.heading)}. Move ${move + 1} of ${words.moves.length}. ${words.moves[move] ?? ''}`;
}
