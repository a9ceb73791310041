import * as say from './messages.js';
import type { Standing } from './standing.js';

/**
 * Whether a turn is one too many, and says so: the knot right after it belongs to the row that it
 * would end, which still lacks that knot. Of several turns side by side the last is judged.
 */
export function turnsTooSoon(at: Standing, i: number): boolean {
  const { a, b } = at.steps;
  const next = at.look.nextHalf(i);
  if (next < 0) return false;
  const [tying, held] = [a[next] as number, b[next] as number];
  const place = at.pairPlace(tying, held);
  if (place < 0 || at.isTied(place) || !at.wanted.knot(at.row, place)) return false;
  at.wrong('turn-too-soon', place, () => say.turnTooSoon(at.id(tying), at.id(held)));
  return true;
}
