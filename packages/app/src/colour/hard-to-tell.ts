import { type Chart, type ChartColour, printable } from '@halfhitch/core';
import { DEFICIENCIES, type Deficiency, simulate } from './deficiency.js';
import { type Neighbours, neighboursOf } from './neighbours.js';
import { ciede2000, cielabOf } from './spaces.js';

/**
 * Below this difference (CIEDE2000) two threads side by side count as hard to tell apart. The
 * number is our choice, no standard's: a just noticeable difference is about 1, but knots are
 * small, rounded and shaded; and of the eight colours that Okabe and Ito chose in 2008 to be told
 * apart by everyone, the nearest two are 11.1 apart for tritan sight, so that 10 lets all of them
 * pass.
 */
export const HARD_TO_TELL = 10;

export type Sight = 'usual' | Deficiency;

export const SIGHTS: readonly Sight[] = ['usual', ...DEFICIENCIES];

/** Two colours that lie side by side, and what they are to a kind of sight that takes them for one. */
export interface HardToTell extends Neighbours {
  readonly sight: Sight;
  /** CIEDE2000 between the two as seen. */
  readonly difference: number;
}

/**
 * Neighbouring colours that are hard to tell apart with usual sight, or without one kind of cone.
 * A pair that is hard for usual sight is not told again for others.
 *
 * @param hexes the colours that `neighbours` count in
 */
export function hardToTell(
  hexes: readonly string[],
  neighbours: readonly Neighbours[],
): HardToTell[] {
  const seen = SIGHTS.map((sight) =>
    hexes.map((hex) => cielabOf(sight === 'usual' ? hex : simulate(hex, sight))),
  );
  return neighbours.flatMap((pair) => {
    const found: HardToTell[] = [];
    for (const [i, sight] of SIGHTS.entries()) {
      const [one, other] = [seen[i]?.[pair.one], seen[i]?.[pair.other]];
      if (one === undefined || other === undefined) throw new RangeError('No such colour.');
      const difference = ciede2000(one, other);
      if (difference < HARD_TO_TELL) found.push({ ...pair, sight, difference });
      if (sight === 'usual' && found.length > 0) break;
    }
    return found;
  });
}

/** What the maker should know of a chart's colours, worst first; one sentence for each pair. */
export function colourWarnings(chart: Chart): string[] {
  const hard = hardToTell(
    chart.colours.map(({ hex }) => hex),
    neighboursOf(chart),
  );
  const pairs = new Map<string, HardToTell[]>();
  for (const one of hard) {
    const pair = `${one.one} ${one.other}`;
    pairs.set(pair, [...(pairs.get(pair) ?? []), one]);
  }
  return [...pairs.values()]
    .map((sights) => ({ sights, least: Math.min(...sights.map(({ difference }) => difference)) }))
    .sort((one, other) => one.least - other.least)
    .map(({ sights }) => warning(sights, chart.colours));
}

const SIGHT_IN_WORDS: Readonly<Record<Sight, string>> = {
  usual: 'usual sight',
  protan: 'protan sight (no cones for red)',
  deutan: 'deutan sight (no cones for green)',
  tritan: 'tritan sight (no cones for blue)',
};

function warning(sights: readonly HardToTell[], colours: readonly ChartColour[]): string {
  const { one, other, places, row, column } = sights[0] as HardToTell;
  const where = `${places === 1 ? 'in one place' : `in ${places} places, the first`} at row ${row + 1}, column ${column + 1}`;
  const seen = sights
    .map(({ sight, difference }) => `${SIGHT_IN_WORDS[sight]}: ${difference.toFixed(1)}`)
    .join('; ');
  return `${named(colours[one])} and ${named(colours[other])} are hard to tell apart. They lie side by side ${where}. Difference for ${seen}; we call less than ${HARD_TO_TELL} hard.`;
}

function named(colour: ChartColour | undefined): string {
  return printable(colour?.name ?? '') || (colour?.hex ?? '');
}
