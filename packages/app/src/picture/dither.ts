import { lightOf } from '../colour/light.js';
import { oklabOfLinear } from '../colour/spaces.js';
import type { KnotLight } from './average.js';
import { Nearest } from './nearest.js';

/**
 * Dithers by error diffusion (R. W. Floyd and L. Steinberg, "An adaptive algorithm for spatial
 * greyscale", Proc. SID 17(2), 1976), lines to and fro: each knot takes the colour nearest in
 * OKLab, and what it lacks in linear light is handed on to those not yet chosen, so that an area
 * keeps its mean colour.
 *
 * Our own, since no maintained library was found that diffuses light instead of coded values,
 * which would make the whole lighter or darker.
 *
 * A generator, so that work can be given up between rows.
 */
export function* dither(
  { rows, columns, light }: KnotLight,
  hexes: readonly string[],
): Generator<undefined, Uint8Array, undefined> {
  const nearest = new Nearest(hexes);
  const palette = hexes.map(lightOf);
  const cells = new Uint8Array(rows * columns);
  // What is owed to this row and the next, with a place more on each side.
  let owed = new Float64Array(3 * (columns + 2));
  let owedBelow = new Float64Array(3 * (columns + 2));
  const wanted = [0, 0, 0];
  for (let row = 0; row < rows; row++) {
    const step = row % 2 === 0 ? 1 : -1;
    for (let i = 0; i < columns; i++) {
      const column = step === 1 ? i : columns - 1 - i;
      const cell = row * columns + column;
      const at = 3 * (column + 1);
      for (let c = 0; c < 3; c++) {
        // A debt that no colour can pay must not grow without end.
        const value = (light[3 * cell + c] as number) + (owed[at + c] as number);
        wanted[c] = Math.min(2, Math.max(-1, value));
      }
      const { l, a, b } = oklabOfLinear(
        real(wanted[0] as number),
        real(wanted[1] as number),
        real(wanted[2] as number),
      );
      const chosen = nearest.of(l, a, b);
      cells[cell] = chosen;
      const given = palette[chosen] as readonly number[];
      for (let c = 0; c < 3; c++) {
        const lack = ((wanted[c] as number) - (given[c] as number)) / 16;
        const ahead = at + 3 * step + c;
        const behind = at - 3 * step + c;
        owed[ahead] = (owed[ahead] as number) + 7 * lack;
        owedBelow[behind] = (owedBelow[behind] as number) + 3 * lack;
        owedBelow[at + c] = (owedBelow[at + c] as number) + 5 * lack;
        owedBelow[ahead] = (owedBelow[ahead] as number) + lack;
      }
    }
    [owed, owedBelow] = [owedBelow, owed];
    owedBelow.fill(0);
    yield;
  }
  return cells;
}

/** The nearest light that there is. */
function real(value: number): number {
  return Math.min(1, Math.max(0, value));
}
