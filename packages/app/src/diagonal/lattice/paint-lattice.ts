import { ANY_COLOUR, BARE, knotIndex, knotsInRow, slotOfPlace } from '@halfhitch/core';
import type { Symmetry } from '../../draw/edit/symmetry.js';
import { type Inks, isDark } from '../../draw/sheet/inks.js';
import { isNumbered, numberEvery } from '../../draw/sheet/layout.js';
import { LEAST_FOR_SIGN, type SignStamps } from '../../draw/sheet/signs.js';
import { type LatticeLayout, NUMBERS } from './layout.js';
import type { LatticeLook, LatticeMark } from './look.js';
import { addLozenge, addWay } from './lozenge.js';
import { paintMark } from './paint-mark.js';

/** All that a lattice sheet shows at a moment; px, on a context that is scaled to them. */
export interface LatticePicture {
  readonly layout: LatticeLayout;
  readonly look: LatticeLook;
  readonly scroll: { readonly left: number; readonly top: number };
  readonly view: { readonly width: number; readonly height: number };
  /** Device px in a px. */
  readonly dpr: number;
  readonly signs: boolean;
  readonly symmetry: Symmetry;
  readonly marks: readonly LatticeMark[];
  /** Knots from here on, in the order of knotting, are veiled; null for none. */
  readonly veiledFrom: number | null;
  readonly here: { readonly row: number };
  readonly inks: Inks;
}

interface Span {
  readonly first: number;
  readonly end: number;
}

/** How much of its room a knot takes: a little ground is left between them. */
const FILLING = 0.93;

/** Smaller knots are plain bricks, px from string to string. */
const LEAST_FOR_SHAPE = 5;
const LEAST_FOR_WAY = 9;

/** Paints what is in sight of a lattice: the strings as they hang, and the knots on them. */
export function paintLattice(
  ctx: CanvasRenderingContext2D,
  picture: LatticePicture,
  stamps: SignStamps,
): void {
  const { layout, scroll, view, dpr } = picture;
  ctx.setTransform(dpr, 0, 0, dpr, 0, 0);
  ctx.clearRect(0, 0, view.width, view.height);
  ctx.translate(-scroll.left, -scroll.top);
  const rows = layout.rowsIn(scroll.top, scroll.top + view.height);
  const slots = layout.slotsIn(scroll.left, scroll.left + view.width);
  if (layout.pitch >= LEAST_FOR_SHAPE) paintStrings(ctx, picture, rows, slots);
  const knots = knotsIn(picture, rows, slots);
  paintKnots(ctx, picture, knots);
  if (picture.look.kinds !== null && layout.pitch >= LEAST_FOR_WAY) paintWays(ctx, picture, knots);
  if (picture.signs) paintSigns(ctx, picture, knots, stamps);
  paintVeil(ctx, picture, knots);
  paintAxes(ctx, picture);
  for (const mark of picture.marks) {
    if (mark.row >= rows.first && mark.row < rows.end) paintMark(ctx, layout, mark, picture.inks);
  }
  ctx.setTransform(dpr, 0, 0, dpr, 0, 0);
  paintNumbers(ctx, picture, rows, slots);
}

interface Knot {
  readonly x: number;
  readonly y: number;
  readonly index: number;
  readonly cell: number;
}

function knotsIn({ layout, look }: LatticePicture, rows: Span, slots: Span): Knot[] {
  const { lattice } = look;
  const knots: Knot[] = [];
  for (let row = rows.first; row < rows.end; row++) {
    const from = slotOfPlace(lattice, row, 0);
    const first = Math.max(0, Math.floor((slots.first - from) / 2) - 1);
    const end = Math.min(knotsInRow(lattice, row), Math.ceil((slots.end - from) / 2) + 1);
    for (let place = first; place < end; place++) {
      const index = knotIndex(lattice, row, place);
      const cell = look.cells[index] ?? BARE;
      const x = layout.left + (from + 2 * place + 1) * layout.pitch;
      knots.push({ x, y: layout.y(row), index, cell });
    }
  }
  return knots;
}

/** The strings hang straight from row to row; knots lie over them. */
function paintStrings(
  ctx: CanvasRenderingContext2D,
  { layout, look, inks }: LatticePicture,
  rows: Span,
  slots: Span,
): void {
  const { strings, lattice, colours } = look;
  const first = rows.first === 0 ? -2 : rows.first;
  const end = rows.end === lattice.rows ? lattice.rows + 2 : rows.end;
  ctx.lineCap = 'butt';
  const width = Math.max(2, layout.pitch * 0.34);
  const hem = Math.min(1, width / 5);
  for (let slot = slots.first; slot < slots.end; slot++) {
    const x = layout.x(slot);
    let from = first;
    for (let row = first; row < end; row++) {
      const now = colourOf(look, row, slot);
      if (row + 1 < end && colourOf(look, row + 1, slot) === now) continue;
      const top = layout.y(from) - layout.rise / 2;
      const high = layout.y(row) + layout.rise / 2 - top;
      // A line around it: thread may have the colour of the paper.
      ctx.fillStyle = inks.soft;
      ctx.fillRect(x - width / 2 - hem, top, width + 2 * hem, high);
      ctx.fillStyle = strings === null ? inks.ground : (colours[now]?.hex ?? inks.ground);
      ctx.fillRect(x - width / 2, top, width, high);
      from = row + 1;
    }
  }
}

/** Colour of the string in a slot at a row, those above the first and below the last too. */
function colourOf({ strings, lattice }: LatticeLook, row: number, slot: number): number {
  if (strings === null) return 0;
  const at = Math.max(0, Math.min(lattice.rows, row));
  return strings.start[strings.order[at * lattice.strings + slot] ?? 0] ?? 0;
}

function paintKnots(
  ctx: CanvasRenderingContext2D,
  { layout, look, inks, dpr }: LatticePicture,
  knots: readonly Knot[],
): void {
  const shaped = layout.pitch >= LEAST_FOR_SHAPE;
  const paths = new Map<number, Path2D>();
  const [wide, high] = [layout.pitch * FILLING, layout.rise * FILLING];
  for (const { x, y, cell } of knots) {
    if (cell === BARE) continue;
    let path = paths.get(cell);
    if (path === undefined) {
      path = new Path2D();
      paths.set(cell, path);
    }
    if (shaped) addLozenge(path, x, y, wide, high);
    else path.rect(x - layout.pitch, y - layout.rise / 2, 2 * layout.pitch, layout.rise);
  }
  for (const [cell, path] of paths) {
    const any = cell === ANY_COLOUR;
    ctx.fillStyle = any ? inks.card : (look.colours[cell]?.hex ?? inks.card);
    ctx.fill(path);
    if (!shaped) continue;
    ctx.lineWidth = Math.max(1 / dpr, Math.min(1.5, layout.pitch / 14));
    ctx.strokeStyle = inks.soft;
    ctx.setLineDash(any ? [2, 2.5] : []);
    ctx.stroke(path);
  }
  ctx.setLineDash([]);
}

/** The way of the string that ties, light on dark thread and dark on light. */
function paintWays(
  ctx: CanvasRenderingContext2D,
  { layout, look }: LatticePicture,
  knots: readonly Knot[],
): void {
  const { kinds, colours } = look;
  if (kinds === null) return;
  const [light, dark] = [new Path2D(), new Path2D()];
  for (const { x, y, index, cell } of knots) {
    const kind = kinds[index] as number;
    if (kind > 3 || cell === BARE) continue;
    const path = isDark(colours[cell]?.hex ?? '#ffffff') ? light : dark;
    addWay(path, kind, x, y, layout.pitch, layout.rise);
  }
  ctx.lineCap = 'round';
  ctx.lineJoin = 'round';
  ctx.lineWidth = Math.max(1.6, layout.pitch * 0.16);
  ctx.strokeStyle = 'rgb(255 255 255 / 88%)';
  ctx.stroke(light);
  ctx.strokeStyle = 'rgb(16 26 36 / 82%)';
  ctx.stroke(dark);
}

function paintSigns(
  ctx: CanvasRenderingContext2D,
  { layout, look, dpr }: LatticePicture,
  knots: readonly Knot[],
  stamps: SignStamps,
): void {
  const [wide, high] = [layout.pitch * 0.86, layout.rise * 0.86];
  const [deviceWide, deviceHigh] = [Math.floor(wide * dpr), Math.floor(high * dpr)];
  if (Math.min(deviceWide, deviceHigh) < LEAST_FOR_SIGN) return;
  for (const { x, y, cell } of knots) {
    const hex = look.colours[cell]?.hex;
    if (hex === undefined) continue;
    const stamp = stamps.stamp(cell, hex, deviceWide, deviceHigh);
    ctx.drawImage(stamp, x - wide / 2, y - high / 2, wide, high);
  }
}

function paintVeil(
  ctx: CanvasRenderingContext2D,
  { layout, veiledFrom, inks }: LatticePicture,
  knots: readonly Knot[],
): void {
  if (veiledFrom === null) return;
  const path = new Path2D();
  for (const { x, y, index, cell } of knots) {
    if (index >= veiledFrom && cell !== BARE) addLozenge(path, x, y, layout.pitch, layout.rise);
  }
  ctx.save();
  ctx.globalAlpha = 0.68;
  ctx.fillStyle = inks.card;
  ctx.fill(path);
  ctx.restore();
}

function paintAxes(
  ctx: CanvasRenderingContext2D,
  { layout, symmetry, inks }: LatticePicture,
): void {
  const { sides, ends, turn } = symmetry;
  if (!sides && !ends && !turn) return;
  const { lattice, pitch, rise } = layout;
  const x = layout.left + (lattice.strings * pitch) / 2;
  const y = layout.y((lattice.rows - 1) / 2);
  ctx.beginPath();
  if (sides) {
    ctx.moveTo(x, layout.y(0) - rise);
    ctx.lineTo(x, layout.y(lattice.rows));
  }
  if (ends) {
    ctx.moveTo(layout.left, y);
    ctx.lineTo(layout.left + lattice.strings * pitch, y);
  }
  if (turn) {
    ctx.moveTo(x, y - 7);
    ctx.lineTo(x + 7, y);
    ctx.lineTo(x, y + 7);
    ctx.lineTo(x - 7, y);
    ctx.closePath();
  }
  ctx.strokeStyle = inks.card;
  ctx.lineWidth = 4;
  ctx.stroke();
  ctx.setLineDash([6, 4]);
  ctx.strokeStyle = inks.ink;
  ctx.lineWidth = 2;
  ctx.stroke();
  ctx.setLineDash([]);
}

/** Rows at the side, slots above; they stay in sight. */
function paintNumbers(
  ctx: CanvasRenderingContext2D,
  { layout, scroll, view, inks, here }: LatticePicture,
  rows: Span,
  slots: Span,
): void {
  const { gutter } = layout;
  const side = Math.max(0, Math.min(layout.left - gutter - scroll.left, view.width));
  ctx.fillStyle = inks.card;
  ctx.fillRect(side, 0, gutter - 4, view.height);
  ctx.fillRect(0, 0, view.width, NUMBERS);
  ctx.font = '12px system-ui, sans-serif';
  ctx.textBaseline = 'middle';
  ctx.textAlign = 'right';
  const everyRow = numberEvery(layout.rise, 13);
  for (let row = rows.first; row < rows.end; row++) {
    const current = row === here.row;
    if (!current && (!isNumbered(row, everyRow) || Math.abs(row - here.row) < 13 / layout.rise)) {
      continue;
    }
    const y = layout.y(row) - scroll.top;
    if (y < NUMBERS) continue;
    ctx.fillStyle = current ? inks.ink : inks.soft;
    ctx.fillText(String(row + 1), side + gutter - 8, y);
  }
  ctx.textAlign = 'center';
  ctx.fillStyle = inks.soft;
  const everySlot = numberEvery(layout.pitch, 20);
  for (let slot = slots.first; slot < slots.end; slot++) {
    if (!isNumbered(slot, everySlot)) continue;
    const x = layout.x(slot) - scroll.left;
    if (x > side + gutter) ctx.fillText(String(slot + 1), x, NUMBERS / 2);
  }
}
