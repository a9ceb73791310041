import { oklabOf } from '../colour/spaces.js';

/**
 * How much a and b of OKLab count beside L. Plain distances in OKLab underrate differences of
 * chroma; twice as much is what the difference "OK2" of the Color.js library takes.
 */
export const CHROMA_WEIGHT = 2;

/** A palette made ready to be looked up in, at most 256 colours. */
export class Nearest {
  private readonly oklab: Float64Array;

  /** @param hexes `#rrggbb` of at least one colour */
  constructor(hexes: readonly string[]) {
    this.oklab = Float64Array.from(
      hexes.flatMap((hex) => {
        const { l, a, b } = oklabOf(hex);
        return [l, CHROMA_WEIGHT * a, CHROMA_WEIGHT * b];
      }),
    );
  }

  /** Place of the colour nearest in OKLab; of equally near ones the first. */
  of(l: number, a: number, b: number): number {
    const { oklab } = this;
    let nearest = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let at = 0; at < oklab.length; at += 3) {
      const dl = l - (oklab[at] as number);
      const da = CHROMA_WEIGHT * a - (oklab[at + 1] as number);
      const db = CHROMA_WEIGHT * b - (oklab[at + 2] as number);
      const distance = dl * dl + da * da + db * db;
      if (distance < least) {
        least = distance;
        nearest = at / 3;
      }
    }
    return nearest;
  }
}
