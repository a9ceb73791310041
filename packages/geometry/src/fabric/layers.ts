import { BESIDE, type Flat, Routes } from './routes.js';
import type { Seating } from './seating.js';
import type { BackStretches } from './survey.js';

/** Deepest pile of floats that is told apart; more than that lie in the last layer together. */
const MOST_LAYERS = 64;

/**
 * How much worse it is to lie in one place with another than to pass through a place where another
 * passes to the front.
 */
const ALONG = 5;

/** What a conflict costs, in layers; a choice of way that is not the first costs less. */
const CONFLICT = 100;
const DETOUR = 0.4;

/** What it costs to run across a place where any other passes to the front, sooner or later. */
const ACROSS = 30;

/** Stretches nearer than this are in each other's way, in diameters. */
const CLEAR = 0.952;

/** Which ends of a stretch hang loose and do not go through to the front. */
const START = 1;
const END = 2;

/** Where every stretch behind the work lies: its way, and its layer from the work outwards. */
export interface Lying {
  readonly choice: Uint8Array;
  readonly layer: Uint8Array;
  readonly layers: number;
}

/**
 * Lays stretches one after another, each in the layer nearest to the work in which it neither runs
 * into another nor across the place where another goes through to the front. Where there is no such
 * layer it takes the least evil.
 */
export function laid(stretches: BackStretches, routes: Routes, seating: Seating): Lying {
  const choice = new Uint8Array(stretches.count);
  const layer = new Uint8Array(stretches.count);
  const rows = new Map<number, number[]>();
  const seen = new Int32Array(stretches.count).fill(-1);
  const flats = new Map<number, Flat>();
  const costs = new Float64Array(MOST_LAYERS);
  const doors = doorsByRow(stretches, routes, seating.rowHeight);
  let layers = 0;
  let firstRow = 0;
  const tips = new Uint8Array(stretches.count);
  for (let id = 0; id < stretches.count; id++) {
    const start = (stretches.from(id) ?? stretches.to(id)!).row - 1;
    for (; firstRow < start; firstRow++) forget(rows, firstRow, flats, seating.rowHeight);
    tips[id] = (stretches.from(id) === null ? START : 0) | (stretches.to(id) === null ? END : 0);
    let least = Infinity;
    let flat: Flat = [];
    // In the first layer that nothing lies in yet it is as well off as in any beyond.
    const cost = costs.subarray(0, Math.min(layers + 1, MOST_LAYERS));
    for (let c = 0; c < Routes.CHOICES; c++) {
      const tried = routes.flat(id, c);
      cost.fill(0);
      const across = ACROSS * doorsCrossed(tried, id, doors, seating.rowHeight);
      if (foldsBack(tried)) cost.fill(1);
      const [low, high] = rowsOf(tried, seating.rowHeight);
      const mark = id * Routes.CHOICES + c;
      for (let row = low; row <= high; row++) {
        for (const other of rows.get(row) ?? []) {
          if (seen[other] === mark) continue;
          seen[other] = mark;
          weigh(cost, tried, tips[id]!, flats.get(other)!, tips[other]!, layer[other]!);
        }
      }
      for (let k = 0; k < cost.length; k++) {
        const sum = CONFLICT * cost[k]! + across + k + DETOUR * c;
        if (sum >= least) continue;
        least = sum;
        choice[id] = c;
        layer[id] = k;
        flat = tried;
      }
      if (least < 0.5) break;
    }
    layers = Math.max(layers, layer[id]! + 1);
    flats.set(id, flat);
    const [low, high] = rowsOf(flat, seating.rowHeight);
    for (let row = low; row <= high; row++) {
      const list = rows.get(row);
      if (list) list.push(id);
      else rows.set(row, [id]);
    }
  }
  return { choice, layer, layers };
}

/** Places where leads pass through: x, y and the stretch, one after another, by row. */
type Doors = ReadonlyMap<number, readonly number[]>;

function doorsByRow(stretches: BackStretches, routes: Routes, rowHeight: number): Doors {
  const doors = new Map<number, number[]>();
  for (let id = 0; id < stretches.count; id++) {
    for (const point of [routes.fromPoint(id), routes.toPoint(id)]) {
      if (point === null) continue;
      const row = Math.floor(point[1] / rowHeight + 0.5);
      const list = doors.get(row);
      if (list) list.push(point[0], point[1], id);
      else doors.set(row, [point[0], point[1], id]);
    }
  }
  return doors;
}

function doorsCrossed(flat: Flat, id: number, doors: Doors, rowHeight: number): number {
  const [low, high] = rowsOf(flat, rowHeight);
  let left = Infinity;
  let right = -Infinity;
  for (let i = 0; i < flat.length; i += 2) {
    left = Math.min(left, flat[i]! - 1);
    right = Math.max(right, flat[i]! + 1);
  }
  let crossed = 0;
  for (let row = low; row <= high; row++) {
    const list = doors.get(row) ?? [];
    for (let i = 0; i < list.length; i += 3) {
      const x = list[i]!;
      if (x < left || x > right || list[i + 2] === id) continue;
      if (near([x, list[i + 1]!], flat)) crossed++;
    }
  }
  return crossed;
}

/** Stretches are laid in the order of their rows, so what ends above is never met again. */
function forget(
  rows: Map<number, number[]>,
  row: number,
  flats: Map<number, Flat>,
  rowHeight: number,
): void {
  for (const id of rows.get(row) ?? []) {
    if (rowsOf(flats.get(id)!, rowHeight)[1] === row) flats.delete(id);
  }
  rows.delete(row);
}

/** First and last row whose height a way shares, so much as touching counted. */
export function rowsOf(flat: Flat, rowHeight: number): readonly [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 1; i < flat.length; i += 2) {
    low = Math.min(low, flat[i]!);
    high = Math.max(high, flat[i]!);
  }
  return [
    Math.floor((low - BESIDE / 2) / rowHeight + 0.5),
    Math.floor((high + BESIDE / 2) / rowHeight + 0.5),
  ];
}

/** Adds to each layer what putting `mine` there would cost because of one stretch already laid. */
function weigh(
  cost: Float64Array,
  mine: Flat,
  myTips: number,
  other: Flat,
  otherTips: number,
  at: number,
): void {
  if (apart(mine, other)) return;
  if (near(mine, other)) cost[at] = cost[at]! + ALONG;
  // Its ends pass through every layer above its own, and mine through every one above mine.
  if (passes(other, otherTips, mine)) for (let k = 0; k < at; k++) cost[k] = cost[k]! + 1;
  if (passes(mine, myTips, other)) {
    for (let k = at + 1; k < cost.length; k++) cost[k] = cost[k]! + 1;
  }
}

/** Whether an end of `through`, where it goes to the front, is in the way of `along`. */
const passes = (through: Flat, tips: number, along: Flat): boolean =>
  ((tips & START) === 0 && near(endOf(through, 0), along)) ||
  ((tips & END) === 0 && near(endOf(through, through.length - 2), along));

/** Whether a way comes back to one of its own ends. */
const foldsBack = (flat: Flat): boolean =>
  (flat.length > 6 && near(endOf(flat, 0), flat.slice(2))) ||
  (flat.length > 6 && near(endOf(flat, flat.length - 2), flat.slice(0, -2)));

const endOf = (flat: Flat, at: number): Flat => [flat[at]!, flat[at + 1]!];

function apart(a: Flat, b: Flat): boolean {
  for (let c = 0; c < 2; c++) {
    let aLow = Infinity;
    let aHigh = -Infinity;
    let bLow = Infinity;
    let bHigh = -Infinity;
    for (let i = c; i < a.length; i += 2) {
      aLow = Math.min(aLow, a[i]!);
      aHigh = Math.max(aHigh, a[i]!);
    }
    for (let i = c; i < b.length; i += 2) {
      bLow = Math.min(bLow, b[i]!);
      bHigh = Math.max(bHigh, b[i]!);
    }
    if (aLow > bHigh + BESIDE || bLow > aHigh + BESIDE) return true;
  }
  return false;
}

/** Whether two flat polylines, or a point and one, come nearer than touching. */
function near(a: Flat, b: Flat): boolean {
  const lastA = Math.max(a.length - 2, 2);
  const lastB = Math.max(b.length - 2, 2);
  for (let i = 0; i < lastA; i += 2) {
    const i2 = a.length > 2 ? i + 2 : i;
    for (let j = 0; j < lastB; j += 2) {
      const j2 = b.length > 2 ? j + 2 : j;
      if (nearPieces(a, i, i2, b, j, j2)) return true;
    }
  }
  return false;
}

function nearPieces(a: Flat, i: number, i2: number, b: Flat, j: number, j2: number): boolean {
  if (gapOf(a[i]!, a[i2]!, b[j]!, b[j2]!) > CLEAR) return false;
  if (gapOf(a[i + 1]!, a[i2 + 1]!, b[j + 1]!, b[j2 + 1]!) > CLEAR) return false;
  const limit = CLEAR * CLEAR;
  return (
    offPiece(a[i]!, a[i + 1]!, b, j, j2) < limit ||
    offPiece(a[i2]!, a[i2 + 1]!, b, j, j2) < limit ||
    offPiece(b[j]!, b[j + 1]!, a, i, i2) < limit ||
    offPiece(b[j2]!, b[j2 + 1]!, a, i, i2) < limit ||
    crossing(a, i, i2, b, j, j2)
  );
}

/** Distance of two ranges in one direction. */
const gapOf = (a: number, a2: number, b: number, b2: number): number =>
  Math.max(Math.min(a, a2) - Math.max(b, b2), Math.min(b, b2) - Math.max(a, a2));

/** Squared distance of a point from a piece. */
function offPiece(x: number, y: number, p: Flat, i: number, i2: number): number {
  const ux = p[i2]! - p[i]!;
  const uy = p[i2 + 1]! - p[i + 1]!;
  const wx = x - p[i]!;
  const wy = y - p[i + 1]!;
  const square = ux * ux + uy * uy;
  const f = square > 0 ? Math.min(Math.max((wx * ux + wy * uy) / square, 0), 1) : 0;
  return (wx - ux * f) ** 2 + (wy - uy * f) ** 2;
}

function crossing(a: Flat, i: number, i2: number, b: Flat, j: number, j2: number): boolean {
  const side = (p: Flat, o: number, q: number, x: number, y: number) =>
    (p[q]! - p[o]!) * (y - p[o + 1]!) - (p[q + 1]! - p[o + 1]!) * (x - p[o]!);
  return (
    side(a, i, i2, b[j]!, b[j + 1]!) * side(a, i, i2, b[j2]!, b[j2 + 1]!) < 0 &&
    side(b, j, j2, a[i]!, a[i + 1]!) * side(b, j, j2, a[i2]!, a[i2 + 1]!) < 0
  );
}
