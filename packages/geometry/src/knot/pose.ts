import { type HalfWay, halvesOf, type KnotKind } from '@halfhitch/core';
import { lengthOf, mirrored, placed } from '../curve/polyline.js';
import { familyFor, type KnotFamily } from './family.js';
import { leadIn } from './lead-in.js';
import type { Pairing } from './loose.js';
import { entryHeading, type Moment, momentOf, workingLength } from './motion.js';
import {
  GeometryError,
  type KnotOptions,
  type ResolvedOptions,
  resolveOptions,
} from './options.js';
import type { KnotStage } from './stages.js';

/** Two strings at one moment of a knot. Points are xyz triplets in mm, in the frame of `frame.ts`. */
export interface KnotPose {
  readonly kind: KnotKind;
  /** 0 to 2: the first half hitch from 0 to 1, the second from 1 to 2. */
  readonly t: number;
  readonly half: 0 | 1;
  readonly halfWay: HalfWay;
  readonly stage: KnotStage;
  /** 0 to 1 within the stage. */
  readonly stageProgress: number;
  /** Centre-line of the tying string, from the finished work to its free end. */
  readonly tying: Float64Array;
  /** Centre-line of the held string, from the top down. */
  readonly held: Float64Array;
  readonly tyingRadius: number;
  readonly heldRadius: number;
  /** Points of `tying` that this stage moves: first and last index, inclusive. */
  readonly active: { readonly from: number; readonly to: number };
}

const HELD_POINTS = 48;
const LEAD_IN_POINTS = 28;

/** Length of the held string below the knot, in tying diameters. */
const HELD_BELOW = 18;

/**
 * The two strings at time `t` of a knot. Pure: the same arguments give the same pose.
 *
 * @param t 0 to 2; values outside are taken as the nearest end.
 * @throws GeometryError when an option is outside its limits or `t` is not a number.
 */
export function knotPose(kind: KnotKind, t: number, options: KnotOptions = {}): KnotPose {
  if (Number.isNaN(t)) throw new GeometryError('t is not a number; give the time from 0 to 2.');
  const o = resolveOptions(options);
  const halves = halvesOf(kind);
  const time = Math.min(Math.max(t, 0), 2);
  const half = time < 1 ? 0 : 1;
  const pairing: Pairing = halves[0] === halves[1] ? 'same' : 'opposite';
  const family = familyFor(pairing, o.ratio);
  const u = time - half;
  const heading = entryHeading(family, half, u);
  const lead = leadIn(family.proportions, heading, o.above, LEAD_IN_POINTS);
  const length = wholeLength(family, o) - lengthOf(lead);
  const moment = momentOf(family, half, u, length, o.points - LEAD_IN_POINTS + 1);
  const left = (halves[0] === 'backward') !== o.mirror;
  const tying = new Float64Array(o.points * 3);
  tying.set(placed(left ? mirrored(lead) : lead, o.diameter));
  tying.set(inMillimetres(moment, left, o.diameter), (LEAD_IN_POINTS - 1) * 3);
  const moving = Math.floor((moment.moving / length) * (o.points - LEAD_IN_POINTS));
  return {
    kind,
    t: time,
    half,
    halfWay: halves[half],
    stage: moment.stage,
    stageProgress: moment.progress,
    tying,
    held: heldLine(o.above, o.diameter),
    tyingRadius: o.diameter / 2,
    heldRadius: (o.diameter * o.ratio) / 2,
    active: { from: LEAD_IN_POINTS - 1 + moving, to: o.points - 1 },
  };
}

/** Length of the whole lead, which no moment changes. */
function wholeLength(family: KnotFamily, o: ResolvedOptions): number {
  const heading = entryHeading(family, 1, 1);
  const lead = leadIn(family.proportions, heading, o.above, LEAD_IN_POINTS);
  return lengthOf(lead) + workingLength(family, o.tail);
}

/** Scales a moment to mm in place and turns it to the side it is tied from. */
export function inMillimetres(moment: Moment, left: boolean, diameter: number): Float64Array {
  const { points } = moment;
  const x = (moment.flipped !== left ? -1 : 1) * diameter;
  for (let i = 0; i < points.length; i += 3) {
    points[i] = points[i]! * x;
    points[i + 1] = points[i + 1]! * diameter;
    points[i + 2] = points[i + 2]! * diameter;
  }
  return points;
}

function heldLine(above: number, diameter: number): Float64Array {
  const points = new Float64Array(HELD_POINTS * 3);
  for (let i = 0; i < HELD_POINTS; i++) {
    points[i * 3 + 1] = (-above + ((above + HELD_BELOW) * i) / (HELD_POINTS - 1)) * diameter;
  }
  return points;
}
