import { figures } from '../view/figures.js';
import type { PaperName } from './paper.js';

/** What is printed. */
export interface SheetChoice {
  readonly paper: PaperName;
  /** First and last row, from 1. */
  readonly firstRow: number;
  readonly lastRow: number;
  readonly chart: boolean;
  readonly written: boolean;
  readonly cut: boolean;
  readonly inColour: boolean;
  /** The steps of each colour change, those too that were written out before. */
  readonly everyStep: boolean;
}

/** Stated limits of one print. */
export const SHEET_LIMITS = { rows: 400, knots: 40_000 } as const;

/** What is wrong with a choice, in words; null when it can be printed. */
export function wrongWith(choice: SheetChoice, rows: number, columns: number): string | null {
  const { firstRow, lastRow } = choice;
  for (const row of [firstRow, lastRow]) {
    if (!Number.isInteger(row) || row < 1 || row > rows) {
      return `Rows go from 1 to ${figures(rows)}. Give whole numbers.`;
    }
  }
  if (lastRow < firstRow) return 'The last row comes before the first. Change one of them.';
  const many = lastRow - firstRow + 1;
  if (many > SHEET_LIMITS.rows || many * columns > SHEET_LIMITS.knots) {
    const most = mostRows(columns);
    return `At most ${figures(most)} rows of this piece can be printed at once. Print it in parts, for example rows ${firstRow} to ${firstRow + most - 1} first.`;
  }
  if (!choice.chart && !choice.written && !choice.cut) return 'Choose at least one thing to print.';
  return null;
}

/** How many rows of a piece can be printed at once. */
export function mostRows(columns: number): number {
  return Math.max(1, Math.min(SHEET_LIMITS.rows, Math.floor(SHEET_LIMITS.knots / columns)));
}
