import type { DiagonalPicture } from '../diagonal/picture.js';
import { LEFT_TIES, PLACES_CHANGE } from '../diagonal/simulate.js';
import { type Weave, weave } from './weave.js';

/** Rounds of improving; it settles after a few. */
const ROUNDS = 50;

/**
 * Chooses among the kinds that each knot may be so that no string ties much more than the others.
 *
 * Each round goes down the work once. What a string will still tie below a knot is known from the
 * choices below, what it has tied so far from those above; at each knot the kind is taken with
 * which the squares of the two strings' totals come to the least. No round makes the sum of the
 * squares over all strings greater, and it ends in a state that no change of a single knot betters.
 * Another state may still be better.
 */
export function balance(picture: DiagonalPicture, choices: Uint8Array): Uint8Array {
  // Not closed to a ring: strings are followed from the start to the end.
  const net = weave(picture, false);
  const chosen = Uint8Array.from(choices, (kinds) => 31 - Math.clz32(kinds & -kinds));
  const still = new Int32Array(net.wires);
  const sofar = new Int32Array(net.wires);
  for (let round = 0; round < ROUNDS; round++) {
    countBelow(net, chosen, still);
    if (!improve(net, choices, chosen, sofar, still)) break;
  }
  return chosen;
}

/** Knots that the string in each wire ties from there on. */
function countBelow(net: Weave, chosen: Uint8Array, still: Int32Array): void {
  still.fill(0);
  for (let knot = net.knots - 1; knot >= 0; knot--) {
    const kind = chosen[knot] as number;
    const ties = LEFT_TIES[kind] ? 1 : 0;
    const left = net.belowLeft[knot] as number;
    const right = net.belowRight[knot] as number;
    const cross = PLACES_CHANGE[kind] === true;
    still[net.aboveLeft[knot] as number] = (still[cross ? right : left] as number) + ties;
    still[net.aboveRight[knot] as number] = (still[cross ? left : right] as number) + 1 - ties;
  }
}

function improve(
  net: Weave,
  choices: Uint8Array,
  chosen: Uint8Array,
  sofar: Int32Array,
  still: Int32Array,
): boolean {
  sofar.fill(0);
  let changed = false;
  for (let knot = 0; knot < net.knots; knot++) {
    const pastLeft = sofar[net.aboveLeft[knot] as number] as number;
    const pastRight = sofar[net.aboveRight[knot] as number] as number;
    const left = net.belowLeft[knot] as number;
    const right = net.belowRight[knot] as number;
    const futures = [still[left] as number, still[right] as number] as const;
    let best = chosen[knot] as number;
    let least = cost(best, pastLeft, pastRight, futures);
    for (let kind = 0; kind < 4; kind++) {
      if ((((choices[knot] as number) >>> kind) & 1) === 0) continue;
      const comes = cost(kind, pastLeft, pastRight, futures);
      if (comes >= least) continue;
      least = comes;
      best = kind;
    }
    if (best !== chosen[knot]) {
      chosen[knot] = best;
      changed = true;
    }
    const ties = LEFT_TIES[best] ? 1 : 0;
    const cross = PLACES_CHANGE[best] === true;
    sofar[cross ? right : left] = pastLeft + ties;
    sofar[cross ? left : right] = pastRight + 1 - ties;
  }
  return changed;
}

function cost(
  kind: number,
  pastLeft: number,
  pastRight: number,
  [left, right]: readonly [number, number],
): number {
  const ties = LEFT_TIES[kind] ? 1 : 0;
  const cross = PLACES_CHANGE[kind] === true;
  const one = pastLeft + ties + (cross ? right : left);
  const other = pastRight + 1 - ties + (cross ? left : right);
  return one * one + other * other;
}
