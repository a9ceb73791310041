import { InputError } from '@halfhitch/core';
import { WRIST_LIMITS } from './finished-size.js';

/**
 * How a band is closed. Every length is the maker's choice, mm; what is usual is common practice,
 * no source.
 *
 * - `meet`: its ends meet, and how they are held is left open;
 * - `ties`: a plait at each end, tied to each other;
 * - `loop`: a loop at the beginning, and plaits at the end that go through it and are tied;
 * - `buckle`: the beginning is turned over the bar of a buckle and sewn down, the end goes through.
 */
export type Closing =
  | { readonly how: 'meet' }
  | {
      readonly how: 'ties';
      /** What the tied plaits fill between the ends of the knotted part. */
      readonly gap: number;
      /** Each plait. */
      readonly plait: number;
    }
  | {
      readonly how: 'loop';
      /** From the knotted part to the far end of the loop. */
      readonly loop: number;
      readonly plait: number;
    }
  | {
      readonly how: 'buckle';
      /** What the buckle adds round the wrist, from the bar to where the end comes out. */
      readonly buckle: number;
      /** Knotted part turned over the bar. */
      readonly turnOver: number;
      /** Knotted part that lies double beyond the buckle, to adjust by. */
      readonly overlap: number;
    };

/** Stated limits of the lengths of a closing and of the ease, mm. */
export const FIT_LIMITS = {
  ease: { least: 0, most: 100, unit: 'mm' },
  gap: { least: 0, most: 100, unit: 'mm' },
  plait: { least: 0, most: 400, unit: 'mm' },
  loop: { least: 3, most: 60, unit: 'mm' },
  buckle: { least: 0, most: 60, unit: 'mm' },
  turnOver: { least: 3, most: 60, unit: 'mm' },
  overlap: { least: 0, most: 150, unit: 'mm' },
} as const;

/** What is usual, mm (common practice, no source). */
export const FIT_DEFAULTS = {
  ease: 10,
  gap: 10,
  plait: 80,
  loop: 12,
  buckle: 8,
  turnOver: 15,
  overlap: 40,
} as const;

/** Strand that goes into a plait of three, by the plait's length (common practice, no source). */
const PLAIT_TAKES = 1.25;

/** For the knot at the end of a plait and to trim, mm. */
const END_KNOT = 30;

/** To sew or weave in behind, mm. */
const TO_SEW_IN = 60;

export interface Fit {
  /** Wrist, mm. */
  readonly wrist: number;
  /** Added for comfort: a finger's room, mm. */
  readonly ease: number;
  readonly closing: Closing;
  /** Of the band, mm: it goes round at half its thickness above the skin. */
  readonly thickness: number;
}

/**
 * Length of the knotted part for a wrist, mm.
 *
 * @throws InputError when the wrist can't be right, or the closing leaves nothing to knot
 */
export function knottedLength({ wrist, ease, closing, thickness }: Fit): number {
  if (!(wrist >= WRIST_LIMITS.min && wrist <= WRIST_LIMITS.max)) {
    throw new InputError(
      'wrist',
      `A wrist of ${wrist} mm cannot be right.`,
      {},
      `Measure once round in mm, from ${WRIST_LIMITS.min} to ${WRIST_LIMITS.max}.`,
    );
  }
  const length = wrist + ease + Math.PI * thickness + closingAdds(closing);
  if (length > 0) return length;
  throw new InputError(
    'closing',
    'The closing takes up all the way round the wrist.',
    {},
    'Make it shorter.',
  );
}

/** The wrist that a knotted length goes round, mm; 0 or less when it goes round none. */
export function wristFor(length: number, { ease, closing, thickness }: Omit<Fit, 'wrist'>): number {
  return length - ease - Math.PI * thickness - closingAdds(closing);
}

/** What the closing makes the knotted part longer by; below 0, shorter. mm */
export function closingAdds(closing: Closing): number {
  switch (closing.how) {
    case 'meet':
      return 0;
    case 'ties':
      return -closing.gap;
    case 'loop':
      return -closing.loop;
    case 'buckle':
      return closing.turnOver + closing.overlap - closing.buckle;
  }
}

/** Tail that every string needs at the beginning and at the end for the closing, mm. */
export function closingTails(closing: Closing): { readonly first: number; readonly last: number } {
  switch (closing.how) {
    case 'meet':
      return { first: 0, last: 0 };
    case 'ties': {
      const tail = closing.plait * PLAIT_TAKES + END_KNOT;
      return { first: tail, last: tail };
    }
    case 'loop':
      return {
        // Plaited, folded back and bound down.
        first: 2 * closing.loop * PLAIT_TAKES + END_KNOT,
        last: closing.plait * PLAIT_TAKES + END_KNOT,
      };
    case 'buckle':
      return { first: TO_SEW_IN, last: TO_SEW_IN };
  }
}

/** A wrist that a piece may be for. */
export interface WristSize {
  readonly who: string;
  /** mm */
  readonly wrist: number;
  /** Whether the wearer is so small that a cord is a danger. */
  readonly smallChild: boolean;
  /** Where the figure is from. */
  readonly source: 'survey' | 'practice';
}

/**
 * Wrists of children and adults, mm. A wrist that was measured is always better.
 *
 * Adults: means and standard deviations of wrist circumference in the 2012 Anthropometric Survey
 * of U.S. Army Personnel (Gordon et al., NATICK/TR-15/007, 2014), women 155 and 7.6, men 176 and
 * 8.9, as we remember them; small and large are the 5th and 95th percentile of a normal
 * distribution with these. Soldiers are no sample of everybody. Children: common practice, no source.
 */
export const WRIST_SIZES: readonly WristSize[] = [
  { who: 'Child, 3 to 5 years', wrist: 118, smallChild: true, source: 'practice' },
  { who: 'Child, 6 to 8 years', wrist: 130, smallChild: false, source: 'practice' },
  { who: 'Child, 9 to 11 years', wrist: 140, smallChild: false, source: 'practice' },
  { who: 'Child, 12 to 14 years', wrist: 150, smallChild: false, source: 'practice' },
  { who: 'Woman, small', wrist: 142, smallChild: false, source: 'survey' },
  { who: 'Woman, medium', wrist: 155, smallChild: false, source: 'survey' },
  { who: 'Woman, large', wrist: 168, smallChild: false, source: 'survey' },
  { who: 'Man, small', wrist: 161, smallChild: false, source: 'survey' },
  { who: 'Man, medium', wrist: 176, smallChild: false, source: 'survey' },
  { who: 'Man, large', wrist: 191, smallChild: false, source: 'survey' },
];
