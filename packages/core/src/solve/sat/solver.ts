/** A variable, numbered from 1, or with a minus sign its opposite. */
export type Literal = number;

export type Verdict = 'satisfiable' | 'unsatisfiable' | 'unknown';

/** What solving asks of a solver for propositional logic. It keeps what it learned between calls. */
export interface SatSolver {
  newVariable(): Literal;
  /** One of the literals must hold. */
  add(clause: readonly Literal[]): void;
  /** The value to try first. */
  prefer(literal: Literal): void;
  /**
   * Searches, with the assumptions holding for this call only.
   *
   * @param until time at which it gives up, as of Date.now(); the answer is then 'unknown'
   */
  solve(assumptions: readonly Literal[], until: number): Verdict;
  /** After 'satisfiable': whether a literal holds. */
  holds(literal: Literal): boolean;
  /** After 'unsatisfiable': assumptions that cannot hold together; none if nothing can. */
  failed(): readonly Literal[];
  /** Gives its memory back. */
  dispose(): void;
}

/**
 * Makes a solver that is asked `once` a question that may be hard, or `often` ones that are mostly
 * easy.
 */
export type SatSolverMaker = (asked: 'once' | 'often') => SatSolver;
