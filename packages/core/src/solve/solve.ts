import type { DiagonalPicture } from '../diagonal/picture.js';
import { answer } from './answer.js';
import { Clock } from './clock.js';
import { Domains } from './domains.js';
import { Encoding } from './encode.js';
import type { DiagonalSolution, SolveOptions } from './options.js';
import { problemOf } from './problem.js';
import { loadCadical } from './sat/cadical.js';
import { search } from './search.js';
import { settle } from './settle.js';

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
  clock.tell('reading');
  const domains = new Domains(problem);
  if (!domains.narrowAll()) {
    return answer(wanted, options, clock, { status: 'impossible', pattern: null, atLeastWrong: 1 });
  }
  clock.tell('searching');
  const solver = (await loadCadical())();
  try {
    const encoding = new Encoding(problem, domains, solver, false);
    const verdict = await search(solver, [], clock);
    if (verdict === 'satisfiable') {
      const pattern = settle(problem, encoding.colours(), options.prefer ?? 'changes');
      return answer(wanted, options, clock, { status: 'solved', pattern, atLeastWrong: 0 });
    }
    const status = verdict === 'unknown' ? 'stopped' : 'impossible';
    return answer(wanted, options, clock, {
      status,
      pattern: null,
      atLeastWrong: status === 'impossible' ? 1 : 0,
    });
  } finally {
    solver.dispose();
  }
}
