import { type HalfWay, halvesOf, type KnotKind } from '../model/knot.js';

/** Where a half hitch belongs: which half of which knot. */
export interface HalfPlace {
  readonly kind: KnotKind;
  readonly half: 'first' | 'second';
}

/**
 * How one half hitch is made, completely enough to tie it, and where the lead goes from it.
 *
 * @param lead the tying string, as it is called
 * @param held the string it is tied onto, as it is called
 * @param place null when it is not known to which knot the half belongs
 */
export function halfHitchInWords(
  way: HalfWay,
  lead: string,
  held: string,
  place: HalfPlace | null,
): string {
  const [from, to] = way === 'forward' ? ['left', 'right'] : ['right', 'left'];
  const again = place?.half === 'second' && halvesOf(place.kind)[0] === way;
  const start = again
    ? `Lay ${lead} over ${held} from ${from} to ${to} once more, below the first half`
    : `Lay ${lead} over ${held} from ${from} to ${to}`;
  return (
    `${start}, turn it behind ${held} back to the ${from} above the bar it has just made, ` +
    `bring it up to the front through the loop between itself and ${held}, and pull it snug.` +
    leaving(way, lead, held, place)
  );
}

/** Where the lead goes after a half, which decides what the knot becomes. */
function leaving(way: HalfWay, lead: string, held: string, place: HalfPlace | null): string {
  if (place === null) return '';
  const [from, to] = way === 'forward' ? ['left', 'right'] : ['right', 'left'];
  const [first, second] = halvesOf(place.kind);
  if (place.half === 'second') {
    return first === second
      ? ` Then lay it over ${held} to the ${to}: ${lead} has passed ${held} and hangs on its ${to}.`
      : ` Then lay it over ${held} to the ${to}: ${lead} hangs on the ${to} of ${held}, where this knot began.`;
  }
  return first === second
    ? ` Let it hang on the ${from} of ${held}, down over its own bar, ready for the second half.`
    : ` Then lay it over ${held} to the ${to}: the second half starts from there.`;
}

/** The same, in short: what changes from half to half, for lists of substeps. */
export function halfHitchInShort(
  way: HalfWay,
  lead: string,
  held: string,
  place: HalfPlace,
): string {
  const [from, to] = way === 'forward' ? ['left', 'right'] : ['right', 'left'];
  return (
    `Tie the ${place.half} half of this ${place.kind} knot, a ${way} half hitch: ` +
    `${lead} over ${held} from ${from} to ${to}, behind it back to the ${from} above the bar, ` +
    `up through the loop, and snug.`
  );
}
