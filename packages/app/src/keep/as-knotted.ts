import { CHART_LIMITS, type Chart, type ChartColour } from '@halfhitch/core';
import type { Project } from '../project/project.js';

/**
 * The chart with how it is knotted written into it, as it goes into files. What is on the screen
 * may have come from a box to write in: names that no file may hold are made plain, and colours
 * that are the same are made one, so that whatever is written can be read again.
 */
export function chartAsKnotted({ chart, choice }: Pick<Project, 'chart' | 'choice'>): Chart {
  const { edge, start } = choice;
  const plain = { ...chart, name: plainName(chart.name), edge, start };
  const places = new Map<string, number>();
  const colours: ChartColour[] = [];
  const placeOf = chart.colours.map((colour) => {
    const place = places.get(colour.hex);
    if (place !== undefined) return place;
    places.set(colour.hex, colours.length);
    return colours.push({ ...colour, name: plainName(colour.name) }) - 1;
  });
  if (colours.length === chart.colours.length) return { ...plain, colours };
  return { ...plain, colours, cells: chart.cells.map((cell) => placeOf[cell] ?? 0) };
}

function plainName(name: string): string {
  const plain = name.replace(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]+/gu, ' ').trim();
  return [...plain].slice(0, CHART_LIMITS.maxName).join('').trim();
}
