import {
  type ChartNotice,
  type DiagonalPattern,
  type DiagonalPicture,
  InputError,
  readDiagonalPlan,
  readPatternOrPicture,
  readPictureFile,
  simulateDiagonal,
  verifyDiagonal,
} from '@halfhitch/core';
import type { ExitCode } from '../exit-code.js';
import { inFile, inputName, readChartBytes } from '../files/read-input.js';
import { diagonalReport } from './report.js';

export interface VerifyDiagonalOptions {
  readonly chart: string;
  readonly json?: boolean;
  readonly order?: boolean;
}

/** Judges a plan of a diagonal pattern by its steps alone. */
export async function verifyDiagonalPlan(
  file: string,
  text: string,
  options: VerifyDiagonalOptions,
): Promise<ExitCode> {
  const bytes = await readChartBytes(options.chart);
  const { picture, pattern, notices } = inFile(options.chart, () => wantedIn(bytes));
  const plan = inFile(file, () => readDiagonalPlan(text));
  const verification = inFile(file, () =>
    verifyDiagonal(plan, picture, pattern === null ? {} : { pattern }),
  );
  const of = { pattern, notices, plan, verification };
  return diagonalReport(inputName(file), of, {
    json: options.json ?? false,
    order: options.order ?? false,
  });
}

interface WantedFile {
  readonly picture: DiagonalPicture;
  /** Null where the file says only what is to be seen. */
  readonly pattern: DiagonalPattern | null;
  readonly notices: readonly ChartNotice[];
}

/** First byte of a PNG picture; no text begins so. */
const PNG = 0x89;

/** What a piece is to be: a diagonal pattern, or only a picture of one. */
function wantedIn(bytes: Uint8Array): WantedFile {
  if (bytes[0] === PNG) return { ...readPictureFile(bytes, ''), pattern: null };
  const reading = readPatternOrPicture(bytes, '');
  if (reading.kind === 'picture') return { ...reading, pattern: null };
  if (reading.kind === 'diagonal') {
    const { pattern, notices } = reading;
    return { picture: simulateDiagonal(pattern).picture, pattern, notices };
  }
  throw new InputError(
    'chart-not-diagonal',
    'This is a chart, but the plan is of a diagonal pattern.',
    {},
    'Give the diagonal pattern, or its picture, that the plan was made for.',
  );
}
