import type { DiagonalPicture } from '@halfhitch/core';
import type {
  DiagonalSolution,
  ForcedKnots,
  SolveOptions,
  SolveProgress,
} from '@halfhitch/core/solve';

/** What is wanted besides the picture. */
export type SolveWish = Omit<SolveOptions, 'signal' | 'onProgress'>;

export type SolveAsk =
  /** What the picture alone says of its knots. */
  | { readonly say: 'read'; readonly wanted: DiagonalPicture; readonly seconds: number }
  | { readonly say: 'solve'; readonly wanted: DiagonalPicture; readonly wish: SolveWish }
  /** The search is to end soon, with the best that it has. */
  | { readonly say: 'stop' };

export type SolveTold =
  | { readonly told: 'progress'; readonly progress: SolveProgress }
  | { readonly told: 'solution'; readonly solution: DiagonalSolution }
  | { readonly told: 'forced'; readonly forced: ForcedKnots }
  | { readonly told: 'problem'; readonly message: string };
