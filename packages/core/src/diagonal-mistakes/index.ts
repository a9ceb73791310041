export * from './consequences.js';
export * from './diagnose.js';
export {
  type MistakenDiagonal,
  type MistakenDiagonalOptions,
  makeDiagonalMistake,
  makeDiagonalMistakes,
} from './make.js';
export {
  DIAGONAL_MISTAKE_KINDS,
  type DiagonalMistake,
  type DiagonalMistakeKind,
  diagonalMistakeKey,
} from './mistake.js';
export { patternOfDiagonalPlan } from './pattern-of-plan.js';
export { possibleDiagonalMistakes } from './possible.js';
export { readDiagonalSeen, seenOfPattern } from './read-seen.js';
export { DiagonalLook, type DiagonalSeen } from './seen.js';
export type { DiagonalQuestion } from './tell-apart.js';
export { diagonalDiagnosisText } from './text.js';
export type { DiagonalUndo } from './undo.js';
export { DIAGONAL_MISTAKE_WEIGHTS } from './weights.js';
export { DiagonalMistakeWords } from './words.js';
