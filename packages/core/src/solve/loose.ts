import { ANY_COLOUR } from '../diagonal/picture.js';
import { UNKNOWN } from './nearest/part.js';
import type { Problem } from './problem.js';

/** Gives strings that no knot touches a colour. False where a wire of a knot has none yet. */
export function hangLoose({ net, most, start }: Problem, colours: Uint8Array): boolean {
  for (const wires of [net.aboveLeft, net.aboveRight, net.belowLeft, net.belowRight]) {
    for (const wire of wires) if (colours[wire] === UNKNOWN) return false;
  }
  const left = [...most];
  for (const wire of net.start) {
    const colour = colours[wire] as number;
    if (colour !== UNKNOWN) (left[colour] as number)--;
  }
  for (const [slot, wire] of net.start.entries()) {
    if (colours[wire] !== UNKNOWN) continue;
    const asked = start[slot] as number;
    const colour = asked === ANY_COLOUR ? left.findIndex((count) => count > 0) : asked;
    if (colour < 0) return false;
    colours[wire] = colour;
    (left[colour] as number)--;
  }
  return true;
}
