import { draped } from '../curve/drape.js';
import { joined } from '../curve/polyline.js';
import { Track } from '../curve/track.js';
import type { CatchingFamily } from './catching-family.js';
import { waiting } from './caught.js';
import { DOWN, RIGHT } from './loose.js';
import { curveAt, ease, startOf } from './motion.js';
import { stageAt } from './stages.js';

/** The old lead at fraction `u` of the second half that is made over it, in the knot's frame. */
export function caughtAt(family: CatchingFamily, u: number): Float64Array {
  const { stage, progress } = stageAt(u);
  return curveAt(family.caught, stage === 'snug' ? ease(progress) : 0);
}

/**
 * The new lead between the halves of a knot that catches the old one: held out to the front while the
 * old lead is laid beneath, then lowered over it. `f` from 0 to 1.
 */
export function waitingMoment(
  family: CatchingFamily,
  f: number,
  length: number,
  count: number,
): Float64Array {
  const { zones } = family.halves[0];
  const snugged = zones[zones.length - 1]!;
  const track = new Track(startOf(snugged), RIGHT).follow(snugged, DOWN);
  const own = Math.min(Math.ceil((track.length / length) * count), count - 2);
  const ways = [RAISED, LOWERED].map(([from, to]) =>
    ease(Math.min(Math.max((f - from) / (to - from), 0), 1)),
  );
  const [raised, lowered] = ways as [number, number];
  const shape = (way: 'hanging' | 'out' | 'lifted') => waiting(family.proportions, way);
  const rest = length - track.length;
  const hung =
    lowered > 0
      ? draped(track.end, shape('out'), shape('lifted'), lowered, rest, count - own + 1)
      : draped(track.end, shape('hanging'), shape('out'), raised, rest, count - own + 1);
  return joined(track.sample(own), hung);
}

/** Times within the move at which the new lead is raised and lowered again. */
const RAISED = [0, 0.35] as const;
const LOWERED = [0.65, 1] as const;
