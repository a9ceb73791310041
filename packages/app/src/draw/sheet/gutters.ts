import { directionOf, type StartSide } from '@halfhitch/core';
import type { Inks } from './inks.js';
import { isNumbered, numberEvery, type SheetLayout } from './layout.js';

export interface GutterWish {
  readonly layout: SheetLayout;
  readonly start: StartSide;
  /** Rows and columns in sight; the ends are not included. */
  readonly rows: { readonly first: number; readonly end: number };
  readonly columns: { readonly first: number; readonly end: number };
  /** What is scrolled away and what is in sight, px. */
  readonly scroll: { readonly left: number; readonly top: number };
  readonly view: { readonly width: number; readonly height: number };
  readonly inks: Inks;
  readonly here: { readonly row: number; readonly column: number };
  /** Whether the lead's way is drawn; thread shows it itself. */
  readonly lead: boolean;
}

const TURN = 9;
/** Height of the strip of column numbers. */
const STRIP = 21;

/**
 * Beside each row its number stands on the side where the row begins, and the lead is drawn as it
 * goes: hanging in before the first row, round the turn from every row to the next, and out of the
 * last. Drawn in px, on a context that is scaled to them.
 */
export function drawGutters(ctx: CanvasRenderingContext2D, wish: GutterWish): void {
  const { layout, scroll, view, inks } = wish;
  const left = Math.max(layout.gutter, layout.left - scroll.left);
  const right = Math.min(
    view.width - layout.gutter,
    layout.left + layout.columns * layout.cellWidth - scroll.left,
  );
  // A side of the chart that is scrolled away lies under its numbers.
  const hidden = {
    left: layout.left - scroll.left < left,
    right: layout.left + layout.columns * layout.cellWidth - scroll.left > right,
  };
  ctx.fillStyle = inks.card;
  if (hidden.left) ctx.fillRect(0, 0, left, view.height);
  if (hidden.right) ctx.fillRect(right, 0, view.width - right, view.height);
  if (wish.lead && layout.cellHeight >= 8) {
    drawLead(ctx, wish, { left: hidden.left ? null : left, right: hidden.right ? null : right });
  }
  drawRowNumbers(ctx, wish, left, right);
  drawColumnNumbers(ctx, wish, left, right);
}

function middleOf({ layout, scroll }: GutterWish, row: number): number {
  return layout.top + (row + 0.5) * layout.cellHeight - scroll.top;
}

interface Sides {
  /** Where the chart ends; null where that is not in sight. */
  readonly left: number | null;
  readonly right: number | null;
}

function drawLead(ctx: CanvasRenderingContext2D, wish: GutterWish, sides: Sides): void {
  const { layout, start, rows, inks } = wish;
  ctx.lineCap = 'round';
  ctx.strokeStyle = inks.lake;
  ctx.lineWidth = Math.max(1.5, Math.min(3, layout.cellHeight / 9));
  const first = Math.max(0, rows.first - 1);
  for (let row = first; row < Math.min(layout.rows, rows.end + 1); row++) {
    const goesRight = directionOf(start, row) === 'right';
    if (row === 0) drawEnd(ctx, wish, sides, { row, atRight: !goesRight, way: -1 });
    if (row === layout.rows - 1) drawEnd(ctx, wish, sides, { row, atRight: goesRight, way: 1 });
    else drawTurn(ctx, wish, sides, { row, atRight: goesRight, way: 1 });
  }
}

interface LeadPlace {
  readonly row: number;
  readonly atRight: boolean;
  /** Down or up. */
  readonly way: 1 | -1;
}

/** How far beside the knots the lead goes. */
function reachOf(layout: SheetLayout, atRight: boolean): number {
  return Math.min(TURN, layout.cellHeight * 0.6) * (atRight ? 1 : -1);
}

/** The lead hangs where it begins and where it ends. */
function drawEnd(
  ctx: CanvasRenderingContext2D,
  wish: GutterWish,
  sides: Sides,
  { row, atRight, way }: LeadPlace,
): void {
  const x = atRight ? sides.right : sides.left;
  if (x === null) return;
  const y = middleOf(wish, row);
  const aside = x + reachOf(wish.layout, atRight);
  ctx.beginPath();
  ctx.moveTo(x, y);
  ctx.quadraticCurveTo(aside, y, aside, y + (way * wish.layout.cellHeight) / 2);
  ctx.stroke();
}

/** One by one: a path over the whole sheet takes far longer than its parts. */
function drawTurn(
  ctx: CanvasRenderingContext2D,
  wish: GutterWish,
  sides: Sides,
  { row, atRight }: LeadPlace,
): void {
  const x = atRight ? sides.right : sides.left;
  if (x === null) return;
  const [y, below] = [middleOf(wish, row), middleOf(wish, row + 1)];
  const aside = x + reachOf(wish.layout, atRight);
  ctx.beginPath();
  ctx.moveTo(x, y);
  ctx.bezierCurveTo(aside, y, aside, below, x, below);
  ctx.stroke();
}

function drawRowNumbers(
  ctx: CanvasRenderingContext2D,
  wish: GutterWish,
  left: number,
  right: number,
): void {
  const { layout, start, rows, inks, here } = wish;
  const every = numberEvery(layout.cellHeight, 15);
  ctx.textBaseline = 'middle';
  for (let row = rows.first; row < rows.end; row++) {
    if (row < 0 || row >= layout.rows) continue;
    const current = row === here.row;
    const crowded = Math.abs(row - here.row) * layout.cellHeight < 15;
    if (!current && (!isNumbered(row, every) || (every > 1 && crowded))) continue;
    const fromLeft = directionOf(start, row) === 'right';
    ctx.font = `${current ? '700' : '400'} 12px system-ui, sans-serif`;
    ctx.fillStyle = current ? inks.ink : inks.soft;
    ctx.textAlign = fromLeft ? 'right' : 'left';
    const x = fromLeft ? left - TURN - 5 : right + TURN + 5;
    ctx.fillText(String(row + 1), x, middleOf(wish, row) + 0.5);
  }
}

function drawColumnNumbers(
  ctx: CanvasRenderingContext2D,
  wish: GutterWish,
  left: number,
  right: number,
): void {
  const { layout, scroll, view, columns, inks, here } = wish;
  ctx.fillStyle = inks.card;
  ctx.fillRect(0, 0, view.width, STRIP);
  const digits = String(layout.columns).length;
  const every = Math.max(numberEvery(layout.cellWidth, 6 + 7 * digits), layout.columns > 9 ? 5 : 1);
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  for (let column = columns.first; column < columns.end; column++) {
    const x = layout.left + (column + 0.5) * layout.cellWidth - scroll.left;
    if (x < left || x > right) continue;
    const current = column === here.column;
    const crowded = Math.abs(column - here.column) * layout.cellWidth < 6 + 7 * digits;
    if (!current && (!isNumbered(column, every) || crowded)) continue;
    ctx.font = `${current ? '700' : '400'} 12px system-ui, sans-serif`;
    ctx.fillStyle = current ? inks.ink : inks.soft;
    ctx.fillText(String(column + 1), x, 11);
  }
}
