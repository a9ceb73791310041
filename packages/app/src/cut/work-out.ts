import { type Chart, type EdgeTechnique, InputError } from '@halfhitch/core';
import {
  calibrate,
  checkSwatch,
  cutList,
  type KnotMeasures,
  knottedLength,
  Lengths,
  type SwatchCheck,
  threadOf,
  tightMeasures,
} from '@halfhitch/geometry/thread';
import { bandFit, sizeRows, tailsFor } from './fit.js';
import type { CutOutcome, CutRequest } from './messages.js';
import { fieldOf, type ReadSettings, readSettings } from './read-settings.js';
import { sheetOf } from './sheet.js';

/** The cut list that the fields ask for, or what is wrong in which field. Never throws. */
export function workOut({ chart, choice, settings }: CutRequest): CutOutcome {
  const read = readSettings(settings);
  if ('errors' in read) return read;
  try {
    const measures = measuresOf(choice.edge);
    const lengths = lengthsFor(read, measures);
    const length = lengthWanted(read, lengths);
    const tails = tailsFor(read);
    const list = cutList(chart, measures, {
      ...read.options,
      ...choice,
      tails,
      ...(length === null ? {} : { length }),
    });
    return {
      sheet: sheetOf(list),
      fit: bandFit(read, list, tails),
      sizes: sizeRows(read, lengths),
      swatch: swatchCheck(read, measures),
    };
  } catch (error) {
    if (error instanceof InputError) {
      return { errors: { [fieldOf(error.code, settings)]: error.message } };
    }
    return { errors: { whole: inWords(error) } };
  }
}

/** Lengths by the thread as it is given, or as the swatch has it. */
export function lengthsFor({ options }: ReadSettings, measures: KnotMeasures): Lengths {
  if (options.swatch === undefined) return new Lengths(measures, threadOf(options.thread).diameter);
  const { diameter, across, along } = calibrate(options.swatch, measures);
  return new Lengths(measures, diameter, across, along);
}

/** Of the knotted part, mm; null where the chart decides. */
function lengthWanted(read: ReadSettings, { thickness }: Lengths): number | null {
  const { wrist, ease, closing } = read;
  if (wrist === null) return read.length;
  return knottedLength({ wrist, ease, closing, thickness });
}

const ONE_KNOT: Chart = {
  name: '',
  rows: 1,
  columns: 1,
  colours: [{ key: 'a', hex: '#1f5f99', name: '' }],
  cells: new Uint8Array(1),
};

function swatchCheck(
  { options: { thread, swatch } }: ReadSettings,
  measures: KnotMeasures,
): SwatchCheck | null {
  if (swatch === undefined) return null;
  // A list without a swatch says how far its figures may be off.
  const without = cutList(ONE_KNOT, measures, thread === undefined ? {} : { thread });
  return checkSwatch(swatch, measures, without.thread.diameter, without.uncertainty);
}

const measures = new Map<EdgeTechnique, KnotMeasures>();

/** The same for every chart, and not quick to come by. */
export function measuresOf(edge: EdgeTechnique): KnotMeasures {
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
