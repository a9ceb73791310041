import type { Inks } from '../../draw/sheet/inks.js';
import type { LatticeLayout } from './layout.js';
import type { LatticeMark } from './look.js';
import { addLozenge } from './lozenge.js';

/**
 * Marks a knot, never by colour alone: one in conflict is framed whole and hatched crosswise, one
 * that differs is framed in dashes with the colour that was wanted in its middle, and one of which
 * something is said is framed in dots.
 */
export function paintMark(
  ctx: CanvasRenderingContext2D,
  layout: LatticeLayout,
  mark: LatticeMark,
  inks: Inks,
): void {
  const { x: left, y: top, width, height } = layout.boxOf(mark);
  const [x, y] = [left + width / 2, top + height / 2];
  const [wide, high] = [Math.max(6, layout.pitch * 0.86), Math.max(6, layout.rise * 0.86)];
  const frame = new Path2D();
  addLozenge(frame, x, y, wide, high);
  ctx.save();
  if (mark.what === 'conflict') {
    ctx.save();
    ctx.clip(frame);
    crosswise(ctx, x - wide, y - high, 2 * wide, 2 * high, inks);
    ctx.restore();
  }
  if (mark.what === 'differs') {
    const inner = new Path2D();
    addLozenge(inner, x, y, wide * 0.44, high * 0.44);
    ctx.fillStyle = mark.wanted ?? inks.card;
    ctx.fill(inner);
    ctx.lineWidth = 3;
    ctx.strokeStyle = inks.card;
    ctx.stroke(inner);
    ctx.lineWidth = 1.4;
    ctx.strokeStyle = inks.ink;
    ctx.stroke(inner);
  }
  const line = Math.max(2, Math.min(3, layout.pitch / 8));
  // Two lines, one light and one dark, so that one of them stands out from any thread.
  ctx.lineWidth = line + 2;
  ctx.strokeStyle = inks.card;
  ctx.stroke(frame);
  ctx.lineWidth = line;
  ctx.strokeStyle = mark.what === 'found' ? inks.ink : inks.buoy;
  if (mark.what === 'differs') ctx.setLineDash([2.5 * line, 1.5 * line]);
  if (mark.what === 'found') ctx.setLineDash([line, line]);
  ctx.stroke(frame);
  ctx.restore();
}

function crosswise(
  ctx: CanvasRenderingContext2D,
  x: number,
  y: number,
  width: number,
  height: number,
  inks: Inks,
): void {
  ctx.beginPath();
  for (let at = 6; at < width + height; at += 6) {
    ctx.moveTo(x + at, y);
    ctx.lineTo(x + at - height, y + height);
    ctx.moveTo(x + width - at, y);
    ctx.lineTo(x + width - at + height, y + height);
  }
  ctx.strokeStyle = inks.card;
  ctx.lineWidth = 2;
  ctx.stroke();
  ctx.strokeStyle = inks.buoy;
  ctx.lineWidth = 1;
  ctx.stroke();
}
