import { changesPlaces, halvesOf } from '@halfhitch/core';
import { placed } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import { catchingFamilyFor } from '../knot/catching-family.js';
import { BETWEEN_KNOTS } from '../knot/caught.js';
import { type FinishedKnot, finishedFrom, finishedKnot, type KnotEnd } from '../knot/finished.js';
import { resolveOptions } from '../knot/options.js';
import { tightGaps } from './gaps.js';
import type { RowKnot, RowScene } from './scene.js';

/** Places of knots, in mm. */
export interface Layout {
  /** Distance of neighbouring base strings where no gap between them is crowded. */
  readonly pitch: number;
  /** Where each base string hangs. */
  readonly columns: readonly number[];
  /** Gaps between base strings that are wider because many threads go through them; `gaps.ts`. */
  readonly crowded: ReadonlySet<number>;
  readonly rowHeight: number;
  readonly finished: (knot: RowKnot) => FinishedKnot;
  /** Where the knot's held string is, and the height of the knot's frame. */
  readonly placeOf: (knot: RowKnot) => Vec3;
  /** Whether the knot catches an old lead that comes from the knot beside it between its halves. */
  readonly catches: (knot: RowKnot) => boolean;
}

const known = new WeakMap<RowScene, Layout>();

/** Distances in a piece of work, taken from the tight knots themselves. */
export function layoutOf(scene: RowScene): Layout {
  let layout = known.get(scene);
  if (!layout) {
    layout = workOut(scene);
    known.set(scene, layout);
  }
  return layout;
}

function workOut(scene: RowScene): Layout {
  const options = {
    ...(scene.tyingDiameter === undefined ? {} : { tyingDiameter: scene.tyingDiameter }),
    ...(scene.heldDiameter === undefined ? {} : { heldDiameter: scene.heldDiameter }),
  };
  const resolved = resolveOptions(options);
  const shapes = new Map<string, FinishedKnot>();
  const finished = (knot: RowKnot): FinishedKnot => {
    const catches = catching.has(knot);
    const key = `${knot.kind} ${catches}`;
    let found = shapes.get(key);
    if (!found) {
      found = catches
        ? finishedFrom(knot.kind, catchingFamilyFor(resolved.ratio), resolved)
        : finishedKnot(knot.kind, options);
      shapes.set(key, found);
    }
    return found;
  };
  const catching = catchingKnots(scene);
  const clove = finishedKnot('forward', options);
  const cow = finishedKnot('forward-backward', options);
  const d = clove.tyingRadius * 2;
  const pitch = clove.size.width + BETWEEN_KNOTS * d;
  // A knot that has caught a lead is the tallest, below: it is placed with its top at that of the others.
  const caught = [...catching][0];
  const tall = caught && finished(caught);
  const columns: number[] = [0];
  const { crowded, steep } = tightGaps(scene, (knot) => catching.has(knot), resolved.ratio !== 1);
  for (let gap = 1; gap < scene.base.length; gap++) {
    columns.push(
      columns[gap - 1]! + pitch + (crowded.has(gap) ? SPREAD : steep.has(gap) ? STEEP : 0) * d,
    );
  }
  const tallest = Math.max(clove.size.height, cow.size.height, tall?.size.height ?? 0);
  const close = stacked(catching) || (resolved.ratio !== 1 && catching.size > 0);
  const rowHeight = tallest + (close ? STACKED * d : 0);
  const raised = tall ? topOf(clove) - topOf(tall) : 0;
  return {
    pitch,
    columns,
    crowded,
    rowHeight,
    catches: (knot) => catching.has(knot),
    finished,
    placeOf: (knot) => {
      const { entry, exit } = finished(knot);
      // Every knot is centred on its row: a cow hitch by the mean of its two ends.
      const centre = (entry.at[1] + exit.at[1]) / 2;
      const up = catching.has(knot) ? raised : 0;
      return [columns[knot.column]!, (knot.row ?? 0) * rowHeight - centre + up, 0];
    },
  };
}

/** How much wider a gap is that many threads go through, in diameters. */
const SPREAD = 2;

/** The same where a lead goes steeply from one knot to the next, at an edge of work two knots wide. */
const STEEP = 0.6;

/**
 * Room between a knot that has caught a lead and another such below it while that is tied, in diameters; where
 * leads and base strings differ, and any knot below.
 */
const STACKED = 0.12;

/** Whether of these knots one is right below another. */
const stacked = (knots: ReadonlySet<RowKnot>): boolean =>
  [...knots].some((a) =>
    [...knots].some((b) => a.column === b.column && (b.row ?? 0) === (a.row ?? 0) + 1),
  );

/** The highest point of a knot's lead in the knot's frame. */
function topOf({ tying }: FinishedKnot): number {
  let top = Infinity;
  for (let i = 1; i < tying.length; i += 3) top = Math.min(top, tying[i]!);
  return top;
}

export function tyingOf(layout: Layout, knot: RowKnot): Float64Array {
  const [x, y, z] = layout.placeOf(knot);
  return placed(layout.finished(knot).tying, 1, x, y, z);
}

export function entryOf(layout: Layout, knot: RowKnot): KnotEnd {
  return moved(layout.finished(knot).entry, layout.placeOf(knot));
}

export function exitOf(layout: Layout, knot: RowKnot): KnotEnd {
  return moved(layout.finished(knot).exit, layout.placeOf(knot));
}

/** Whether the lead ends on the side it began. */
export const comesBack = (knot: RowKnot): boolean => !changesPlaces(knot.kind);

/** Whether the first half is made from the right. */
export const fromRight = (knot: RowKnot): boolean => halvesOf(knot.kind)[0] === 'backward';

const moved = (end: KnotEnd, by: Vec3): KnotEnd => ({
  at: [end.at[0] + by[0], end.at[1] + by[1], end.at[2] + by[2]],
  heading: end.heading,
});

/**
 * Knots between whose halves an old lead is laid: clove hitches beside the old lead's last knot. (No
 * plan asks for another knot to catch a lead; a scene that does is drawn with the lead passing by.)
 */
function catchingKnots(scene: RowScene): ReadonlySet<RowKnot> {
  const out = new Set<RowKnot>();
  const last = new Map<string, RowKnot>();
  for (const knot of scene.knots) {
    const { change } = knot;
    const before = change?.how === 'laid-through' ? last.get(change.oldLead) : undefined;
    const beside = knot.column + (fromRight(knot) ? 1 : -1);
    if (
      before &&
      changesPlaces(knot.kind) &&
      before.column === beside &&
      (before.row ?? 0) === (knot.row ?? 0) &&
      fromRight(knot) === endsAtLeft(before)
    ) {
      out.add(knot);
    }
    last.set(knot.tying, knot);
  }
  return out;
}

/** Whether the lead leaves the knot to the left. */
const endsAtLeft = (knot: RowKnot): boolean => fromRight(knot) === changesPlaces(knot.kind);

/** The gap that a place is in: 0 left of the first base string, 1 between it and the second, and so on. */
export function gapAt({ columns }: Layout, x: number): number {
  let gap = 0;
  while (gap < columns.length && columns[gap]! < x) gap++;
  return gap;
}

/** Whether the gap that a place is in is wider than others. */
export const isWide = (layout: Layout, x: number): boolean => layout.crowded.has(gapAt(layout, x));
