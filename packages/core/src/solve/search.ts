import { type TimeLimit, turnEnds } from './clock.js';
import type { Literal, SatSolver, Verdict } from './sat/solver.js';

/** Searches turn by turn until there is an answer, or the time is over. */
export async function search(
  solver: SatSolver,
  assumptions: readonly Literal[],
  time: TimeLimit,
): Promise<Verdict> {
  while (!time.over) {
    const verdict = solver.solve(assumptions, turnEnds(time));
    await time.pause();
    if (verdict !== 'unknown') return verdict;
  }
  return 'unknown';
}
