import type { TimeLimit } from '../clock.js';
import { shrink } from '../cores.js';
import type { Literal, SatSolver } from '../sat/solver.js';
import { search } from '../search.js';
import { countUp } from '../totalizer.js';

/** Longest time for one literal when a core is made smaller, in ms. */
const SHRINK = 20;

/**
 * Gives up the fewest wishes: the core-guided method OLL (Andres et al., ICLP 2012; Morgado,
 * Dodaro and Marques-Silva, CP 2014). As long as the wishes cannot hold together, some of them that
 * cannot are found; one more must be given up, and all but one of these, two, ... are wished for
 * from then on. What is known to be the least grows until it is reached.
 */
export class FewestGivenUp {
  readonly #solver: SatSolver;
  /** What is wished for now; for what was counted, the counter and how many are allowed of it. */
  readonly #wished = new Map<Literal, { outputs: readonly Literal[]; allowed: number } | null>();
  #least = 0;

  constructor(solver: SatSolver, wishes: Iterable<Literal>) {
    this.#solver = solver;
    for (const wish of wishes) this.#wished.set(wish, null);
  }

  /** Proven: no fewer wishes can be given up. Without end where the rest cannot hold either. */
  get least(): number {
    return this.#least;
  }

  /**
   * Goes on until the least is reached: true, and the solver has a model with that many. False
   * where the time was over, or the least is `enough` or more.
   */
  async run(time: TimeLimit, enough: number, told: () => void = () => {}): Promise<boolean> {
    const solver = this.#solver;
    while (this.#least < enough) {
      const verdict = await search(solver, [...this.#wished.keys()], time);
      if (verdict === 'satisfiable') return true;
      if (verdict === 'unknown') return false;
      const failed = solver.failed();
      if (failed.length === 0) {
        this.#least = Number.POSITIVE_INFINITY;
        return false;
      }
      const { literals } = await shrink(solver, failed, time, SHRINK);
      this.#giveUpOne(literals);
      told();
    }
    return false;
  }

  #giveUpOne(core: readonly Literal[]): void {
    this.#least++;
    const given = core.map((literal) => -literal);
    this.#solver.add(given);
    for (const literal of core) {
      const counted = this.#wished.get(literal) ?? null;
      this.#wished.delete(literal);
      if (counted === null) continue;
      const { outputs } = counted;
      const allowed = counted.allowed + 1;
      const next = outputs[allowed];
      if (next !== undefined) this.#wished.set(-next, { outputs, allowed });
    }
    if (core.length === 1) return;
    const outputs = countUp(this.#solver, given);
    this.#wished.set(-(outputs[1] as Literal), { outputs, allowed: 1 });
  }
}
