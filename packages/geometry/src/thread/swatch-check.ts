import { finishedSize } from './finished-size.js';
import type { KnotMeasures } from './measures.js';
import type { Swatch } from './swatch.js';
import { Lengths } from './usage.js';

/** One size of a swatch, as it was predicted and as it was measured. */
export interface SwatchSide {
  /** mm */
  readonly predicted: number;
  /** What the prediction may be off by, mm. */
  readonly plusMinus: number;
  /** mm */
  readonly measured: number;
  /** Measured beyond predicted, as a share of the predicted: 0.1 for a tenth more. */
  readonly difference: number;
  readonly within: boolean;
}

export interface SwatchCheck {
  readonly width: SwatchSide;
  readonly length: SwatchSide;
}

/**
 * Compares a swatch with what its thread should have given.
 *
 * @param diameter of the thread as it was given, mm
 * @param uncertainty share by which sizes may be off without a swatch
 */
export function checkSwatch(
  swatch: Swatch,
  measures: KnotMeasures,
  diameter: number,
  uncertainty: number,
): SwatchCheck {
  const size = finishedSize(swatch.rows, swatch.columns, new Lengths(measures, diameter));
  const side = (predicted: number, measured: number): SwatchSide => {
    const difference = measured / predicted - 1;
    return {
      predicted,
      plusMinus: predicted * uncertainty,
      measured,
      difference,
      within: Math.abs(difference) <= uncertainty,
    };
  };
  return { width: side(size.width, swatch.width), length: side(size.length, swatch.length) };
}
