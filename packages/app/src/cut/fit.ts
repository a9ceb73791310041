import { CHART_LIMITS } from '@halfhitch/core';
import {
  type Closing,
  type CutList,
  closingTails,
  knottedLength,
  type Lengths,
  WRIST_SIZES,
  type WristSize,
  wristFor,
} from '@halfhitch/geometry/thread';
import type { ReadSettings } from './read-settings.js';

/** How the piece goes round a wrist and is closed. */
export interface BandFit {
  readonly closing: Closing;
  readonly ease: number;
  /** The wrist it goes round as it comes out, mm; null where it is too short to close. */
  readonly goesRound: number | null;
  /** Tails counted on, and what the closing needs of them at both ends, mm. */
  readonly tails: number;
  readonly tailsNeeded: { readonly first: number; readonly last: number };
  /** Rows turned over the bar of a buckle; null with any other closing. */
  readonly rowsTurned: number | null;
  /** Widest band that goes through the buckle, mm; null with any other closing. */
  readonly buckleWidth: number | null;
}

/** A size of wrist, and the rows that it takes. */
export interface SizeRow extends WristSize {
  /** Of the knotted part, mm. */
  readonly length: number;
  readonly rows: number;
  /** The wanted one. */
  readonly chosen: boolean;
}

/** Tails at each end, mm: as filled in, or as long as the closing needs them. */
export function tailsFor({ options, closing }: ReadSettings): number {
  const { first, last } = closingTails(closing);
  return Math.max(options.tails ?? 0, Math.ceil(first / 10) * 10, Math.ceil(last / 10) * 10);
}

export function bandFit(
  read: ReadSettings,
  list: Pick<CutList, 'rows' | 'size'>,
  tails: number,
): BandFit {
  const { closing, ease, buckleWidth } = read;
  const { size } = list;
  const goesRound = wristFor(size.length, { ease, closing, thickness: size.thickness });
  const rowHeight = size.length / list.rows;
  return {
    closing,
    ease,
    goesRound: goesRound > 0 ? goesRound : null,
    tails,
    tailsNeeded: closingTails(closing),
    rowsTurned: closing.how === 'buckle' ? Math.ceil(closing.turnOver / rowHeight) : null,
    buckleWidth,
  };
}

/** Rows for every size of wrist, with this thread, ease and closing. */
export function sizeRows(
  read: ReadSettings,
  lengths: Pick<Lengths, 'thickness' | 'rowHeight'>,
): SizeRow[] {
  const { ease, closing } = read;
  return WRIST_SIZES.map((size) => {
    const fit = { wrist: size.wrist, ease, closing, thickness: lengths.thickness };
    const length = knottedLength(fit);
    const rows = Math.max(1, Math.round(length / lengths.rowHeight));
    return { ...size, length, rows, chosen: size.wrist === read.wrist };
  }).filter(({ rows }) => rows <= CHART_LIMITS.maxRows);
}
