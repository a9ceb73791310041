import type { Clock, TimeLimit } from '../clock.js';
import { Domains } from '../domains.js';
import { Encoding } from '../encode.js';
import { hangLoose } from '../loose.js';
import { partOf, UNKNOWN, wireEnds } from '../nearest/part.js';
import { KnotFinder } from '../nearest/windows.js';
import type { Problem } from '../problem.js';
import type { SatSolverMaker, Verdict } from '../sat/solver.js';
import { search } from '../search.js';
import { wholeTask } from '../task.js';

/** Knots of a window, and most of one that had to go back. */
const WINDOW_KNOTS = 1_200;
/** Rows of a window at least: what is hidden now must show further down. */
const FEWEST_ROWS = 16;
const MOST_KNOTS = 60_000;

export interface LongAnswer {
  readonly verdict: Verdict;
  readonly colours: Uint8Array | null;
}

/**
 * A piece too long to be put into clauses at once, window by window from the top. Of each window the
 * upper half is kept, the lower half only sees to it that the work can go on. Where it cannot, the
 * window reaches back above, ever further; a window that cannot be knotted with nothing given above
 * it proves that the whole cannot.
 */
export async function solveLong(
  problem: Problem,
  maker: SatSolverMaker,
  clock: Clock,
  time: TimeLimit,
): Promise<LongAnswer> {
  const { picture, net } = problem;
  const { rows, strings } = picture;
  const task = wholeTask(problem);
  const ends = wireEnds(net);
  const finder = new KnotFinder(problem);
  const colours = new Uint8Array(net.wires).fill(UNKNOWN);
  const nothing = new Uint8Array(net.wires).fill(UNKNOWN);
  const half = Math.max(FEWEST_ROWS / 2, Math.ceil(WINDOW_KNOTS / strings));
  let from = 0;
  let back = 0;
  while (from < rows) {
    if (time.over) return { verdict: 'unknown', colours: null };
    clock.tell('searching', from / rows);
    await time.pause();
    const top = Math.max(0, from - back);
    const slots: [number, number] = [0, strings];
    const knots = finder.inside({ rows: [top, from + 2 * half], slots });
    if (knots.length > MOST_KNOTS) return { verdict: 'unknown', colours: null };
    // From the very top on nothing is given, so that what cannot be done there is proven.
    const verdict = await solvePart(knots, top === 0 ? nothing : colours, true);
    if (verdict === 'unknown') return { verdict, colours: null };
    if (verdict === 'satisfiable') {
      from += half;
      back = 0;
      continue;
    }
    if (top === 0) return { verdict, colours: null };
    if (back === 0) {
      const open = await solvePart(knots, nothing, false);
      if (open !== 'satisfiable') return { verdict: open, colours: null };
    }
    back = back === 0 ? half : 2 * back;
  }
  return hangLoose(problem, colours)
    ? { verdict: 'satisfiable', colours }
    : { verdict: 'unknown', colours: null };

  async function solvePart(
    knots: readonly number[],
    known: Uint8Array,
    keep: boolean,
  ): Promise<Verdict> {
    const part = partOf(task, ends, known, knots);
    const domains = new Domains(part.task);
    if (!domains.narrowAll()) return 'unsatisfiable';
    const solver = maker('once');
    try {
      const encoding = new Encoding(part.task, domains, solver, false);
      const verdict = await search(solver, [], time);
      if (verdict !== 'satisfiable' || !keep) return verdict;
      for (const [number, colour] of encoding.colours().entries()) {
        colours[part.wires[number] as number] = colour;
      }
      return verdict;
    } finally {
      solver.dispose();
    }
  }
}
