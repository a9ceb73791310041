import { RATIOS } from '../../relax/grid.js';
import { GeometryError } from '../options.js';

/** Packed curves by held/tying ratio, unpacked when they are first asked for. */
export class RatioStore<Packed, Curves> {
  private readonly packed = new Map<number, Packed>();
  private readonly curves = new Map<number, Curves>();

  /** @param equal for strings of one thickness */
  constructor(
    equal: Packed,
    private readonly unpack: (packed: Packed) => Curves,
  ) {
    this.add(1, equal);
  }

  add(ratio: number, packed: Packed): void {
    this.packed.set(ratio, packed);
  }

  /** Curves for any ratio within the limits, interpolated between those that are stored. */
  between(ratio: number, choose: (curves: Curves) => readonly Float64Array[]): Float64Array[] {
    if (RATIOS.includes(ratio)) return [...choose(this.at(ratio))];
    let i = 0;
    while (i < RATIOS.length - 2 && ratio > RATIOS[i + 1]!) i++;
    const low = RATIOS[i]!;
    const high = RATIOS[i + 1]!;
    const f = (ratio - low) / (high - low);
    const above = choose(this.at(high));
    return choose(this.at(low)).map((curve, k) => curve.map((v, c) => v + (above[k]![c]! - v) * f));
  }

  private at(ratio: number): Curves {
    let found = this.curves.get(ratio);
    if (found) return found;
    const packed = this.packed.get(ratio);
    if (packed === undefined) {
      throw new GeometryError(
        'Only knots of strings of one thickness are loaded. ' +
          "Import from '@halfhitch/geometry', or await loadEveryRatio() before.",
      );
    }
    found = this.unpack(packed);
    this.curves.set(ratio, found);
    return found;
  }
}
