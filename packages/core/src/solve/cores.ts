import { type TimeLimit, turnEnds } from './clock.js';
import type { Literal, SatSolver } from './sat/solver.js';

export interface Core {
  readonly literals: readonly Literal[];
  /** With any one of them left out, all others can hold. */
  readonly minimal: boolean;
}

/**
 * Assumptions that cannot hold together, made fewer: each is left out in turn, and stays out if the
 * others still cannot hold together.
 *
 * @param each longest time for one of them, in ms; one that takes longer is kept, and the core then
 *   is not known to be minimal
 */
export async function shrink(
  solver: SatSolver,
  core: readonly Literal[],
  time: TimeLimit,
  each: number,
): Promise<Core> {
  let left = trim(solver, core, time);
  let minimal = true;
  const needed: Literal[] = [];
  while (left.length > 0) {
    if (time.over) return { literals: [...needed, ...left], minimal: false };
    const candidate = left[left.length - 1] as Literal;
    const others = left.slice(0, -1);
    const verdict = solver.solve([...needed, ...others], Math.min(time.ends, Date.now() + each));
    await time.pause();
    if (verdict === 'unsatisfiable') {
      const failed = new Set(solver.failed());
      left = others.filter((literal) => failed.has(literal));
    } else {
      if (verdict === 'unknown') minimal = false;
      needed.push(candidate);
      left = others;
    }
  }
  return { literals: needed, minimal };
}

/** Asking again with nothing but the core often gives a smaller one. */
function trim(solver: SatSolver, core: readonly Literal[], time: TimeLimit): readonly Literal[] {
  let least = core;
  for (let times = 0; times < 4 && !time.over; times++) {
    if (solver.solve(least, turnEnds(time)) !== 'unsatisfiable') break;
    const failed = solver.failed();
    if (failed.length >= least.length) break;
    least = failed;
  }
  return least;
}
