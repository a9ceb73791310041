import { ANY_COLOUR } from '../../diagonal/picture.js';
import type { TimeLimit } from '../clock.js';
import { Domains } from '../domains.js';
import { Encoding } from '../encode.js';
import type { SatSolverMaker } from '../sat/solver.js';
import type { Task } from '../task.js';
import { FewestGivenUp } from './fewest.js';

/** Longest time to find any colours when time is over, in ms. */
const ANYHOW = 3_000;

/** A task in which knots may be wrong, ready to be searched for the fewest of them. */
export interface SoftTask {
  readonly encoding: Encoding;
  readonly fewest: FewestGivenUp;
}

/** Null where even with every knot wrong the outer colours cannot be joined. */
export function softTask(task: Task, maker: SatSolverMaker): SoftTask | null {
  const domains = new Domains({ ...task, asked: new Uint8Array(task.net.knots).fill(ANY_COLOUR) });
  if (!domains.narrowAll()) return null;
  const solver = maker('often');
  const encoding = new Encoding(task, domains, solver, true);
  const wishes = encoding.shows.filter((literal) => literal !== 0);
  for (const wish of wishes) solver.prefer(wish);
  return { encoding, fewest: new FewestGivenUp(solver, wishes) };
}

export interface PartAnswer {
  /** Colour of each wire of the task; null where none were found. */
  readonly colours: Uint8Array | null;
  /** Proven: no fewer wrong knots than with these colours. */
  readonly best: boolean;
}

/**
 * The colours of a task's wires with the fewest wrong knots.
 *
 * @param enough looks for fewer wrong knots than this only
 * @param anyhow whether, when time is over, some colours are better than none
 */
export async function searchPart(
  task: Task,
  maker: SatSolverMaker,
  time: TimeLimit,
  enough: number,
  anyhow: boolean,
): Promise<PartAnswer> {
  const soft = softTask(task, maker);
  if (soft === null) return { colours: null, best: true };
  const { encoding, fewest } = soft;
  try {
    if (await fewest.run(time, enough)) return { colours: encoding.colours(), best: true };
    if (!anyhow || fewest.least === Number.POSITIVE_INFINITY) {
      return { colours: null, best: fewest.least >= enough };
    }
    // With every knot wrong if need be; the solver tries the wanted colours first.
    const any = encoding.solver.solve([], Date.now() + ANYHOW);
    return { colours: any === 'satisfiable' ? encoding.colours() : null, best: false };
  } finally {
    encoding.solver.dispose();
  }
}
