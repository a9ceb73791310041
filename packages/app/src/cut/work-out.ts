import { type EdgeTechnique, InputError } from '@halfhitch/core';
import { cutList, type KnotMeasures, tightMeasures } from '@halfhitch/geometry';
import type { CutOutcome, CutRequest } from './messages.js';
import { fieldOf, readSettings } from './read-settings.js';
import { sheetOf } from './sheet.js';

/** The cut list that the fields ask for, or what is wrong in which field. Never throws. */
export function workOut({ chart, choice, settings }: CutRequest): CutOutcome {
  const read = readSettings(settings);
  if ('errors' in read) return read;
  try {
    const list = cutList(chart, measuresOf(choice.edge), { ...read.options, ...choice });
    return { sheet: sheetOf(list) };
  } catch (error) {
    if (error instanceof InputError) {
      return { errors: { [fieldOf(error.code, settings)]: error.message } };
    }
    return { errors: { whole: inWords(error) } };
  }
}

const measures = new Map<EdgeTechnique, KnotMeasures>();

/** The same for every chart, and not quick to come by. */
function measuresOf(edge: EdgeTechnique): KnotMeasures {
  const known = measures.get(edge) ?? tightMeasures(edge);
  measures.set(edge, known);
  return known;
}

function inWords(error: unknown): string {
  if (error instanceof RangeError && /alloc|memory|array/i.test(error.message)) {
    return 'The browser has not enough memory for a piece so large. Ask for a shorter one.';
  }
  return `Something went wrong in working the lengths out (${error instanceof Error ? error.message : String(error)}).`;
}
