/**
 * A thread in motion packed into text. Its first and last curve are kept to `STEP`, as what a coordinate
 * differs from the straight continuation of the two points before. Of the curves in between, only what
 * they differ from a steady change is kept: as sine waves along the thread and in time (DST-I, which is
 * its own inverse), in steps of `WAVE_STEP`, so that a coordinate is off by about as much at the most. Numbers
 * are written in base 64, with as many digits as they need.
 */
export const STEP = 0.001;
export const WAVE_STEP = 0.006;

/** Steps in which the ends of curves are kept: neighbouring threads go on from there. */
const END_STEP = 0.002;

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Digits of 5 bits, least first; the sixth bit says that another follows. */
class Writer {
  text = '';

  put(value: number): void {
    let rest = value < 0 ? -2 * value - 1 : 2 * value;
    while (rest >= 32) {
      this.text += ALPHABET[(rest & 31) | 32];
      rest = Math.floor(rest / 32);
    }
    this.text += ALPHABET[rest];
  }

  /** A list without its zeros at the end. */
  list(values: readonly number[]): void {
    let n = values.length;
    while (n > 0 && values[n - 1] === 0) n--;
    this.put(n);
    for (let i = 0; i < n; i++) this.put(values[i]!);
  }
}

class Reader {
  private at = 0;
  private readonly digits = new Uint8Array(128);

  constructor(private readonly text: string) {
    for (let i = 0; i < 64; i++) this.digits[ALPHABET.charCodeAt(i)] = i;
  }

  next(): number {
    let value = 0;
    let scale = 1;
    let digit = 32;
    while (digit & 32) {
      digit = this.digits[this.text.charCodeAt(this.at++)]!;
      value += (digit & 31) * scale;
      scale *= 32;
    }
    return value % 2 === 1 ? -(value + 1) / 2 : value / 2;
  }

  list(into: Float64Array, step: number): void {
    const n = this.next();
    into.fill(0);
    for (let i = 0; i < n; i++) into[i] = this.next() * step;
  }
}

/** The sine transform of a list, in place of it. */
function transform(values: Float64Array, sines: Float64Array): void {
  const n = values.length;
  const period = sines.length;
  const out = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const v = values[k]!;
    if (v === 0) continue;
    let at = 0;
    for (let i = 0; i < n; i++) {
      at += k + 1;
      if (at >= period) at -= period;
      out[i] = out[i]! + v * sines[at]!;
    }
  }
  values.set(out);
}

/** One period of the sine for transforms of `n` values, scaled so that they keep squares' sums. */
function sinesFor(n: number): Float64Array {
  const scale = Math.sqrt(2 / (n + 1));
  return Float64Array.from(
    { length: 2 * (n + 1) },
    (_, i) => scale * Math.sin((Math.PI * i) / (n + 1)),
  );
}

/** What one coordinate of inner points of inner curves differs from a steady change, curve by curve. */
type Ripples = readonly Float64Array[];

/** Goes over waves: along the thread within each curve, and in time at each point. */
function transformAll(ripples: Ripples): void {
  const points = ripples[0]?.length ?? 0;
  const along = sinesFor(points);
  const inTime = sinesFor(ripples.length);
  const column = new Float64Array(ripples.length);
  for (const row of ripples) transform(row, along);
  for (let i = 0; i < points; i++) {
    for (let k = 0; k < ripples.length; k++) column[k] = ripples[k]![i]!;
    transform(column, inTime);
    for (let k = 0; k < ripples.length; k++) ripples[k]![i] = column[k]!;
  }
}

/**
 * Curves that a thread goes through, all of as many points (xyz triplets), at least two of each.
 */
export function packMotion(curves: readonly ArrayLike<number>[]): string {
  const out = new Writer();
  const size = curves[0]!.length;
  const ends = [curves[0]!, curves[curves.length - 1]!].map((curve) => {
    const now = Array.from(curve, (v) => Math.round(v / STEP));
    for (let c = 0; c < 3; c++) {
      for (let i = c; i < size; i += 3) out.put(now[i]! - foretold(now, i));
    }
    return now.map((v) => v * STEP);
  });
  const inner = curves.length - 2;
  if (inner < 1) return out.text;
  const sines = sinesFor(inner);
  for (let c = 0; c < 3; c++) {
    const off = (k: number, i: number): number =>
      curves[k + 1]![i]! - steady(ends[0]!, ends[1]!, i, (k + 1) / (inner + 1));
    const rims = [c, size - 3 + c].map((i) => {
      const rim = Float64Array.from({ length: inner }, (_, k) => off(k, i));
      transform(rim, sines);
      const steps = Array.from(rim, (v) => Math.round(v / END_STEP));
      out.list(steps);
      rim.set(steps.map((v) => v * END_STEP));
      transform(rim, sines);
      return rim;
    });
    const points = size / 3 - 2;
    const ripples = Array.from({ length: inner }, (_, k) =>
      Float64Array.from({ length: points }, (_, i) => {
        const lean = steady(rims[0]!, rims[1]!, k, (i + 1) / (points + 1));
        return off(k, (i + 1) * 3 + c) - lean;
      }),
    );
    transformAll(ripples);
    for (let i = 0; i < points; i++) {
      out.list(ripples.map((row) => Math.round(row[i]! / WAVE_STEP)));
    }
  }
  return out.text;
}

/** `count` curves of `size` coordinates each, packed by `packMotion`. */
export function unpackMotion(text: string, size: number, count: number): Float64Array[] {
  const from = new Reader(text);
  const curves = Array.from({ length: count }, () => new Float64Array(size));
  const ends = [curves[0]!, curves[count - 1]!] as const;
  for (const curve of ends) {
    for (let c = 0; c < 3; c++) {
      for (let i = c; i < size; i += 3) curve[i] = from.next() + foretold(curve, i);
    }
    for (let i = 0; i < size; i++) curve[i] = curve[i]! * STEP;
  }
  const inner = count - 2;
  if (inner < 1) return curves;
  const sines = sinesFor(inner);
  const points = size / 3 - 2;
  const column = new Float64Array(inner);
  for (let c = 0; c < 3; c++) {
    const rims = [0, 1].map(() => {
      const rim = new Float64Array(inner);
      from.list(rim, END_STEP);
      transform(rim, sines);
      return rim;
    });
    const ripples = Array.from({ length: inner }, () => new Float64Array(points));
    for (let i = 0; i < points; i++) {
      from.list(column, WAVE_STEP);
      for (let k = 0; k < inner; k++) ripples[k]![i] = column[k]!;
    }
    transformAll(ripples);
    for (let k = 0; k < inner; k++) {
      for (let i = 0; i < points + 2; i++) {
        const rest = i > 0 && i <= points ? ripples[k]![i - 1]! : 0;
        const at = i * 3 + c;
        curves[k + 1]![at] =
          steady(ends[0], ends[1], at, (k + 1) / (inner + 1)) +
          steady(rims[0]!, rims[1]!, k, i / (points + 1)) +
          rest;
      }
    }
  }
  return curves;
}

const steady = (from: ArrayLike<number>, to: ArrayLike<number>, i: number, f: number): number =>
  from[i]! + (to[i]! - from[i]!) * f;

/** The coordinate to be expected after those before it, which are three apart. */
function foretold(curve: ArrayLike<number>, i: number): number {
  if (i < 3) return 0;
  return i < 6 ? curve[i - 3]! : 2 * curve[i - 3]! - curve[i - 6]!;
}
