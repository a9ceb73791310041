import { RATIO_LIMITS } from './proportions.js';

/** What a pose is drawn for. Lengths in mm. */
export interface KnotOptions {
  /** Diameter of the string that ties. Default 1 mm. */
  readonly tyingDiameter?: number;
  /** Diameter of the string that is held; 0.5 to 2 times the tying one. Default: the same. */
  readonly heldDiameter?: number;
  /** The mirror image, as a left-handed maker ties it. */
  readonly mirror?: boolean;
  /**
   * Length of the lead that hangs free when the knot is done, at least 6 tying diameters; more is
   * shown where the open loop needs it (14 to 18). Default 12 tying diameters.
   */
  readonly tail?: number;
  /** Length of the strings above the knot, at least 4 tying diameters. Default 6 tying diameters. */
  readonly above?: number;
  /** Points of the tying string, 64 to 4096. Default 256. */
  readonly points?: number;
}

/** An argument outside what the package can draw, with what to do about it. */
export class GeometryError extends Error {
  override readonly name = 'GeometryError';
}

export interface ResolvedOptions {
  readonly diameter: number;
  readonly ratio: number;
  readonly mirror: boolean;
  /** In tying diameters. */
  readonly tail: number;
  readonly above: number;
  readonly points: number;
}

function within(name: string, value: number, least: number, most: number, remedy: string): number {
  if (Number.isFinite(value) && value >= least && value <= most) return value;
  throw new GeometryError(`${name} is ${value}; it must be from ${least} to ${most}. ${remedy}`);
}

export function resolveOptions(options: KnotOptions): ResolvedOptions {
  const diameter = within(
    'tyingDiameter',
    options.tyingDiameter ?? 1,
    0.01,
    100,
    'Give the diameter of the thread in mm.',
  );
  const held = options.heldDiameter ?? diameter;
  const ratio = within(
    'heldDiameter / tyingDiameter',
    held / diameter,
    RATIO_LIMITS.least,
    RATIO_LIMITS.most,
    'The knots are worked out for strings of similar thickness.',
  );
  return {
    diameter,
    ratio,
    mirror: options.mirror ?? false,
    tail: within('tail', (options.tail ?? 12 * diameter) / diameter, 6, 1000, 'In mm.'),
    above: within('above', (options.above ?? 6 * diameter) / diameter, 4, 1000, 'In mm.'),
    points: Math.round(within('points', options.points ?? 256, 64, 4096, 'Use the default.')),
  };
}
