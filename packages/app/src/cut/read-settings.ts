import {
  type Closing,
  CUT_LIMITS,
  type CutOptions,
  FIT_LIMITS,
  MAX_LENGTH,
  SWATCH_LIMITS,
  type Swatch,
  THREAD_LIMITS,
  type ThreadChoice,
  WRIST_LIMITS,
} from '@halfhitch/geometry/thread';
import { figures } from '../view/figures.js';
import type { CutField, CutSettings } from './settings.js';

/** What is wrong, by the field it is wrong in; `whole` for what is in no field. */
export type CutErrors = Readonly<Partial<Record<CutField | 'whole', string>>>;

interface Limits {
  readonly least: number;
  readonly most: number;
  readonly unit: string;
}

const MM_IN_METRE = 1_000;

const metres = ({ least, most }: { least: number; most: number }): Limits => ({
  least: least / MM_IN_METRE,
  most: most / MM_IN_METRE,
  unit: 'm',
});

const LIMITS = {
  diameter: { least: THREAD_LIMITS.minDiameter, most: THREAD_LIMITS.maxDiameter, unit: 'mm' },
  tex: { least: THREAD_LIMITS.minTex, most: THREAD_LIMITS.maxTex, unit: 'tex' },
  strands: { least: 1, most: THREAD_LIMITS.maxStrands, unit: '' },
  length: { least: 1, most: MAX_LENGTH, unit: 'mm' },
  wrist: { least: WRIST_LIMITS.min, most: WRIST_LIMITS.max, unit: 'mm' },
  ...FIT_LIMITS,
  buckleWidth: { least: 1, most: 300, unit: 'mm' },
  tails: CUT_LIMITS.tails,
  margin: CUT_LIMITS.margin,
  workable: metres(CUT_LIMITS.workable),
  putUp: metres(CUT_LIMITS.putUp),
  swatchRows: { least: 1, most: SWATCH_LIMITS.rows, unit: '' },
  swatchColumns: { least: 1, most: SWATCH_LIMITS.columns, unit: '' },
  swatchWidth: { least: 1, most: SWATCH_LIMITS.size, unit: 'mm' },
  swatchLength: { least: 1, most: SWATCH_LIMITS.size, unit: 'mm' },
} as const satisfies Record<CutField, Limits>;

const WHOLE: readonly CutField[] = ['strands', 'swatchRows', 'swatchColumns'];

const SWATCH = ['swatchRows', 'swatchColumns', 'swatchWidth', 'swatchLength'] as const;

/** What the fields ask for. */
export interface ReadSettings {
  /** Without the length, which depends on how thick the band turns out. */
  readonly options: CutOptions;
  /** Of the knotted part, mm; null where the chart or a wrist decides. */
  readonly length: number | null;
  /** Null where the chart or a length decides. */
  readonly wrist: number | null;
  readonly ease: number;
  readonly closing: Closing;
  /** Null unless it is closed with a buckle. */
  readonly buckleWidth: number | null;
}

/** What the fields ask for, or all that is wrong in them at once. */
export function readSettings(settings: CutSettings): ReadSettings | { readonly errors: CutErrors } {
  const errors: Partial<Record<CutField, string>> = {};
  const figure = (field: CutField): number => {
    const read = readFigure(settings[field], LIMITS[field], WHOLE.includes(field));
    if (typeof read === 'number') return read;
    errors[field] = read;
    return Number.NaN;
  };

  const read: ReadSettings = {
    options: {
      thread: readThread(settings, figure),
      tails: figure('tails'),
      margin: figure('margin'),
      workable: figure('workable') * MM_IN_METRE,
      putUp: figure('putUp') * MM_IN_METRE,
      ...readSwatch(settings, figure),
    },
    length: settings.span === 'length' ? figure('length') : null,
    wrist: settings.span === 'wrist' ? figure('wrist') : null,
    ease: figure('ease'),
    closing: readClosing(settings, figure),
    buckleWidth: settings.closing === 'buckle' ? figure('buckleWidth') : null,
  };
  return Object.keys(errors).length === 0 ? read : { errors };
}

function readClosing({ closing }: CutSettings, figure: (field: CutField) => number): Closing {
  switch (closing) {
    case 'ties':
      return { how: 'ties', gap: figure('gap'), plait: figure('plait') };
    case 'loop':
      return { how: 'loop', loop: figure('loop'), plait: figure('plait') };
    case 'buckle':
      return {
        how: 'buckle',
        buckle: figure('buckle'),
        turnOver: figure('turnOver'),
        overlap: figure('overlap'),
      };
    default:
      return { how: 'meet' };
  }
}

function readThread({ thread }: CutSettings, figure: (field: CutField) => number): ThreadChoice {
  if (thread === 'assumed') return {};
  const strands = figure('strands');
  return thread === 'tex'
    ? { tex: figure('tex'), strands }
    : { diameter: figure('diameter'), strands };
}

/** A swatch that is not filled in at all is none; one filled in by half is a mistake. */
function readSwatch(
  settings: CutSettings,
  figure: (field: CutField) => number,
): { readonly swatch?: Swatch } {
  if (SWATCH.every((field) => settings[field].trim() === '')) return {};
  const [rows, columns, width, length] = SWATCH.map(figure) as [number, number, number, number];
  return { swatch: { rows, columns, width, length } };
}

/** The figure, or what is wrong with it. */
function readFigure(text: string, { least, most, unit }: Limits, whole: boolean): number | string {
  const range = `from ${figures(least, 0, 3)} to ${figures(most, 0, 3)}${unit === '' ? '' : ` ${unit}`}`;
  const given = text.trim();
  const kind = whole ? 'whole number' : 'number';
  if (given === '') return `Nothing is filled in. Give a ${kind} ${range}.`;
  // A comma is a decimal point to some and parts the thousands to others.
  if (given.includes(',')) return `Write "${given}" without a comma; a point begins the decimals.`;
  if (!/^[+-]?(\d+(?:\.\d*)?|\.\d+)$/.test(given)) {
    return `"${given}" is not a number. Give a ${kind} ${range}.`;
  }
  const value = Number(given);
  if (value < least || value > most || (whole && !Number.isInteger(value))) {
    return `${given} will not do here. Give a ${kind} ${range}.`;
  }
  return value;
}

/** The field that an error of the cut list itself belongs to, by the error's code. */
export function fieldOf(code: string, { span }: CutSettings): CutField | 'whole' {
  if (code === 'workable-length') return 'workable';
  if (code === 'put-up-too-short') return 'putUp';
  if (code === 'too-many-rows' && span !== 'chart') return span;
  if (code === 'closing') return 'gap';
  return 'whole';
}
