import type { Literal, SatSolver } from './sat/solver.js';

/**
 * Counts literals: output j (from 0) holds whenever more than j of the inputs do. Outputs are made
 * in unary by merging halves (Bailleux and Boufkhad, CP 2003), and only in the direction needed to
 * forbid that many.
 */
export function countUp(solver: SatSolver, inputs: readonly Literal[]): Literal[] {
  if (inputs.length <= 1) return [...inputs];
  const half = inputs.length >> 1;
  const left = countUp(solver, inputs.slice(0, half));
  const right = countUp(solver, inputs.slice(half));
  const outputs = inputs.map(() => solver.newVariable());
  for (let i = 0; i <= left.length; i++) {
    for (let j = 0; j <= right.length; j++) {
      if (i + j === 0) continue;
      const clause = [outputs[i + j - 1] as number];
      if (i > 0) clause.push(-(left[i - 1] as number));
      if (j > 0) clause.push(-(right[j - 1] as number));
      solver.add(clause);
    }
  }
  for (let j = 1; j < outputs.length; j++) {
    solver.add([-(outputs[j] as number), outputs[j - 1] as number]);
  }
  return outputs;
}
