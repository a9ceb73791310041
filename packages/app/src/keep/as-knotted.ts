import type { Chart } from '@halfhitch/core';
import type { AlphaProject } from '../project/project.js';
import { plainLegend, plainName } from './plain.js';

/** The chart with how it is knotted written into it, as it goes into files. */
export function chartAsKnotted({ chart, choice }: Pick<AlphaProject, 'chart' | 'choice'>): Chart {
  const { edge, start } = choice;
  const plain = { ...chart, name: plainName(chart.name), edge, start };
  const { colours, placeOf } = plainLegend(chart.colours);
  if (colours.length === chart.colours.length) return { ...plain, colours };
  return { ...plain, colours, cells: chart.cells.map((cell) => placeOf[cell] ?? 0) };
}
