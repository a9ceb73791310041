import { lengthOf } from '../curve/polyline.js';
import { Track, type Vec3 } from '../curve/track.js';
import { DOWN, type HalfFamily, type KnotFamily, RIGHT, ZONE_POINTS } from './family.js';
import { swing, threaded } from './reach.js';
import { type KnotStage, stageAt } from './stages.js';

/** Radius of the bend that takes the lead from above into the knot. */
const LEAD_IN_BEND = 0.8;

/** The lead from a knot's start at one moment, in the frame of the half being tied, in tying diameters. */
export interface Moment {
  readonly points: Float64Array;
  readonly stage: KnotStage;
  readonly progress: number;
  readonly flipped: boolean;
  /** Arc length at which the part that moves begins. */
  readonly moving: number;
  readonly length: number;
}

const ease = (x: number): number => x * x * (3 - 2 * x);

/**
 * The lead that comes from above to the knot's start, in tying diameters, in the frame of the first
 * half.
 */
export function leadIn(family: KnotFamily, above: number, count: number): Float64Array {
  const { halfPitch, layer } = family.proportions;
  const top: Vec3 = [-(halfPitch + LEAD_IN_BEND), -Math.max(above, LEAD_IN_BEND), layer];
  return new Track(top, DOWN)
    .line(above - LEAD_IN_BEND)
    .turn(RIGHT, LEAD_IN_BEND)
    .sample(count);
}

/** Length of the lead from the knot's start to its free end; the same at every moment. */
export function workingLength(family: KnotFamily, tail: number): number {
  return family.tightLength + (family.proportions.bend * Math.PI) / 2 + tail;
}

/**
 * The lead at fraction `u` of half `index` of a knot, from the knot's start on. Its length is the same at every moment: what
 * the knot takes up or gives back is paid in or out at the free end.
 */
export function momentOf(
  family: KnotFamily,
  index: 0 | 1,
  u: number,
  tail: number,
  count: number,
): Moment {
  const half: HalfFamily = family.halves[index];
  const whole = workingLength(family, tail);
  const start = half.beforeLength;
  const track =
    start > 0
      ? new Track([half.before[0]!, half.before[1]!, half.before[2]!], RIGHT)
      : new Track(half.reach.start, RIGHT);
  const { stage, progress } = stageAt(u);
  let moving = start;
  if (stage === 'snug') {
    const zone = zoneAt(half, ease(progress));
    const outward = index === 1 ? RIGHT : half.leaving.way === 'across' ? RIGHT : DOWN;
    track.follow(zone, lengthOf(zone), outward);
    moving = track.length;
    if (index === 1) track.turn(DOWN, family.proportions.bend);
    track.line(Math.max(whole - track.length, 0));
  } else {
    if (start > 0) track.follow(half.before, half.beforeLength, DOWN);
    if (stage === 'lying' || stage === 'bar') {
      swing(track, half.reach, stage === 'bar' ? ease(progress) : 0, 0);
      track.line(whole - track.length);
    } else {
      const slack = slackAt(half, whole - start, stage, progress);
      threaded(track, half.reach, slack, half.leaving);
      if (index === 1) track.turn(DOWN, family.proportions.bend);
      track.line(whole - track.length);
      moving = whole - Math.min(6, tail);
    }
  }
  return {
    points: track.sample(count, whole),
    stage,
    progress,
    flipped: half.flipped,
    moving,
    length: whole,
  };
}

function zoneAt(half: HalfFamily, f: number): Float64Array {
  const last = half.zones.length - 1;
  const at = Math.min(f * last, last);
  const i = Math.min(Math.floor(at), last - 1);
  const a = half.zones[i]!;
  const b = half.zones[i + 1]!;
  const r = at - i;
  const out = new Float64Array(ZONE_POINTS * 3);
  for (let k = 0; k < out.length; k++) out[k] = a[k]! + (b[k]! - a[k]!) * r;
  return out;
}

/**
 * How far the loop hangs down while the free end travels. The free end leads along the way through
 * the hitch; the loop behind it shortens by half of what the end goes forward.
 */
function slackAt(half: HalfFamily, length: number, stage: KnotStage, progress: number): number {
  const probe = threaded(new Track(half.reach.start, DOWN), half.reach, 0, half.leaving);
  const u = ((half.reach.start[2] + half.reach.layer) / 2) * Math.PI;
  const most = length - (probe.turned - u);
  const emerging = Math.max((length - probe.under) / 2, 0);
  return stage === 'turned-behind'
    ? most + (emerging - most) * progress
    : emerging * (1 - ease(progress));
}
