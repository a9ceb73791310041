import type { Grade } from '@halfhitch/core';
import type { Box } from '../../view/box.js';
import type { Inks } from './inks.js';

/** A finding as the sheet shows it: rows and columns from 0; null is a whole row. */
export interface Mark {
  readonly grade: Grade;
  readonly row: number;
  readonly column: number | null;
  readonly message: string;
}

const LEAST = 9;

/**
 * Marks a knot by the grade of what was found there, never by colour alone: wrong is framed whole
 * and hatched crosswise, weak is framed in dashes and hatched one way, a note is framed in dots.
 */
export function drawMark(
  ctx: CanvasRenderingContext2D,
  grade: Grade,
  { x, y, width, height }: Box,
  inks: Inks,
  dpr: number,
): void {
  const wide = Math.max(width, LEAST * dpr);
  const high = Math.max(height, LEAST * dpr);
  const left = Math.round(x + (width - wide) / 2);
  const top = Math.round(y + (height - high) / 2);
  const line = Math.max(2, Math.min(3, high / 8 / dpr)) * dpr;
  ctx.save();
  ctx.beginPath();
  ctx.rect(left, top, wide, high);
  // Two lines, one light and one dark, so that one of them stands out from any thread.
  ctx.strokeStyle = inks.card;
  ctx.lineWidth = line + 2 * dpr;
  ctx.setLineDash([]);
  ctx.stroke();
  ctx.clip();
  hatch(ctx, grade, left, top, wide, high, inks, dpr);
  ctx.restore();
  ctx.save();
  ctx.strokeStyle = grade === 'note' ? inks.ink : inks.buoy;
  ctx.lineWidth = line;
  if (grade === 'weak') ctx.setLineDash([3 * line, 1.5 * line]);
  if (grade === 'note') ctx.setLineDash([line, line]);
  ctx.strokeRect(left, top, wide, high);
  ctx.restore();
}

function hatch(
  ctx: CanvasRenderingContext2D,
  grade: Grade,
  x: number,
  y: number,
  width: number,
  height: number,
  inks: Inks,
  dpr: number,
): void {
  if (grade === 'note') return;
  const step = 7 * dpr;
  ctx.beginPath();
  for (let at = step; at < width + height; at += step) {
    ctx.moveTo(x + at, y);
    ctx.lineTo(x + at - height, y + height);
    if (grade !== 'wrong') continue;
    ctx.moveTo(x + width - at, y);
    ctx.lineTo(x + width - at + height, y + height);
  }
  ctx.strokeStyle = inks.card;
  ctx.lineWidth = 2 * dpr;
  ctx.stroke();
  ctx.strokeStyle = inks.buoy;
  ctx.lineWidth = dpr;
  ctx.stroke();
}
