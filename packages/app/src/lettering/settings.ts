import type { OwnThread } from '../picture/match-threads.js';
import type { BorderKind } from './border.js';

export const LETTER_SIZES = ['small', 'medium', 'large'] as const;
export type LetterSize = (typeof LETTER_SIZES)[number];

/** How the text lies on the bracelet, which hangs down the page as it is knotted. */
export const DIRECTIONS = ['across', 'downwards', 'upwards'] as const;
export type TextDirection = (typeof DIRECTIONS)[number];

export const ALIGNMENTS = ['start', 'middle', 'end'] as const;
export type Alignment = (typeof ALIGNMENTS)[number];

/** What is written and how. All lengths are in knots. */
export interface LetteringOptions {
  readonly size: LetterSize;
  /** Between letters, words and lines; null for what suits the size. */
  readonly letterGap: number | null;
  readonly wordGap: number | null;
  readonly lineGap: number | null;
  /** Of lines that are shorter than the longest, and of all in a wanted width. */
  readonly align: Alignment;
  /** Across the bracelet, or along it, read downwards or upwards. */
  readonly direction: TextDirection;
  /** How often the whole text comes, one after another down the bracelet. */
  readonly times: number;
  /** Between one time and the next. */
  readonly timesGap: number;
  readonly border: BorderKind;
  /** On the two long sides of the text, or all the way round. */
  readonly borderSides: 'two' | 'round';
  /** Between the text and the border or the edge. */
  readonly margin: number;
  /** Of the whole chart, borders and margins counted; null for what the text takes. */
  readonly columns: number | null;
  readonly rows: number | null;
  readonly text: OwnThread;
  readonly ground: OwnThread;
  readonly borderColour: OwnThread;
}

export const LETTERING_LIMITS = {
  /** Characters of text. */
  maxText: 500,
  maxLines: 20,
  maxGap: 40,
  maxTimes: 100,
} as const;

export const USUAL_LETTERING: LetteringOptions = {
  size: 'medium',
  letterGap: null,
  wordGap: null,
  lineGap: null,
  align: 'middle',
  // A band is a few knots wide: words of any length go along it.
  direction: 'downwards',
  times: 1,
  timesGap: 6,
  border: 'none',
  borderSides: 'two',
  margin: 2,
  columns: null,
  rows: null,
  text: { hex: '#f4f1e8', name: 'chalk' },
  ground: { hex: '#1f6fb2', name: 'lake blue' },
  borderColour: { hex: '#d9642a', name: 'buoy orange' },
};
