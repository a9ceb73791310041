import { mirrored, placed, resample } from '../../curve/polyline.js';
import { familyFor } from '../../knot/family.js';
import { momentOf, workingLength } from '../../knot/motion.js';
import { inMillimetres } from '../../knot/pose.js';
import { type KnotStage, STAGE_ENDS } from '../../knot/stages.js';
import { leaned } from '../leaning.js';

/** Share of the first half in which the two strings are brought together. */
const TOGETHER = 0.12;

/** Share of the second half in which the knot is settled between its neighbours. */
const SETTLING = 0.12;

/** Points of the tying string from its knot's start on. */
export const POINTS = 200;

/** More of the free end's way than its length, in diameters, to be cut to measure. */
const BEYOND = 8;

/** Free length of a tying string when its knot is done, in diameters. */
export const TAIL = 13;

export const familyOf = (code: number) => familyFor(code >= 2 ? 'opposite' : 'same', 1);

export interface Tied {
  readonly half: 0 | 1;
  readonly stage: KnotStage;
  readonly progress: number;
  /** The lead from the knot's start on, from the middle of the knot's place; diameters. */
  readonly points: Float64Array;
  /** Point at which the part that moves begins. */
  readonly moving: number;
}

/** What the tying string does in its knot at a time, leaning as its held string does. */
export function tiedAt(code: number, time: number): Tied {
  return time < 1 ? madeAt(code, 0, firstHalfAt(time)) : madeAt(code, 1, time - 1);
}

/** The same at a fraction of one of its halves. */
export function madeAt(code: number, half: 0 | 1, u: number): Tied {
  const comesBack = code >= 2;
  const family = familyOf(code);
  const length = workingLength(family, TAIL) + BEYOND;
  const moment = momentOf(family, half, u, length, POINTS);
  const straight = inMillimetres(moment, false, 1);
  // A cow hitch's middle is half way between its two ends, which lie one below the other.
  const middle = comesBack ? 0.51 : 0;
  const lean = leaned(placed(straight, 1, 0, -middle), comesBack);
  return {
    half,
    stage: moment.stage,
    progress: moment.progress,
    points: resample(code % 2 === 1 ? mirrored(lean) : lean, POINTS),
    moving: Math.floor((moment.moving / length) * (POINTS - 1)),
  };
}

/** Time within the first half hitch, which begins when the strings have been brought together. */
function firstHalfAt(time: number): number {
  const lying = STAGE_ENDS.lying;
  if (time <= TOGETHER) return (time / TOGETHER) * lying;
  return lying + ((time - TOGETHER) / (1 - TOGETHER)) * (1 - lying);
}

export const ease = (x: number): number => x * x * (3 - 2 * x);

/** How far the strings have been brought together, and how far the knot is settled. */
export const togetherAt = (time: number): number => ease(Math.min(time / TOGETHER, 1));
export const settledAt = (time: number): number => ease(Math.max(0, (time - 2) / SETTLING + 1));
