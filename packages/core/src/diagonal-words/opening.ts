import { DIAGONAL_LIMITS } from '../diagonal/lattice.js';
import type { DiagonalPlan } from '../diagonal/plan.js';
import { halfHitchInWords } from '../instructions/half-hitch-words.js';
import { care, type Section } from '../instructions/opening.js';
import { colourInWords, count, list } from '../instructions/wording.js';
import { Fault } from '../model/fault.js';
import { KNOT_KINDS, type KnotKind, kindOf } from '../model/knot.js';
import { Machine } from '../model/machine.js';
import { Op } from '../model/steplist.js';
import { printable } from '../printable.js';
import { kindInFull } from './wording.js';

/** What to hang and in which order; how each knot of the piece is made; a word on the hands. */
export function openingDiagonalSections(plan: DiagonalPlan): readonly Section[] {
  const tally = tallyOf(plan);
  return [hanging(plan, tally), knots(tally), care()];
}

interface Tally {
  readonly kinds: ReadonlySet<KnotKind>;
  /** By string: knots it ties, and knots tied onto it. */
  readonly ties: Uint32Array;
  readonly held: Uint32Array;
}

/** Counts the whole knots of the steps, as far as they can be done. */
function tallyOf({ steps, strings, hung }: DiagonalPlan): Tally {
  const kinds = new Set<KnotKind>();
  const ties = new Uint32Array(strings.length);
  const held = new Uint32Array(strings.length);
  const machine = new Machine(strings, hung);
  for (let i = 0; i < steps.length; i++) {
    const [op, a, b] = [steps.op[i], steps.a[i], steps.b[i]] as [number, number, number];
    const half = machine.halfTying !== -1;
    const first = machine.halfFirst;
    if (machine.run(op, a, b) !== Fault.none) break;
    if (!half || (op !== Op.halfForward && op !== Op.halfBackward)) continue;
    kinds.add(kindOf(first, op === Op.halfForward ? 'forward' : 'backward'));
    ties[a] = (ties[a] as number) + 1;
    held[b] = (held[b] as number) + 1;
  }
  return { kinds, ties, held };
}

function hanging(plan: DiagonalPlan, tally: Tally): Section {
  const { strings, lattice } = plan;
  const least = Math.min(...tally.ties);
  const most = Math.max(...tally.ties);
  const uneven =
    most > 2 * Math.max(1, least)
      ? ` They do not tie alike: some tie ${most} knots, others ${least === 0 ? 'none' : least}. A string uses up several times as much thread where it ties as where it is tied onto, so cut each by the cut list.`
      : ' Cut them by the cut list: a string uses up several times as much thread where it ties as where it is tied onto.';
  const edges =
    lattice.strings % 2 === 0
      ? 'In one row every string has a neighbour, in the next the outermost string at each edge has none and idles'
      : 'In every row the outermost string at one edge has no neighbour and idles, at the other edge in the next';
  return {
    title: 'Hang your strings',
    paragraphs: [
      `You need ${count(strings.length, 'string')}: ${coloursCounted(plan)}.${uneven}`,
      'Lay them side by side and fasten them together at one end, with a knot, a loop or a clip on something that does not give, leaving the tail you want above. Sort them so that they hang in the order below, from the left; nothing is hung in later.',
      `Each string has a number, S1 to S${strings.length}, by where it hangs at the start, and keeps it wherever it goes. A slot is a place in front, counted from the left: a string changes its slot, never its number. Each row ties neighbours in pairs, and begins one slot to the side of the row before it. ${edges}.`,
      'The knots of a row do not touch each other, so they can be tied in any order; here they are told from the left. The colour of the string that ties shows, and covers the other. Draw the knots of a row up close to those above, each between two of them.',
      'From the left:',
    ],
    points: stringPoints(plan, tally),
  };
}

function coloursCounted({ strings }: DiagonalPlan): string {
  const counts = new Map<string, number>();
  for (const string of strings) {
    const colour = colourInWords(string);
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  return list([...counts].map(([colour, number]) => `${number} in ${colour}`));
}

function stringPoints({ strings }: DiagonalPlan, { ties, held }: Tally): string[] {
  return strings.slice(0, DIAGONAL_LIMITS.maxStrings).map((string, at) => {
    const name = colourInWords(string);
    const colour = name === string.colour ? name : `${name} (${string.colour})`;
    const [tied, on] = [ties[at] as number, held[at] as number];
    const does = tied === 0 ? 'ties no knot' : `ties ${count(tied, 'knot')}`;
    const bears =
      on === 0 ? 'is never tied onto' : `is tied onto ${on === 1 ? 'once' : `${on} times`}`;
    return `${printable(string.id)}: ${colour}; ${does}, ${bears}`;
  });
}

function knots({ kinds }: Tally): Section {
  const used = KNOT_KINDS.filter((kind) => kinds.has(kind));
  return {
    title: 'The knots of this piece',
    paragraphs: [
      'Every knot is two half hitches, tied by one string of a pair onto the other. Hold the string that is tied onto straight and taut, and let only the string that ties bend.',
      `A forward half hitch: ${halfHitchInWords('forward', 'the left string', 'the right one', null)}`,
      `A backward half hitch: ${halfHitchInWords('backward', 'the right string', 'the left one', null)}`,
    ],
    points: used.map((kind) => `A ${kind} knot: ${kindInFull(kind)}.`),
  };
}

/** What is left to do when the last row is tied. */
export function closingDiagonalSection({ lattice }: DiagonalPlan): Section {
  return {
    title: 'Finish',
    paragraphs: [
      `That was row ${lattice.rows}, the last. Compare the order of the strings with the one after the row: if they agree, no knot was mixed up on the way.`,
      'Gather the strings at each end into a plait or a knot close to the work, so that the last rows cannot loosen, and trim the ends. Use blades away from your hand. Only synthetic thread can be sealed with heat: melted thread is hot and sticks to skin, and cotton burns, so keep flames away from loose ends.',
    ],
    points: [],
  };
}
