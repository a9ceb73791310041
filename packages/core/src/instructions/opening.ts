import type { EdgeTechnique } from '../chart/chart.js';
import { KNOT_KINDS, type KnotKind, kindOf } from '../model/knot.js';
import { Op } from '../model/steplist.js';
import type { ThreadString } from '../model/strings.js';
import { directionOf, type Plan } from '../plan/plan.js';
import { printable } from '../printable.js';
import { halfHitchInWords } from './half-hitch-words.js';
import { leadInFull } from './step-words.js';
import { baseStrings, colourInWords, count, leadInWords, list } from './wording.js';

/** A section of running text: what comes before the first row, or after the last. */
export interface Section {
  readonly title: string;
  readonly paragraphs: readonly string[];
  /** Points of a list that follows the paragraphs. */
  readonly points: readonly string[];
}

/** What to hang and how to begin; how each knot of the piece is made; a word on the hands. */
export function openingSections(plan: Plan): readonly Section[] {
  return [hanging(plan), knots(plan), care()];
}

function hanging(plan: Plan): Section {
  const leads = plan.strings.filter((string) => string.role === 'lead');
  const bases = plan.strings.filter((string) => string.role === 'base');
  const first = leads[0];
  const direction = directionOf(plan.start, 0);
  const column = direction === 'right' ? 0 : plan.columns - 1;
  const side = firstHalf(plan) === 'forward' ? 'left' : 'right';
  const paragraphs = [
    `Fasten ${count(plan.columns, 'base string')} side by side to something that does not give, and let ${plan.columns === 1 ? 'it' : 'them'} hang${baseColours(bases)}. ${plan.columns === 1 ? 'It is' : 'They are'} counted from the left: ${baseStrings(0, plan.columns - 1)}. The knots cover the base strings.`,
    first === undefined
      ? 'There is no leading string.'
      : `Row 1 is knotted ${direction === 'right' ? 'from left to right' : 'from right to left'}. It starts with ${leadInWords(first)} just to the ${side} of base string ${column + 1}.`,
    edgeParagraph(plan),
    leads.length === 1
      ? 'There is one leading string:'
      : 'The leading strings, in the order of their first use:',
  ];
  return { title: 'Hang your strings', paragraphs, points: leadPoints(leads) };
}

function baseColours(bases: readonly ThreadString[]): string {
  const colours = [...new Set(bases.map((string) => colourInWords(string)))];
  if (colours.length === 0 || colours.length > 3) return '';
  return ` (in the picture their colour is ${list(colours)})`;
}

function leadPoints(leads: readonly ThreadString[]): string[] {
  const firstOf = new Map<string, string>();
  return leads.map((lead) => {
    const same = `${lead.colour} ${lead.name}`;
    const earlier = firstOf.get(same);
    if (earlier === undefined) firstOf.set(same, lead.id);
    const text = leadInFull(lead);
    return earlier === undefined
      ? text
      : `${text}, which goes on in the colour of ${printable(earlier)}`;
  });
}

const WRAPPED =
  'The edges are wrapped: rows to the right are all forward knots, rows to the left all backward knots, and at each turn the lead goes round the outside of the edge string, where its colour shows.';

/** How the edges are tied: of a piece several knots wide, and of one that is a single knot wide. */
const EDGES: Readonly<Record<EdgeTechnique, { readonly wide: string; readonly single: string }>> = {
  straight: {
    wide: 'The edges are straight: every row begins and ends with an edge knot, from which the lead comes back to the inner side. So every turn has two edge knots on the same string, one to end a row and one to start the next. Tie both; with only one the edge pulls in.',
    single:
      'With one base string, every knot is an edge knot, and the lead always comes back to the side from which it started.',
  },
  wrapped: { wide: WRAPPED, single: WRAPPED },
};

function edgeParagraph({ edge, columns }: Plan): string {
  return columns === 1 ? EDGES[edge].single : EDGES[edge].wide;
}

function knots(plan: Plan): Section {
  const kinds = kindsIn(plan);
  const halves = {
    forward: 'A forward half hitch: ',
    backward: 'A backward half hitch: ',
  } as const;
  const what = {
    forward:
      'A forward knot is two forward half hitches. The lead passes the base string, from its left to its right.',
    backward:
      'A backward knot is two backward half hitches. The lead passes the base string, from its right to its left.',
    'forward-backward':
      'A forward-backward knot is a forward half hitch, then a backward one. The lead comes back to the left of the base string.',
    'backward-forward':
      'A backward-forward knot is a backward half hitch, then a forward one. The lead comes back to the right of the base string.',
  } as const;
  return {
    title: 'The knots of this piece',
    paragraphs: [
      'Every knot is two half hitches, tied by the lead onto a base string. Hold the base string straight and taut, and let only the lead bend.',
      halves.forward + halfHitchInWords('forward', 'the lead', 'the base string', null),
      halves.backward + halfHitchInWords('backward', 'the lead', 'the base string', null),
    ],
    points: kinds.map((kind) => what[kind]),
  };
}

/** The way of the first half hitch of the piece, which decides where its lead hangs. */
function firstHalf({ steps }: Plan): 'forward' | 'backward' {
  const op = steps.op.find((code) => code === Op.halfForward || code === Op.halfBackward);
  return op === Op.halfBackward ? 'backward' : 'forward';
}

/** The kinds of knot that the steps tie, in the usual order. */
function kindsIn({ steps }: Plan): readonly KnotKind[] {
  const found = new Set<KnotKind>();
  let first: 'forward' | 'backward' | null = null;
  for (let i = 0; i < steps.length && found.size < KNOT_KINDS.length; i++) {
    const op = steps.op[i];
    if (op !== Op.halfForward && op !== Op.halfBackward) continue;
    const way = op === Op.halfForward ? 'forward' : 'backward';
    if (first === null) first = way;
    else {
      found.add(kindOf(first, way));
      first = null;
    }
  }
  return KNOT_KINDS.filter((kind) => found.has(kind));
}

/** A word on the hands, and on cords and small children. */
export function care(): Section {
  return {
    title: 'Before you begin',
    paragraphs: [
      'Knotting repeats one small movement many times: rest often, change your posture, and stop when a hand, wrist or thumb hurts. Keep cords away from small children, who can get caught in them or swallow ends.',
    ],
    points: [],
  };
}

/** What is left to do when the last row is tied. */
export function closingSection(plan: Plan): Section {
  const leads = plan.strings.filter((string) => string.role === 'lead').length;
  return {
    title: 'Finish',
    paragraphs: [
      `That was row ${plan.rows}, the last. ${leads === 1 ? 'The lead hangs' : 'All leads hang'} beside or behind the work. Check that the last knot lies level and that no float behind is tight.`,
      'Take the last lead to the back. Thread the tails there under a few knots of their own colour and trim them; gather the base strings at each end into a plait or a knot. Use blades away from your hand and away from the base strings. Only synthetic thread can be sealed with heat: melted thread is hot and sticks to skin, and cotton burns, so keep flames away from loose ends.',
    ],
    points: [],
  };
}
