import { CHART_LIMITS } from '@halfhitch/core';
import { readWhole } from '../picture/number-field.js';
import { LETTERING_LIMITS, type LetteringOptions, USUAL_LETTERING } from './settings.js';

/** What is filled in as a figure. */
export type Figure =
  | 'letterGap'
  | 'wordGap'
  | 'lineGap'
  | 'times'
  | 'timesGap'
  | 'margin'
  | 'columns'
  | 'rows';

const LIMITS: Readonly<Record<Figure, readonly [least: number, most: number]>> = {
  letterGap: [0, LETTERING_LIMITS.maxGap],
  wordGap: [0, LETTERING_LIMITS.maxGap],
  lineGap: [0, LETTERING_LIMITS.maxGap],
  times: [1, LETTERING_LIMITS.maxTimes],
  timesGap: [0, LETTERING_LIMITS.maxGap],
  margin: [0, LETTERING_LIMITS.maxGap],
  columns: [CHART_LIMITS.minColumns, CHART_LIMITS.maxColumns],
  rows: [CHART_LIMITS.minRows, CHART_LIMITS.maxRows],
};

/** Left empty, these are as suits the letters. */
const MAY_BE_EMPTY: ReadonlySet<Figure> = new Set([
  'letterGap',
  'wordGap',
  'lineGap',
  'columns',
  'rows',
]);

/** Figures as they were typed. */
export type Typed = Readonly<Record<Figure, string>>;

export const USUAL_FIGURES: Typed = {
  letterGap: '',
  wordGap: '',
  lineGap: '',
  times: String(USUAL_LETTERING.times),
  timesGap: String(USUAL_LETTERING.timesGap),
  margin: String(USUAL_LETTERING.margin),
  columns: '',
  rows: '',
};

/** What is wrong with a figure; undefined where nothing is. */
export function errorOf(typed: Typed, figure: Figure): string | undefined {
  const text = typed[figure];
  if (text.trim() === '' && MAY_BE_EMPTY.has(figure)) return undefined;
  const read = readWhole(text, ...LIMITS[figure]);
  return typeof read === 'string' ? read : undefined;
}

export function isAnyWrong(typed: Typed): boolean {
  return (Object.keys(LIMITS) as Figure[]).some((figure) => errorOf(typed, figure) !== undefined);
}

/** The figures of what is typed, of which none is wrong; null for what suits the letters. */
export function measuresOf(typed: Typed): Pick<LetteringOptions, Figure> {
  const value = (figure: Figure): number | null =>
    typed[figure].trim() === '' ? null : Number(typed[figure]);
  return {
    letterGap: value('letterGap'),
    wordGap: value('wordGap'),
    lineGap: value('lineGap'),
    times: value('times') ?? 1,
    timesGap: value('timesGap') ?? 0,
    margin: value('margin') ?? 0,
    columns: value('columns'),
    rows: value('rows'),
  };
}
