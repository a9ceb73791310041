import { type HalfWay, halvesOf, type KnotKind } from '@halfhitch/core';
import { placed } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import { catchingFamilyFor } from '../knot/catching-family.js';
import { waitingMoment } from '../knot/catching-motion.js';
import { familyFor } from '../knot/family.js';
import { momentOf, workingLength } from '../knot/motion.js';
import { GeometryError, resolveOptions } from '../knot/options.js';
import { inMillimetres } from '../knot/pose.js';
import type { KnotStage } from '../knot/stages.js';
import { fromRight, layoutOf } from './layout.js';
import { currentPath, finishedPath } from './lead-path.js';
import { restingLead } from './rest.js';
import {
  checkScene,
  knotAt,
  type RowKnot,
  type RowPhase,
  type RowScene,
  rowPhases,
} from './scene.js';
import { baseLines, type Setting } from './setting.js';

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
  /** Room of one knot in the row where no gap beside it is crowded, in mm. */
  readonly pitch: number;
  /** Where each base string hangs, its x in mm: crowded gaps are wider than others. */
  readonly columns: readonly number[];
  readonly rowHeight: number;
}

/**
 * Where the base strings of a scene hang: their x, in mm, at every moment of it. Gaps through which many
 * leads go are wider than others.
 */
export function columnsOf(scene: RowScene): readonly number[] {
  checkScene(scene);
  return layoutOf(scene).columns;
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
    columns: layout.columns,
    rowHeight: layout.rowHeight,
  };
}

function halfAt(phase: RowPhase, progress: number): { half: 0 | 1; u: number } {
  if (phase === 'first-half') return { half: 0, u: progress };
  if (phase === 'second-half') return { half: 1, u: progress };
  return phase === 'lay-through' ? { half: 0, u: 1 } : { half: 0, u: 0 };
}

/** More of the free end's way than its length, in diameters, to be cut to measure. */
const BEYOND = 1;

/** Points of the lead from its current knot's start on. */
const POINTS = 232;

function momentFor(setting: Setting, knot: RowKnot, half: 0 | 1, u: number) {
  const { options, layout } = setting;
  const halves = halvesOf(knot.kind);
  const caught = layout.catches(knot) ? catchingFamilyFor(options.ratio) : undefined;
  const family = caught ?? familyFor(halves[0] === halves[1] ? 'same' : 'opposite', options.ratio);
  const length = workingLength(family, options.tail);
  const lying = momentOf(family, half, u, length, POINTS, BEYOND);
  const moment =
    caught && setting.phase === 'lay-through'
      ? { ...lying, points: waitingMoment(caught, setting.progress, length + BEYOND, POINTS) }
      : lying;
  const points = inMillimetres(moment, fromRight(knot), options.diameter);
  const [x, y, z] = layout.placeOf(knot);
  return { points: placed(points, 1, x, y, z), stage: moment.stage, progress: moment.progress };
}

/** Leads to be seen: those that have tied or are about to. */
function leadsOf(scene: RowScene, index: number): string[] {
  return [...new Set(scene.knots.slice(0, index + 1).map(({ tying }) => tying))];
}

function baseStrands(setting: Setting, knot: RowKnot): RowStrand[] {
  const radius = (setting.options.diameter * setting.options.ratio) / 2;
  return baseLines(setting).map((points, column) => ({
    id: setting.scene.base[column]!,
    role: column === knot.column ? 'held' : 'base',
    points,
    radius,
  }));
}

function leadStrand(setting: Setting, id: string, tyingNow: Float64Array): RowStrand {
  const { scene, index, options } = setting;
  const radius = options.diameter / 2;
  const current = scene.knots[index]!;
  if (current.tying === id) {
    const points = currentPath(setting, current, tyingNow, BEYOND * options.diameter);
    const to = points.length / 3 - 1;
    const active = { from: Math.max(to + 1 - tyingNow.length / 3, 0), to };
    return { id, role: 'tying', points, radius, active };
  }
  const path = finishedPath(setting, id)!;
  const isOld = current.change?.oldLead === id;
  const { points, free } = restingLead(setting, path, id);
  const active = { from: Math.min(free, points.length / 3 - 1), to: points.length / 3 - 1 };
  return { id, role: isOld ? 'old-lead' : 'lead', points, radius, ...(isOld ? { active } : {}) };
}
