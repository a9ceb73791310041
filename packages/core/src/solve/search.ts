import type { Clock } from './clock.js';
import type { Literal, SatSolver, Verdict } from './sat/solver.js';

/** Searches turn by turn until there is an answer, or the time is over. */
export async function search(
  solver: SatSolver,
  assumptions: readonly Literal[],
  clock: Clock,
): Promise<Verdict> {
  while (!clock.over) {
    const verdict = solver.solve(assumptions, clock.turnEnds);
    await clock.pause();
    if (verdict !== 'unknown') return verdict;
  }
  return 'unknown';
}
