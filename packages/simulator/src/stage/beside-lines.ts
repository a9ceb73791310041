import type { Score } from '../playback/player.js';
import { ghostOf, trailOf } from '../thread/onion.js';
import type { ThreadLine } from '../thread/thread-line.js';

/** Positions between the lines of a trail, and how many there are. */
const TRAIL_STEP = 0.07;
const TRAIL_LINES = 4;

type LinesAt = (position: number) => readonly ThreadLine[];

/** Thin lines where the tying string was just before a position and where it will be after it. */
export function besideAt(
  position: number,
  score: Score,
  asked: { readonly trail: boolean; readonly ghost: boolean },
  linesAt: LinesAt,
): ThreadLine[] {
  return [
    ...(asked.trail ? trailAt(position, score, linesAt) : []),
    ...(asked.ghost ? ghostAt(position, score, linesAt) : []),
  ];
}

/** Of the step that the position is in. */
function trailAt(position: number, { stops }: Score, linesAt: LinesAt): ThreadLine[] {
  const began = stops.filter((stop) => stop < position - 1e-6).at(-1) ?? 0;
  const earlier: (readonly ThreadLine[])[] = [];
  for (let k = TRAIL_LINES; k >= 1; k--) {
    const at = position - k * TRAIL_STEP;
    if (at >= began) earlier.push(linesAt(at));
  }
  return trailOf(earlier);
}

/** After the next move. */
function ghostAt(position: number, { stills }: Score, linesAt: LinesAt): ThreadLine[] {
  const next = stills.find((still) => still > position + 1e-6);
  return next === undefined ? [] : ghostOf(linesAt(next));
}
