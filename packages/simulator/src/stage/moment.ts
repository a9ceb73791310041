import type { Box, Spotlight, ThreadLine } from '../thread/thread-line.js';

/** What a position shows. */
export interface StageMoment {
  readonly lines: readonly ThreadLine[];
  /** What the picture must hold. */
  readonly box: Box;
  /** What is to be looked at: threads farther from it than its radius in mm are faded. */
  readonly spotlight?: Spotlight;
  /** Middle of what the magnifier shows, in mm, y up; none for no magnifier. */
  readonly crossing?: readonly [number, number, number];
  /** Width of what the magnifier shows, in mm; default: a fixed part of the picture. */
  readonly magnified?: number;
}

/** What a position says. */
export interface StageWords {
  readonly heading: string;
  readonly moves: readonly string[];
  /** Place in `moves`; -1 when none is being made. */
  readonly current: number;
  /** Said move by move, when the maker goes at their own pace. */
  readonly said: string;
  /** Said while playing, when moves pass too fast. */
  readonly saidPlaying: string;
}
