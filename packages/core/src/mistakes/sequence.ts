import type { Mistake } from './mistake.js';

/** How many rows the piece has. */
export function rowsTied(planned: number, mistakes: readonly Mistake[]): number {
  let rows = planned;
  for (const { kind } of mistakes) {
    if (kind === 'extra-row') rows++;
    else if (kind === 'missing-row') rows--;
  }
  return rows;
}

/** The row of the instructions that a row of the piece follows, both from 0. */
export function sourceOf(row: number, mistakes: readonly Mistake[]): number {
  let source = row;
  for (const mistake of mistakes) {
    if (mistake.row > row) continue;
    if (mistake.kind === 'extra-row') source--;
    else if (mistake.kind === 'missing-row') source++;
  }
  return source;
}
