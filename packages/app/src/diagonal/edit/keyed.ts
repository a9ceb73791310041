import type { ChartColour } from '@halfhitch/core';
import { freeKey } from '../../draw/edit/legend.js';

/** Colours with a character for each. */
export function keyed(colours: readonly Pick<ChartColour, 'hex' | 'name'>[]): ChartColour[] {
  const made: ChartColour[] = [];
  for (const colour of colours) made.push({ ...colour, key: freeKey(made) });
  return made;
}
