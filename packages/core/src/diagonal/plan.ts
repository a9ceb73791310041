import { halvesOf } from '../model/knot.js';
import { Op, type StepList, StepListBuilder } from '../model/steplist.js';
import type { StringId, ThreadString } from '../model/strings.js';
import { checkDiagonalPattern } from './check-pattern.js';
import { knotIndex, knotsInLattice, knotsInRow, type Lattice } from './lattice.js';
import { type DiagonalPattern, knotAt } from './pattern.js';
import { simulateDiagonal } from './simulate.js';

/** A plan for a diagonal pattern: the strings that hang, and every step from first to last. */
export interface DiagonalPlan {
  readonly name: string;
  readonly lattice: Lattice;
  /** All of them hang, tie and are tied onto, so each has the role of a base string. */
  readonly strings: readonly ThreadString[];
  /** Ids of the strings, from left to right. */
  readonly hung: readonly StringId[];
  readonly steps: StepList;
}

const HALF_OP = { forward: Op.halfForward, backward: Op.halfBackward } as const;

/**
 * Turns a diagonal pattern into steps, each row from the left.
 *
 * @throws InputError when the pattern is outside the limits, or not whole
 */
export function planDiagonal(pattern: DiagonalPattern): DiagonalPlan {
  checkDiagonalPattern(pattern);
  const { name, rows, first } = pattern;
  const strings = hangingStrings(pattern);
  const { tying, held } = simulateDiagonal(pattern);
  const steps = new StepListBuilder(strings, 2 * knotsInLattice(pattern) + rows);
  for (let row = 0; row < rows; row++) {
    if (row > 0) steps.code(Op.turn);
    for (let place = 0; place < knotsInRow(pattern, row); place++) {
      const kind = knotAt(pattern, row, place);
      if (kind === null) continue;
      const cell = knotIndex(pattern, row, place);
      for (const way of halvesOf(kind)) {
        steps.code(HALF_OP[way], tying[cell] as number, held[cell] as number);
      }
    }
  }
  return {
    name,
    lattice: { strings: pattern.strings, rows, first },
    strings,
    hung: strings.map((string) => string.id),
    steps: steps.finish(),
  };
}

/** The strings of a pattern, S1 at the left. */
export function hangingStrings(pattern: DiagonalPattern): readonly ThreadString[] {
  return Array.from(pattern.start, (colour, slot) => ({
    id: `S${slot + 1}`,
    role: 'base' as const,
    colour: pattern.colours[colour]?.hex ?? '#000000',
    name: pattern.colours[colour]?.name ?? '',
  }));
}
