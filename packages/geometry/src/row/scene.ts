import type { KnotKind } from '@halfhitch/core';
import { GeometryError } from '../knot/options.js';

/** What becomes of the old lead when another lead takes over at a knot. */
export type ChangeHow =
  /** Laid under the new lead between the halves of this knot and locked by the second half. */
  | 'laid-through'
  /** Passed behind and under this (edge) knot before it is tied, and not caught by it. */
  | 'passed-behind'
  /** Taken down and behind before this knot, the first of a row, is tied. */
  | 'taken-down';

export interface RowKnot {
  /** Row, counted from 0 down the work. Default 0. */
  readonly row?: number;
  /** Which base string the knot is on, counted from 0 at the left. */
  readonly column: number;
  readonly kind: KnotKind;
  /** Ids of the strings. */
  readonly tying: string;
  readonly held: string;
  readonly change?: { readonly how: ChangeHow; readonly oldLead: string };
}

/** A piece of work to draw: base strings side by side and knots in the order they are tied. */
export interface RowScene {
  /** Ids of the base strings from the left. */
  readonly base: readonly string[];
  readonly knots: readonly RowKnot[];
  /** Diameters in mm; defaults as in KnotOptions. */
  readonly tyingDiameter?: number;
  readonly heldDiameter?: number;
  /** Free length of a lead below the work, in mm. Default 12 tying diameters. */
  readonly tail?: number;
}

/** One move of a knot in a row. Each takes one unit of time. */
export type RowPhase =
  | 'lay-aside'
  | 'pass-behind'
  | 'take-down'
  | 'first-half'
  | 'lay-through'
  | 'second-half';

/** Moves in which an old lead is taken out of the way and a new one comes up. */
export const isClearing = (phase: RowPhase): boolean =>
  phase === 'lay-aside' || phase === 'pass-behind' || phase === 'take-down';

/** Share of such a move after which the old lead is out of the way. */
export const CLEARED = 0.36;

export const ROW_LIMITS = { columns: 300, knots: 2000 } as const;

const PHASES: Readonly<Record<ChangeHow | 'none', readonly RowPhase[]>> = {
  none: ['first-half', 'second-half'],
  'laid-through': ['lay-aside', 'first-half', 'lay-through', 'second-half'],
  'passed-behind': ['pass-behind', 'first-half', 'second-half'],
  'taken-down': ['take-down', 'first-half', 'second-half'],
};

/**
 * The moves of one knot of a scene, in order. `rowPose`'s time runs from 0 to their number.
 *
 * @throws GeometryError when the scene has no such knot
 */
export function rowPhases(scene: RowScene, knotIndex: number): readonly RowPhase[] {
  return PHASES[knotAt(scene, knotIndex).change?.how ?? 'none'];
}

export function knotAt(scene: RowScene, index: number): RowKnot {
  const knot = scene.knots[index];
  if (knot) return knot;
  throw new GeometryError(
    `There is no knot ${index}; the scene has ${scene.knots.length}, counted from 0.`,
  );
}

/** Throws GeometryError, saying which knot and why, unless the scene can be drawn. */
export function checkScene(scene: RowScene): void {
  const { columns, knots } = ROW_LIMITS;
  if (scene.base.length < 1 || scene.base.length > columns) {
    throw new GeometryError(
      `The scene has ${scene.base.length} base strings; it must have 1 to ${columns}.`,
    );
  }
  if (scene.knots.length > knots) {
    throw new GeometryError(
      `The scene has ${scene.knots.length} knots, more than ${knots}; draw a part of it.`,
    );
  }
  scene.knots.forEach((knot, i) => {
    if (scene.base[knot.column] !== knot.held) {
      throw new GeometryError(
        `Knot ${i} is on base string ${knot.held} in column ${knot.column}, where the scene has ` +
          `${scene.base[knot.column] ?? 'none'}. Give the column of the string that is held.`,
      );
    }
    if (scene.base.includes(knot.tying)) {
      throw new GeometryError(
        `Knot ${i} is tied by ${knot.tying}, which is a base string. Name a lead.`,
      );
    }
    if (knot.change && knot.change.oldLead === knot.tying) {
      throw new GeometryError(
        `Knot ${i} changes from lead ${knot.tying} to itself. Leave out the change.`,
      );
    }
  });
}
