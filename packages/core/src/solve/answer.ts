import { knotsAcross } from '../diagonal/lattice.js';
import type { DiagonalPattern } from '../diagonal/pattern.js';
import type { DiagonalPicture } from '../diagonal/picture.js';
import { ANY_COLOUR } from '../diagonal/picture.js';
import { simulateDiagonal } from '../diagonal/simulate.js';
import type { Clock } from './clock.js';
import type {
  DiagonalConflict,
  DiagonalSolution,
  SolutionTally,
  SolveOptions,
  SolveStatus,
} from './options.js';
import { differingKnots } from './problem.js';

/** A slip in the solver; no input should lead here. */
class UnprovenAnswer extends Error {
  constructor(what: string) {
    super(`The answer found does not hold: ${what}.`);
  }
}

interface Found {
  readonly status: SolveStatus;
  readonly pattern: DiagonalPattern | null;
  readonly atLeastWrong: number;
  readonly conflict?: DiagonalConflict | null;
  readonly fewestProven?: boolean | null;
}

/**
 * An answer as it is handed out. The pattern is knotted on paper and held against all that was
 * asked, by code that knows nothing of how it was found.
 *
 * @throws UnprovenAnswer where it does not hold
 */
export function answer(
  wanted: DiagonalPicture,
  options: SolveOptions,
  clock: Clock,
  found: Found,
): DiagonalSolution {
  const { status, pattern, conflict = null, fewestProven = null } = found;
  const { seconds } = clock;
  if (pattern === null) {
    const { atLeastWrong } = found;
    return { status, pattern, wrong: [], atLeastWrong, conflict, tally: null, seconds };
  }
  const { picture, tying, order } = simulateDiagonal(pattern);
  const wrong = differingKnots(wanted, picture.cells);
  if (status === 'solved' && wrong.length > (options.atMostWrong ?? 0)) {
    throw new UnprovenAnswer(`${wrong.length} knots differ`);
  }
  if (wrong.length < found.atLeastWrong) {
    throw new UnprovenAnswer(`${wrong.length} knots differ, not ${found.atLeastWrong} or more`);
  }
  const after = order.subarray(wanted.rows * wanted.strings);
  for (let slot = 0; slot < wanted.strings; slot++) {
    const colour = pattern.start[slot] as number;
    const asked = options.start?.[slot] ?? ANY_COLOUR;
    if (asked !== ANY_COLOUR && asked !== colour) {
      throw new UnprovenAnswer(`string ${slot + 1} starts in another colour`);
    }
    if (options.repeat === true && pattern.start[after[slot] as number] !== colour) {
      throw new UnprovenAnswer(`slot ${slot + 1} ends in another colour`);
    }
  }
  const strings = wanted.colours.map((_, colour) => countOf(pattern.start, colour));
  for (const [colour, count] of strings.entries()) {
    if (count > (options.most?.[colour] ?? count)) {
      throw new UnprovenAnswer(`too many strings of colour ${colour + 1}`);
    }
  }
  return {
    status,
    pattern,
    wrong,
    atLeastWrong: found.atLeastWrong,
    conflict,
    tally: {
      strings,
      changes: changesIn(pattern),
      mostTied: mostTied(tying, wanted.strings),
      fewestProven,
    } satisfies SolutionTally,
    seconds,
  };
}

function countOf(start: Uint8Array, colour: number): number {
  let count = 0;
  for (const one of start) if (one === colour) count++;
  return count;
}

function changesIn(pattern: DiagonalPattern): number {
  const { rows, knots } = pattern;
  const across = knotsAcross(pattern);
  let changes = 0;
  for (let row = 0; row < rows; row++) {
    let last = -1;
    for (let place = 0; place < across; place++) {
      const kind = knots[row * across + place] as number;
      if (kind > 3) continue;
      if (last >= 0 && kind !== last) changes++;
      last = kind;
    }
  }
  return changes;
}

function mostTied(tying: Uint16Array, strings: number): number {
  const tied = new Int32Array(strings);
  for (const string of tying) if (string < strings) (tied[string] as number)++;
  return Math.max(...tied);
}
