import { Op } from '../../model/steplist.js';
import * as say from './messages.js';
import type { Standing } from './standing.js';

/**
 * Whether a turn is one too many, and says so: the knot after it, and after the turns that follow
 * it at once, belongs to a row earlier than they lead to, which still lacks it.
 */
export function turnsTooSoon(at: Standing, i: number): boolean {
  const { op, a, b } = at.steps;
  let turns = 1;
  while (op[i + turns] === Op.turn && turns <= at.rows) turns++;
  const next = at.look.nextHalf(i + turns - 1);
  if (next < 0) return false;
  const [tying, held] = [a[next] as number, b[next] as number];
  const slot = at.leftSlot(tying, held);
  const row = at.row + turns - 1;
  if (slot < 0 || row >= at.rows) return false;
  const place = at.wanted.placeAt(row, slot);
  if (place < 0 || !at.wanted.knot(row, place)) return false;
  if (row === at.row && at.isTied(place)) return false;
  at.log.atPlace('wrong', 'turn-too-soon', row, place, () =>
    say.turnTooSoon(at.id(tying), at.id(held)),
  );
  return true;
}
