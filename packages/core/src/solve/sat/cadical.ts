import type { Cadical } from 'cadical-wasm';
import type { Literal, SatSolver, SatSolverMaker, Verdict } from './solver.js';

/** Simplifying between questions pays for a hard one only: measured, easy ones take half the time. */
const OPTIONS = {
  once: { quiet: true },
  often: { quiet: true, lucky: false, inprocessing: false },
} as const;

/**
 * CaDiCaL (Biere et al.), as WebAssembly. It is only fetched when something is to be solved: core
 * stays light for those who solve nothing.
 */
export async function loadCadical(): Promise<SatSolverMaker> {
  const library = await import('cadical-wasm');
  const module = await library.loadCadical();
  return (asked) => new CadicalSolver(new library.Cadical(module, OPTIONS[asked]));
}

class CadicalSolver implements SatSolver {
  readonly #engine: Cadical;
  #until = Number.POSITIVE_INFINITY;

  constructor(engine: Cadical) {
    this.#engine = engine;
    engine.setTerminate(() => Date.now() >= this.#until);
  }

  newVariable(): Literal {
    return this.#engine.newVar();
  }

  add(clause: readonly Literal[]): void {
    this.#engine.addClause(clause);
  }

  prefer(literal: Literal): void {
    this.#engine.phase(literal);
  }

  solve(assumptions: readonly Literal[], until: number): Verdict {
    this.#until = until;
    return this.#engine.solve({ assumptions });
  }

  holds(literal: Literal): boolean {
    return this.#engine.value(literal);
  }

  failed(): readonly Literal[] {
    return this.#engine.failedAssumptions();
  }

  dispose(): void {
    this.#engine.dispose();
  }
}
