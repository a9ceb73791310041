import type { ChartColour, StartSide } from '@halfhitch/core';
import type { Box } from '../../view/box.js';
import type { Area } from '../edit/area.js';
import { type Symmetry, wholeSymmetry } from '../edit/symmetry.js';
import { drawGutters } from './gutters.js';
import type { Inks } from './inks.js';
import type { SheetLayout } from './layout.js';
import { drawMark, type Mark } from './marks.js';
import { memoryContext } from './memory-context.js';
import { LEAST_FOR_SIGN, type SignStamps } from './signs.js';

/** All that a sheet shows at a moment. */
export interface SheetPicture {
  readonly layout: SheetLayout;
  readonly colours: readonly ChartColour[];
  /** The drawing, with a stroke in hand. */
  readonly cells: Uint8Array;
  readonly start: StartSide;
  readonly scroll: { readonly left: number; readonly top: number };
  readonly view: { readonly width: number; readonly height: number };
  /** Device px in a px. */
  readonly dpr: number;
  readonly signs: boolean;
  /** What lies below as thread: cells that are the same there are left open. Null for none. */
  readonly asThread: Uint8Array | null;
  readonly symmetry: Symmetry;
  readonly marks: readonly Mark[];
  readonly selection: Area | null;
  readonly here: { readonly row: number; readonly column: number };
  readonly inks: Inks;
}

/** Knots this high and higher have lines between them, px. */
const LEAST_FOR_LINES = 6;

/**
 * Paints what is in sight of a chart. One pixel is written for each knot and all are enlarged at
 * once, so the time it takes depends on what is in sight alone, and little on that.
 */
export class SheetPainter {
  private readonly knots = document.createElement('canvas');
  private readonly pixels = memoryContext(this.knots);

  constructor(private readonly stamps: SignStamps) {}

  paint(ctx: CanvasRenderingContext2D, picture: SheetPicture): void {
    const { layout, scroll, view, dpr } = picture;
    const rows = layout.rowsIn(scroll.top, scroll.top + view.height);
    const columns = layout.columnsIn(scroll.left, scroll.left + view.width);
    const grid = new DeviceGrid(layout, scroll, dpr);
    ctx.setTransform(1, 0, 0, 1, 0, 0);
    ctx.clearRect(0, 0, ctx.canvas.width, ctx.canvas.height);
    if (rows.end > rows.first && columns.end > columns.first) {
      const sight: Sight = { grid, rows, columns };
      this.paintKnots(ctx, picture, sight);
      if (picture.signs) this.paintSigns(ctx, picture, sight);
      // Thread shows by itself where one knot ends.
      if (picture.asThread === null) paintLines(ctx, picture, sight);
      washRepeat(ctx, picture, sight);
      paintAxes(ctx, picture, grid);
      for (const mark of picture.marks) paintMark(ctx, picture, grid, mark);
      if (picture.selection !== null) paintSelection(ctx, picture, grid, picture.selection);
    }
    ctx.setTransform(dpr, 0, 0, dpr, 0, 0);
    drawGutters(ctx, { ...picture, rows, columns, lead: picture.asThread === null });
  }

  private paintKnots(
    ctx: CanvasRenderingContext2D,
    { colours, cells, layout, asThread }: SheetPicture,
    { grid, rows, columns }: Sight,
  ): void {
    const wide = columns.end - columns.first;
    const high = rows.end - rows.first;
    const image = new ImageData(wide, high);
    const pixels = new Uint32Array(image.data.buffer);
    const values = Uint32Array.from(colours, ({ hex }) => pixelOf(hex));
    let at = 0;
    for (let row = rows.first; row < rows.end; row++) {
      const own = row >= 0 && row < layout.rows;
      const drawn = (row + layout.rows * layout.repeated) % layout.rows;
      const from = drawn * layout.columns;
      for (let column = columns.first; column < columns.end; column++, at++) {
        const cell = cells[from + column] as number;
        if (own && asThread !== null && asThread[from + column] === cell) continue;
        pixels[at] = values[cell] as number;
      }
    }
    if (this.knots.width < wide) this.knots.width = wide;
    if (this.knots.height < high) this.knots.height = high;
    this.pixels?.putImageData(image, 0, 0);
    ctx.imageSmoothingEnabled = false;
    ctx.drawImage(
      this.knots,
      0,
      0,
      wide,
      high,
      grid.exactX(columns.first),
      grid.exactY(rows.first),
      wide * grid.cellWidth,
      high * grid.cellHeight,
    );
  }

  private paintSigns(
    ctx: CanvasRenderingContext2D,
    { colours, cells, layout }: SheetPicture,
    { grid, rows, columns }: Sight,
  ): void {
    const width = Math.floor(grid.cellWidth);
    const height = Math.floor(grid.cellHeight);
    if (Math.min(width, height) < LEAST_FOR_SIGN) return;
    for (let row = Math.max(0, rows.first); row < Math.min(layout.rows, rows.end); row++) {
      for (let column = columns.first; column < columns.end; column++) {
        const index = cells[row * layout.columns + column] as number;
        const hex = colours[index]?.hex;
        if (hex === undefined) continue;
        const stamp = this.stamps.stamp(index, hex, width, height);
        ctx.drawImage(stamp, grid.x(column), grid.y(row));
      }
    }
  }
}

interface Span {
  readonly first: number;
  readonly end: number;
}

interface Sight {
  readonly grid: DeviceGrid;
  readonly rows: Span;
  readonly columns: Span;
}

/** Where knots are on the canvas, in device px. */
class DeviceGrid {
  readonly cellWidth: number;
  readonly cellHeight: number;
  private readonly left: number;
  private readonly top: number;

  constructor(
    layout: SheetLayout,
    scroll: { readonly left: number; readonly top: number },
    dpr: number,
  ) {
    this.cellWidth = layout.cellWidth * dpr;
    this.cellHeight = layout.cellHeight * dpr;
    this.left = Math.round((layout.left - scroll.left) * dpr);
    this.top = Math.round((layout.top - scroll.top) * dpr);
  }

  exactX(column: number): number {
    return this.left + column * this.cellWidth;
  }

  exactY(row: number): number {
    return this.top + row * this.cellHeight;
  }

  x(column: number): number {
    return Math.round(this.exactX(column));
  }

  y(row: number): number {
    return Math.round(this.exactY(row));
  }

  boxOf({ row, column, rows, columns }: Area): Box {
    const x = this.x(column);
    const y = this.y(row);
    return { x, y, width: this.x(column + columns) - x, height: this.y(row + rows) - y };
  }
}

/** As four bytes in the order of an `ImageData`, read as one number by a little-endian machine. */
function pixelOf(hex: string): number {
  const value = Number.parseInt(hex.slice(1), 16);
  const [r, g, b] = [value >> 16, (value >> 8) & 255, value & 255];
  return (0xff000000 | (b << 16) | (g << 8) | r) >>> 0;
}

/**
 * Thin between knots, stronger after every fifth column and tenth row, to count by; after more where
 * knots are small.
 */
function paintLines(
  ctx: CanvasRenderingContext2D,
  { layout, dpr }: SheetPicture,
  { grid, rows, columns }: Sight,
): void {
  const top = grid.y(rows.first);
  const height = grid.y(rows.end) - top;
  const left = grid.x(columns.first);
  const width = grid.x(columns.end) - left;
  const everyColumn = [5, 10, 50].find((every) => every * layout.cellWidth >= 20) ?? 100;
  const everyRow = [10, 50, 100].find((every) => every * layout.cellHeight >= 40) ?? 500;
  const counts = (every: number, at: number, of: number): boolean =>
    at === 0 || at === of || at % every === 0;
  const thin = Math.max(1, Math.round(dpr * 0.75));
  for (const strong of [false, true]) {
    if (!strong && layout.cellHeight < LEAST_FOR_LINES) continue;
    // Grey, and clear: seen on dark thread and on light, and not itself a colour of the drawing.
    ctx.fillStyle = strong ? 'rgb(70 84 98 / 85%)' : 'rgb(125 135 145 / 55%)';
    for (let column = columns.first; column <= columns.end; column++) {
      if (counts(everyColumn, column, layout.columns) !== strong) continue;
      ctx.fillRect(grid.x(column) - (thin >> 1), top, thin, height);
    }
    for (let row = rows.first; row <= rows.end; row++) {
      if (counts(everyRow, row, layout.rows) !== strong) continue;
      ctx.fillRect(left, grid.y(row) - (thin >> 1), width, thin);
    }
  }
}

/** What is only to be knotted again is shown as through mist. */
function washRepeat(
  ctx: CanvasRenderingContext2D,
  { layout, inks }: SheetPicture,
  { grid, rows, columns }: Sight,
): void {
  const left = grid.x(columns.first);
  const width = grid.x(columns.end) - left;
  ctx.save();
  ctx.globalAlpha = 0.55;
  ctx.fillStyle = inks.card;
  if (rows.first < 0) ctx.fillRect(left, grid.y(rows.first), width, grid.y(0) - grid.y(rows.first));
  if (rows.end > layout.rows) {
    ctx.fillRect(left, grid.y(layout.rows), width, grid.y(rows.end) - grid.y(layout.rows));
  }
  ctx.restore();
}

function paintAxes(
  ctx: CanvasRenderingContext2D,
  { layout, symmetry, inks, dpr }: SheetPicture,
  grid: DeviceGrid,
): void {
  const { sides, ends, turn } = wholeSymmetry(symmetry);
  if (!sides && !ends && !turn) return;
  const x = Math.round(grid.exactX(layout.columns / 2));
  const y = Math.round(grid.exactY(layout.rows / 2));
  ctx.beginPath();
  if (sides) {
    ctx.moveTo(x, grid.y(0));
    ctx.lineTo(x, grid.y(layout.rows));
  }
  if (ends) {
    ctx.moveTo(grid.x(0), y);
    ctx.lineTo(grid.x(layout.columns), y);
  }
  if (turn) {
    const reach = 7 * dpr;
    ctx.moveTo(x, y - reach);
    ctx.lineTo(x + reach, y);
    ctx.lineTo(x, y + reach);
    ctx.lineTo(x - reach, y);
    ctx.closePath();
  }
  twoTone(ctx, inks, dpr, [6 * dpr, 4 * dpr]);
}

function paintMark(
  ctx: CanvasRenderingContext2D,
  { layout, inks, dpr }: SheetPicture,
  grid: DeviceGrid,
  { grade, row, column }: Mark,
): void {
  const area =
    column === null
      ? { row, column: 0, rows: 1, columns: layout.columns }
      : { row, column, rows: 1, columns: 1 };
  const box = grid.boxOf(area);
  if (box.y + box.height < 0 || box.y > ctx.canvas.height) return;
  drawMark(ctx, grade, box, inks, dpr);
}

function paintSelection(
  ctx: CanvasRenderingContext2D,
  { inks, dpr }: SheetPicture,
  grid: DeviceGrid,
  selection: Area,
): void {
  const { x, y, width, height } = grid.boxOf(selection);
  ctx.beginPath();
  ctx.rect(x, y, width, height);
  twoTone(ctx, inks, dpr, [7 * dpr, 5 * dpr]);
}

/** A dashed line that is seen on any thread, since it is light and dark by turns. */
function twoTone(
  ctx: CanvasRenderingContext2D,
  inks: Inks,
  dpr: number,
  dash: readonly number[],
): void {
  ctx.save();
  ctx.setLineDash([]);
  ctx.strokeStyle = inks.card;
  ctx.lineWidth = 4 * dpr;
  ctx.stroke();
  ctx.setLineDash([...dash]);
  ctx.strokeStyle = inks.ink;
  ctx.lineWidth = 2 * dpr;
  ctx.stroke();
  ctx.restore();
}
