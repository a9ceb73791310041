import type { Clock } from '../clock.js';
import { Domains } from '../domains.js';
import { Encoding } from '../encode.js';
import { wrongByCounting } from '../nearest/counting.js';
import type { Problem } from '../problem.js';
import type { SatSolverMaker, Verdict } from '../sat/solver.js';
import { search } from '../search.js';
import { MOST_AT_ONCE, wholeTask } from '../task.js';
import { fewestStrings } from '../tidy/strings.js';
import { solveLong } from './long.js';
import { straightTwoColours } from './two-colours.js';

export interface Exact {
  readonly verdict: Verdict;
  readonly colours: Uint8Array | null;
  readonly fewestProven: boolean | null;
}

/** Pieces with more knots than this are tried in windows before they are as a whole. */
const WINDOWS_FIRST = 6_000;

const IMPOSSIBLE: Exact = { verdict: 'unsatisfiable', colours: null, fewestProven: null };

/** Colours of the wires with which every knot shows what is wanted. */
export async function solveExactly(
  problem: Problem,
  maker: SatSolverMaker,
  clock: Clock,
): Promise<Exact> {
  clock.tell('reading');
  const simple = straightTwoColours(problem);
  if (simple !== null) return { verdict: 'satisfiable', colours: simple, fewestProven: null };
  // What counting shows at once, the solver would be long about.
  if (wrongByCounting(problem) > 0) return IMPOSSIBLE;
  const task = wholeTask(problem);
  const domains = new Domains(task);
  if (!domains.narrowAll()) return IMPOSSIBLE;
  clock.tell('searching');
  const { fewestOf } = problem;
  if (problem.net.knots > WINDOWS_FIRST && fewestOf === null) {
    const share = problem.net.knots > MOST_AT_ONCE ? 0.5 : 0.25;
    const { verdict, colours } = await solveLong(problem, maker, clock, clock.part(share));
    if (verdict !== 'unknown') return { verdict, colours, fewestProven: null };
  }
  if (problem.net.knots > MOST_AT_ONCE) {
    return { verdict: 'unknown', colours: null, fewestProven: null };
  }
  const solver = maker('once');
  try {
    const encoding = new Encoding(task, domains, solver, false);
    const verdict = await search(solver, [], clock.part(0.5));
    if (verdict !== 'satisfiable') return { verdict, colours: null, fewestProven: null };
    const colours = encoding.colours();
    if (fewestOf === null) return { verdict, colours, fewestProven: null };
    const fewest = await fewestStrings(problem, encoding, colours, fewestOf, clock.part(0.5));
    return { verdict, colours: fewest.colours, fewestProven: fewest.proven };
  } finally {
    solver.dispose();
  }
}
