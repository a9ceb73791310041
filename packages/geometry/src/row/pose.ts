import { type HalfWay, halvesOf, type KnotKind } from '@halfhitch/core';
import { type Drape, draped } from '../curve/drape.js';
import { joined, placed } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import { familyFor } from '../knot/family.js';
import { momentOf, workingLength } from '../knot/motion.js';
import { GeometryError, type ResolvedOptions, resolveOptions } from '../knot/options.js';
import { inMillimetres } from '../knot/pose.js';
import type { KnotStage } from '../knot/stages.js';
import { entryOf, exitOf, fromRight, type Layout, layoutOf, tyingOf } from './layout.js';
import { linkBetween } from './link.js';
import {
  checkScene,
  knotAt,
  type RowKnot,
  type RowPhase,
  type RowScene,
  rowPhases,
} from './scene.js';

/** A string in a row at one moment. Points are xyz triplets in mm. */
export interface RowStrand {
  readonly id: string;
  /** Its part in the knot being tied, or none. */
  readonly role: 'tying' | 'held' | 'old-lead' | 'base' | 'lead';
  readonly points: Float64Array;
  readonly radius: number;
  /** Points that the current move moves: first and last index, inclusive. */
  readonly active?: { readonly from: number; readonly to: number };
}

export interface RowPose {
  readonly knotIndex: number;
  readonly t: number;
  readonly phase: RowPhase;
  /** 0 to 1 within the phase. */
  readonly phaseProgress: number;
  readonly kind: KnotKind;
  /** In a half hitch: which way, and the move within it. */
  readonly halfWay?: HalfWay;
  readonly stage?: KnotStage;
  readonly stageProgress?: number;
  readonly strands: readonly RowStrand[];
  /** Middle of the knot being tied, for a camera. Mm. */
  readonly focus: Vec3;
  /** Room of one knot in the row, in mm. */
  readonly pitch: number;
  readonly rowHeight: number;
}

const DOWN: Vec3 = [0, 1, 0];
const BACK: Vec3 = [0, 0, -1];

interface Setting {
  readonly scene: RowScene;
  readonly layout: Layout;
  readonly options: ResolvedOptions;
  readonly index: number;
  readonly phase: RowPhase;
  readonly progress: number;
}

/**
 * All strings of a scene while one of its knots is tied: earlier knots finished, later ones not yet
 * begun. Pure: the same arguments give the same pose.
 *
 * @param t 0 to the number of the knot's phases (`rowPhases`)
 */
export function rowPose(scene: RowScene, knotIndex: number, t: number): RowPose {
  checkScene(scene);
  if (Number.isNaN(t)) throw new GeometryError('t is not a number; give the time from 0.');
  const knot = knotAt(scene, knotIndex);
  const phases = rowPhases(scene, knotIndex);
  const time = Math.min(Math.max(t, 0), phases.length);
  const at = Math.min(Math.floor(time), phases.length - 1);
  const phase = phases[at]!;
  const layout = layoutOf(scene);
  const setting: Setting = {
    scene,
    layout,
    options: resolveOptions(scene),
    index: knotIndex,
    phase,
    progress: time - at,
  };
  const tied = halfAt(phase, setting.progress);
  const moment = momentFor(setting, knot, tied.half, tied.u);
  const strands: RowStrand[] = [
    ...baseStrands(setting, knot),
    ...leadsOf(scene, knotIndex).map((id) => leadStrand(setting, id, moment.points)),
  ];
  const inHalf = phase === 'first-half' || phase === 'second-half';
  return {
    knotIndex,
    t: time,
    phase,
    phaseProgress: setting.progress,
    kind: knot.kind,
    ...(inHalf
      ? {
          halfWay: halvesOf(knot.kind)[tied.half],
          stage: moment.stage,
          stageProgress: moment.progress,
        }
      : {}),
    strands,
    focus: layout.placeOf(knot),
    pitch: layout.pitch,
    rowHeight: layout.rowHeight,
  };
}

function halfAt(phase: RowPhase, progress: number): { half: 0 | 1; u: number } {
  if (phase === 'first-half') return { half: 0, u: progress };
  if (phase === 'second-half') return { half: 1, u: progress };
  return phase === 'lay-through' ? { half: 0, u: 1 } : { half: 0, u: 0 };
}

function momentFor(setting: Setting, knot: RowKnot, half: 0 | 1, u: number) {
  const { options, layout } = setting;
  const halves = halvesOf(knot.kind);
  const family = familyFor(halves[0] === halves[1] ? 'same' : 'opposite', options.ratio);
  const moment = momentOf(family, half, u, workingLength(family, options.tail), 224);
  const points = inMillimetres(moment, fromRight(knot), options.diameter);
  const [x, y, z] = layout.placeOf(knot);
  return { points: placed(points, 1, x, y, z), stage: moment.stage, progress: moment.progress };
}

function leadsOf(scene: RowScene, index: number): string[] {
  const ids = new Set<string>();
  for (let i = 0; i <= index; i++) ids.add(scene.knots[i]!.tying);
  return [...ids];
}

function baseStrands(setting: Setting, knot: RowKnot): RowStrand[] {
  const { scene, layout, options } = setting;
  const d = options.diameter;
  const rows = Math.max(...scene.knots.map((k) => k.row ?? 0));
  const top = -6 * d;
  const bottom = rows * layout.rowHeight + 18 * d;
  return scene.base.map((id, column) => {
    const points = new Float64Array(48 * 3);
    for (let i = 0; i < 48; i++) {
      points[i * 3] = column * layout.pitch;
      points[i * 3 + 1] = top + ((bottom - top) * i) / 47;
    }
    const role = column === knot.column ? 'held' : 'base';
    return { id, role, points, radius: (d * options.ratio) / 2 };
  });
}

function leadStrand(setting: Setting, id: string, tyingNow: Float64Array): RowStrand {
  const { scene, layout, index, options } = setting;
  const radius = options.diameter / 2;
  const current = scene.knots[index]!;
  const parts: Float64Array[] = [];
  let last: RowKnot | undefined;
  for (let i = 0; i < index; i++) {
    const knot = scene.knots[i]!;
    if (knot.tying !== id) continue;
    parts.push(last ? linkFor(setting, last, knot) : leadInto(setting, knot, i));
    parts.push(tyingOf(layout, knot));
    last = knot;
  }
  if (current.tying === id) {
    parts.push(last ? linkFor(setting, last, current) : leadInto(setting, current, index));
    const before = joined(...parts);
    const points = joined(before, tyingNow);
    return {
      id,
      role: 'tying',
      points,
      radius,
      active: { from: Math.max(before.length / 3 - 1, 0), to: points.length / 3 - 1 },
    };
  }
  const before = joined(...parts);
  const points = joined(before, parkedTail(setting, last!, id));
  const isOld = current.change?.oldLead === id;
  return {
    id,
    role: isOld ? 'old-lead' : 'lead',
    points,
    radius,
    ...(isOld ? { active: { from: before.length / 3 - 1, to: points.length / 3 - 1 } } : {}),
  };
}

/** From above for the first knot of all; from behind for a lead that is taken up later. */
function leadInto(setting: Setting, knot: RowKnot, index: number): Float64Array {
  const { layout, options } = setting;
  const d = options.diameter;
  const entry = entryOf(layout, knot);
  const side = entry.heading[0];
  if (index === 0) {
    const x = entry.at[0] - side * 0.8 * d;
    return linkBetween({ at: [x, entry.at[1] - 6 * d, entry.at[2]], heading: DOWN }, entry);
  }
  const behind: Vec3 = [entry.at[0] - side * 0.1 * d, entry.at[1] + 6 * d, -2 * entry.at[2]];
  return linkBetween({ at: behind, heading: [0, -1, 0] }, entry);
}

function linkFor(setting: Setting, from: RowKnot, to: RowKnot): Float64Array {
  const exit = exitOf(setting.layout, from);
  const entry = entryOf(setting.layout, to);
  const turns = exit.heading[0] !== entry.heading[0];
  const d = setting.options.diameter;
  return linkBetween(exit, entry, turns ? [0, 0, 0.8 * d] : [0, 0, 0]);
}

/** The free part of a lead that does not tie: in front, on its way, or parked at the back. */
function parkedTail(setting: Setting, last: RowKnot, id: string): Float64Array {
  const { layout, options, scene, index, phase, progress } = setting;
  const d = options.diameter;
  const exit = exitOf(layout, last);
  const depth = exit.at[2] + 2 * exit.at[2];
  const front: Drape = { heading: exit.heading, steps: [{ to: DOWN, radius: 0.6 * d, run: 0 }] };
  const back: Drape = {
    heading: exit.heading,
    steps: [
      { to: DOWN, radius: 0.6 * d, run: 1.5 * d },
      { to: BACK, radius: 0.6 * d, run: depth },
      { to: DOWN, radius: 0.6 * d, run: 0 },
    ],
  };
  const current = scene.knots[index]!;
  const isOld = current.change?.oldLead === id;
  const parking: readonly RowPhase[] = ['take-down', 'pass-behind', 'lay-through'];
  const phases = rowPhases(scene, index);
  const parksAt = phases.findIndex((p) => parking.includes(p));
  const now = phases.indexOf(phase);
  let f = 1;
  if (isOld) f = now < parksAt ? 0 : now > parksAt ? 1 : progress * progress * (3 - 2 * progress);
  return draped(exit.at, front, back, f, options.tail * d, 96);
}
