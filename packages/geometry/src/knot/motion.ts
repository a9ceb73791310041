import { Track, type Vec3 } from '../curve/track.js';
import type { HalfFamily, KnotFamily } from './family.js';
import { DOWN, hangFree, hangLength, RIGHT } from './loose.js';
import { swing, threaded } from './reach.js';
import { type KnotStage, stageAt } from './stages.js';

/** The lead from a knot's start at one moment, in the frame of the half being tied. */
export interface Moment {
  /** Points at equal steps, in tying diameters. */
  readonly points: Float64Array;
  readonly stage: KnotStage;
  readonly progress: number;
  readonly flipped: boolean;
  /** Arc length from the knot's start at which the part that moves begins. */
  readonly moving: number;
}

export const ease = (x: number): number => x * x * (3 - 2 * x);

/** How much of the free end is to hang out of a loop before the loop is pulled tight. */
const THROUGH = 3;

/**
 * Length of a lead, from the knot's start, of which `tail` hangs free when the knot is done; more where
 * the second half's open loop takes so much that the free end would not come through it.
 */
export function workingLength(family: KnotFamily, tail: number): number {
  const open = family.halves[1].loose.zone.length + THROUGH;
  const hang = hangLength(family.pairing, family.proportions);
  return Math.max(family.tightLength + tail, open) + hang;
}

/** The direction in which the lead comes into the knot, in the first half's frame. */
export function entryHeading(family: KnotFamily, index: 0 | 1, u: number): Vec3 {
  const half = family.halves[index];
  const { stage, progress } = stageAt(u);
  const zone = stage === 'snug' ? zoneAt(half, ease(progress)) : half.before;
  if (!zone) return RIGHT;
  const dx = (zone[3]! - zone[0]!) * (half.flipped ? -1 : 1);
  const dy = zone[4]! - zone[1]!;
  const dz = zone[5]! - zone[2]!;
  const length = Math.hypot(dx, dy, dz);
  return [dx / length, dy / length, dz / length];
}

/**
 * The lead at fraction `u` of half `index` of a knot, from the knot's start on, `length` long at
 * every moment: what the hitch takes up or gives back is paid in or out at the free end. `beyond` gives
 * some more of the free end's way, for a caller that cuts it off elsewhere.
 */
export function momentOf(
  family: KnotFamily,
  index: 0 | 1,
  u: number,
  length: number,
  count: number,
  beyond = 0,
): Moment {
  const half = family.halves[index];
  const { stage, progress } = stageAt(u);
  const { track, moving } =
    stage === 'snug'
      ? snug(family, index, ease(progress))
      : half.before
        ? moved(
            family,
            index,
            new Track(startOf(half.before), RIGHT).follow(half.before, DOWN),
            length,
            u,
          )
        : moved(family, index, new Track(half.loose.reach.start, RIGHT), length, u);
  track.line(Math.max(length + beyond - track.length, 0));
  return {
    points: track.sample(count, length + beyond),
    stage,
    progress,
    flipped: half.flipped,
    moving,
  };
}

export const startOf = (points: Float64Array): Vec3 => [points[0]!, points[1]!, points[2]!];

interface Laid {
  readonly track: Track;
  readonly moving: number;
}

/** The hitch being pulled tight; `f` of the way. */
function snug(family: KnotFamily, index: 0 | 1, f: number): Laid {
  const zone = zoneAt(family.halves[index], f);
  const track = new Track(startOf(zone), RIGHT).follow(zone, index === 1 ? RIGHT : DOWN);
  const moving = index === 1 ? family.halves[1].loose.zone.length * 0.4 : 0;
  if (index === 1) hangFree(track, family.pairing, family.proportions);
  return { track, moving: Math.min(moving, track.length) };
}

/** The lead being laid over, taken behind and threaded through. */
function moved(family: KnotFamily, index: 0 | 1, track: Track, length: number, u: number): Laid {
  const { reach, leaving } = family.halves[index].loose;
  const start = track.length;
  const { stage, progress } = stageAt(u);
  if (stage === 'lying' || stage === 'bar') {
    swing(track, reach, stage === 'bar' ? ease(progress) : 0, 0);
    return { track, moving: start };
  }
  const slack = slackAt(family.halves[index], length - start, stage, progress);
  threaded(track, reach, slack, leaving);
  if (index === 1) hangFree(track, family.pairing, family.proportions);
  return { track, moving: Math.max(length - SHOWN, start) };
}

/** How much of the free end is shown as moving while it is threaded, in diameters. */
const SHOWN = 6;

const zoneAt = (half: HalfFamily, f: number): Float64Array => curveAt(half.zones, f);

/** Between the curves of a motion, `f` of the way from the first to the last. */
export function curveAt(curves: readonly Float64Array[], f: number): Float64Array {
  const last = curves.length - 1;
  const place = Math.min(f * last, last);
  const i = Math.min(Math.floor(place), last - 1);
  const a = curves[i]!;
  const b = curves[i + 1]!;
  const r = place - i;
  const out = new Float64Array(a.length);
  for (let k = 0; k < out.length; k++) out[k] = a[k]! + (b[k]! - a[k]!) * r;
  return out;
}

/**
 * How far the loop hangs down while the free end travels. The free end leads along the way through
 * the hitch; the loop behind it shortens by half of what the end goes forward.
 */
function slackAt(half: HalfFamily, length: number, stage: KnotStage, progress: number): number {
  const { reach, leaving } = half.loose;
  const probe = threaded(new Track(reach.start, DOWN), reach, 0, leaving);
  const u = ((reach.start[2] + reach.layer) / 2) * Math.PI;
  const most = length - (probe.turned - u);
  const emerging = Math.max((length - probe.under) / 2, 0);
  return stage === 'turned-behind'
    ? most + (emerging - most) * progress
    : emerging * (1 - ease(progress));
}
