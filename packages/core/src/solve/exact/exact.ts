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

/** Pieces with more knots than this are tried in windows too. */
const WINDOWS_TOO = 2_500;

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
  const windows = async (share: number): Promise<Exact> => {
    const { verdict, colours } = await solveLong(problem, maker, clock, clock.part(share));
    // Few strings of a colour are only looked for in the whole.
    return { verdict, colours, fewestProven: fewestOf === null ? null : false };
  };
  if (problem.net.knots > MOST_AT_ONCE) return windows(0.5);
  const solver = maker('once');
  try {
    const encoding = new Encoding(task, domains, solver, false);
    // What the whole does not give soon, the windows may; the solver then goes on where it was.
    const long = problem.net.knots > WINDOWS_TOO;
    let verdict = await search(solver, [], clock.part(long ? 0.05 : 0.5));
    if (verdict === 'unknown' && long && fewestOf === null) {
      const found = await windows(0.25);
      if (found.verdict !== 'unknown') return found;
    }
    if (verdict === 'unknown' && long) verdict = await search(solver, [], clock.part(0.5));
    if (verdict !== 'satisfiable') return { verdict, colours: null, fewestProven: null };
    const colours = encoding.colours();
    if (fewestOf === null) return { verdict, colours, fewestProven: null };
    const fewest = await fewestStrings(problem, encoding, colours, fewestOf, clock.part(0.5));
    return { verdict, colours: fewest.colours, fewestProven: fewest.proven };
  } finally {
    solver.dispose();
  }
}
