import {
  type Chart,
  type DiagonalPattern,
  diagonalStripes,
  type EdgeTechnique,
  InputError,
} from '@halfhitch/core';
import { type DiagonalCutOptions, diagonalCutList, type FinishedSize } from '@halfhitch/geometry';
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
import type { KnotChoice } from '../work/messages.js';
import { isOutOfMemory, reasonOf } from '../work/reason.js';
import { bandFit, sizeRows, tailsFor } from './fit.js';
import type { CutAnswer, CutOutcome, CutRequest } from './messages.js';
import { fieldOf, type ReadSettings, readSettings } from './read-settings.js';
import { diagonalSheetOf, sheetOf } from './sheet.js';

/** The cut list that the fields ask for, or what is wrong in which field. Never throws. */
export function workOut(request: CutRequest): CutOutcome {
  const { settings } = request;
  const read = readSettings(settings);
  if ('errors' in read) return read;
  try {
    return 'pattern' in request
      ? diagonalAnswer(request.pattern, read)
      : alphaAnswer(request.chart, request.choice, read);
  } catch (error) {
    if (error instanceof InputError) {
      return { errors: { [fieldOf(error.code, settings)]: error.message } };
    }
    return { errors: { whole: inWords(error) } };
  }
}

function alphaAnswer(chart: Chart, choice: KnotChoice, read: ReadSettings): CutAnswer {
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
}

function diagonalAnswer(pattern: DiagonalPattern, read: ReadSettings): CutAnswer {
  const { thread, margin, putUp, swatch } = read.options;
  const tails = tailsFor(read);
  const options = {
    tails,
    ...(thread === undefined ? {} : { thread }),
    ...(margin === undefined ? {} : { margin }),
    ...(putUp === undefined ? {} : { putUp }),
    ...(swatch === undefined ? {} : { swatch: { ...swatch, strings: swatch.columns } }),
  };
  const lengths = rowsOf(options);
  const length = lengthWanted(read, lengths);
  const list = diagonalCutList(pattern, { ...options, ...(length === null ? {} : { length }) });
  return {
    sheet: diagonalSheetOf(list),
    fit: bandFit(read, list, tails),
    sizes: sizeRows(read, lengths),
    swatch: null,
  };
}

/** How thick diagonal work is, and how high a row: the same for every pattern. */
function rowsOf(options: DiagonalCutOptions): Pick<Lengths, 'thickness' | 'rowHeight'> {
  const [one, two] = [1, 2].map((rows) => {
    const pattern = diagonalStripes({ strings: 3, rows, colours: ONE_KNOT.colours });
    return diagonalCutList(pattern, options).size;
  }) as [FinishedSize, FinishedSize];
  return { thickness: one.thickness, rowHeight: two.length - one.length };
}

/** Lengths by the thread as it is given, or as the swatch has it. */
export function lengthsFor({ options }: ReadSettings, measures: KnotMeasures): Lengths {
  if (options.swatch === undefined) return new Lengths(measures, threadOf(options.thread).diameter);
  const { diameter, across, along } = calibrate(options.swatch, measures);
  return new Lengths(measures, diameter, across, along);
}

/** Of the knotted part, mm; null where the chart decides. */
function lengthWanted(
  read: ReadSettings,
  { thickness }: Pick<Lengths, 'thickness'>,
): number | null {
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
  if (isOutOfMemory(error)) {
    return 'The browser has not enough memory for a piece so large. Ask for a shorter one.';
  }
  return `Something went wrong in working the lengths out (${reasonOf(error)}).`;
}
