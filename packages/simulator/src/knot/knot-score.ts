import { STAGE_ENDS } from '@halfhitch/geometry/knot';
import type { Score } from '../playback/player.js';

/** Seconds for one half hitch at speed 1. */
const HALF_SECONDS = 5;

const WITHIN = [STAGE_ENDS.bar, STAGE_ENDS['turned-behind'], STAGE_ENDS['through-loop']];

/** A knot played: a half hitch from 0 to 1, the other from 1 to 2, each in four moves. */
export const KNOT_SCORE: Score = {
  length: 2,
  stops: [0, 1, 2],
  stills: [0, ...WITHIN, 1, ...WITHIN.map((end) => 1 + end), 2],
  secondsAt: () => HALF_SECONDS,
};
