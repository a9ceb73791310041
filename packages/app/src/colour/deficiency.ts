import {
  converter,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  formatHex,
} from 'culori/fn';
import { rgbOf } from './spaces.js';

/** Kinds of colour vision that lack one of the three cones. */
export const DEFICIENCIES = ['protan', 'deutan', 'tritan'] as const;

export type Deficiency = (typeof DEFICIENCIES)[number];

// The library's filters multiply by the published matrices whatever the three numbers mean.
const FILTERS = {
  protan: filterDeficiencyProt(1),
  deutan: filterDeficiencyDeuter(1),
  tritan: filterDeficiencyTrit(1),
};

const toLinear = converter('lrgb');

/** Linear sRGB, each channel from 0 to 1; a simulated colour may lie somewhat outside. */
export type LinearRgb = readonly [r: number, g: number, b: number];

/**
 * What a person without one kind of cone sees of a colour, severity 1.0, by the matrices of
 * Machado, Oliveira and Fernandes, "A Physiologically-based Model for Simulation of Color Vision
 * Deficiency", IEEE TVCG 15(6), 2009. They hold for light, so they are applied to linear sRGB.
 */
export function simulateLinear([r, g, b]: LinearRgb, deficiency: Deficiency): LinearRgb {
  const seen = FILTERS[deficiency]({ mode: 'rgb', r, g, b });
  return [seen.r, seen.g, seen.b];
}

/** The same for `#rrggbb`; what falls outside sRGB is cut off channel by channel. */
export function simulate(hex: string, deficiency: Deficiency): string {
  const light = toLinear(rgbOf(hex));
  const [r, g, b] = simulateLinear([light.r, light.g, light.b], deficiency);
  return formatHex({ mode: 'lrgb', r, g, b });
}
