import { isDark } from './inks.js';

type Line = readonly [number, number, number, number];

// Always several lines: a single slanting one is how a knot is marked in written rows.
const RISING: readonly Line[] = [
  [0, 0.5, 0.5, 0],
  [0, 1, 1, 0],
  [0.5, 1, 1, 0.5],
];
const FALLING = RISING.map(([x, y, toX, toY]): Line => [1 - x, y, 1 - toX, toY]);
const upright = (...places: readonly number[]): Line[] => places.map((x) => [x, 0, x, 1]);
const level = (...places: readonly number[]): Line[] => places.map((y) => [0, y, 1, y]);
const BOX: readonly Line[] = [
  [0.28, 0.28, 0.72, 0.28],
  [0.72, 0.28, 0.72, 0.72],
  [0.72, 0.72, 0.28, 0.72],
  [0.28, 0.72, 0.28, 0.28],
];
const WAVE: readonly Line[] = [0.3, 0.75].flatMap((y): Line[] => [
  [0, y + 0.12, 0.5, y - 0.12],
  [0.5, y - 0.12, 1, y + 0.12],
]);

/**
 * Signs that stand for colours beside the colours themselves, by their place in the legend: lines
 * in a box of 1 x 1. After the last they begin anew, with the number of the colour beside them.
 */
const SIGNS: readonly (readonly Line[])[] = [
  [],
  RISING,
  upright(0.25, 0.75),
  level(0.25, 0.75),
  FALLING,
  BOX,
  [...RISING, ...FALLING],
  [...upright(0.5), ...level(0.5)],
  WAVE,
  upright(0.2, 0.4, 0.6, 0.8),
  level(0.2, 0.4, 0.6, 0.8),
  [...upright(0.25, 0.75), ...level(0.25, 0.75)],
];

/** Smaller knots show no sign, device px. */
export const LEAST_FOR_SIGN = 9;
const LEAST_FOR_NUMBER = 20;

/** Draws the sign of a colour into a box, in black or white, whichever shows better. */
export function drawSign(
  ctx: CanvasRenderingContext2D,
  index: number,
  hex: string,
  x: number,
  y: number,
  width: number,
  height: number,
): void {
  const strokes = SIGNS[index % SIGNS.length] ?? [];
  const ink = isDark(hex) ? '#ffffff' : '#000000';
  ctx.strokeStyle = ink;
  ctx.lineWidth = Math.max(1, Math.round(Math.min(width, height) / 16));
  ctx.beginPath();
  for (const [fromX, fromY, toX, toY] of strokes) {
    ctx.moveTo(x + fromX * width, y + fromY * height);
    ctx.lineTo(x + toX * width, y + toY * height);
  }
  ctx.stroke();
  if (index < SIGNS.length || Math.min(width, height) < LEAST_FOR_NUMBER) return;
  const text = String(index + 1);
  const size = Math.round(Math.min(width, height) * 0.5);
  ctx.font = `600 ${size}px system-ui, sans-serif`;
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  ctx.lineWidth = size / 3;
  ctx.strokeStyle = hex;
  ctx.strokeText(text, x + width / 2, y + height / 2);
  ctx.fillStyle = ink;
  ctx.fillText(text, x + width / 2, y + height / 2);
}

/** Signs drawn once for a size of knot and used for every knot of their colour. */
export class SignStamps {
  private stamps = new Map<string, HTMLCanvasElement>();
  private size = '';

  stamp(index: number, hex: string, width: number, height: number): HTMLCanvasElement {
    const size = `${width} ${height}`;
    if (size !== this.size) {
      this.stamps = new Map();
      this.size = size;
    }
    const key = `${index} ${hex}`;
    const known = this.stamps.get(key);
    if (known !== undefined) return known;
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = height;
    const ctx = canvas.getContext('2d');
    if (ctx !== null) drawSign(ctx, index, hex, 0, 0, width, height);
    this.stamps.set(key, canvas);
    return canvas;
  }
}
