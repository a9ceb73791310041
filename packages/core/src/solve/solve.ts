import type { DiagonalPattern } from '../diagonal/pattern.js';
import type { DiagonalPicture } from '../diagonal/picture.js';
import { answer } from './answer.js';
import { Clock } from './clock.js';
import { solveExactly } from './exact/exact.js';
import { findConflict } from './explain/conflict.js';
import { findNearest } from './nearest/nearest.js';
import type { DiagonalConflict, DiagonalSolution, SolveOptions } from './options.js';
import { type Problem, problemOf } from './problem.js';
import { loadCadical } from './sat/cadical.js';
import type { SatSolverMaker } from './sat/solver.js';
import { settle } from './settle.js';
import { fewerChanges } from './tidy/changes.js';

/**
 * Finds starting colours and knots that show a wanted picture, or proves that there are none.
 *
 * @throws InputError for a picture or options that make no sense
 */
export async function solveDiagonal(
  wanted: DiagonalPicture,
  options: SolveOptions = {},
): Promise<DiagonalSolution> {
  const clock = new Clock(options);
  const problem = problemOf(wanted, options);
  const maker = await loadCadical();
  const exact = await solveExactly(problem, maker, clock);
  if (exact.colours !== null) {
    const pattern = await tidied(problem, exact.colours, maker, clock, options);
    const { fewestProven } = exact;
    return answer(wanted, options, clock, {
      status: 'solved',
      pattern,
      atLeastWrong: 0,
      fewestProven,
    });
  }
  const impossible = exact.verdict === 'unsatisfiable';
  const { atMostWrong = 0, nearest = true, explain = true } = options;
  let conflict: DiagonalConflict | null = null;
  if (impossible && explain && atMostWrong === 0) {
    clock.tell('explaining');
    conflict = await findConflict(problem, maker, clock.part(nearest ? 0.3 : 1));
  }
  if (!nearest && atMostWrong === 0) {
    return answer(wanted, options, clock, {
      status: impossible ? 'impossible' : 'stopped',
      pattern: null,
      atLeastWrong: impossible ? 1 : 0,
      conflict,
    });
  }
  const { colours, wrong, least } = await findNearest(problem, maker, clock, impossible ? 1 : 0);
  const pattern = colours === null ? null : settle(problem, colours, options.prefer ?? 'none');
  const status =
    wrong <= atMostWrong ? 'solved' : least > atMostWrong ? 'impossible' : ('stopped' as const);
  return answer(wanted, options, clock, { status, pattern, atLeastWrong: least, conflict });
}

/** The pattern of the colours found, bettered where that is asked for. */
async function tidied(
  problem: Problem,
  colours: Uint8Array,
  maker: SatSolverMaker,
  clock: Clock,
  { prefer = 'none' }: SolveOptions,
): Promise<DiagonalPattern> {
  if (prefer !== 'changes') return settle(problem, colours, prefer);
  // Where the strings of a colour were made few, the start stays as it is.
  const start = problem.net.start.map((wire) => colours[wire] as number);
  const kept = problem.fewestOf === null ? problem : { ...problem, start: Uint8Array.from(start) };
  const bettered = await fewerChanges(kept, colours, maker, clock, clock.part(0.5));
  return settle(problem, bettered, prefer);
}
