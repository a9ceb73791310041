/**
 * Curves packed into text: coordinates in steps of `STEP`, first x of all points, then y, then z. What a
 * coordinate changes from the curve before (the first curve: what it is) goes on evenly along the curve,
 * as the change at the two points before foretells; only what differs from that is written, as
 * variable-length numbers in base 64.
 */
export const STEP = 0.001;

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** The change to be expected at a coordinate: places of a coordinate are three apart. */
function foretold(changes: ArrayLike<number>, i: number): number {
  if (i < 3) return 0;
  return i < 6 ? changes[i - 3]! : 2 * changes[i - 3]! - changes[i - 6]!;
}

/** Digits of 5 bits, least first; the sixth bit says that another follows. */
export function pack(curves: readonly ArrayLike<number>[]): string {
  let text = '';
  let before: readonly number[] | undefined;
  for (const curve of curves) {
    const now = Array.from(curve, (v) => Math.round(v / STEP));
    const changes = now.map((v, i) => v - (before?.[i] ?? 0));
    for (let c = 0; c < 3; c++) {
      for (let i = c; i < now.length; i += 3) {
        const off = changes[i]! - foretold(changes, i);
        let rest = off < 0 ? -2 * off - 1 : 2 * off;
        while (rest >= 32) {
          text += ALPHABET[(rest & 31) | 32];
          rest = Math.floor(rest / 32);
        }
        text += ALPHABET[rest];
      }
    }
    before = now;
  }
  return text;
}

/** Curves of `size` coordinates each, packed by `pack`. */
export function unpack(text: string, size: number): Float64Array[] {
  const digits = new Uint8Array(128);
  for (let i = 0; i < 64; i++) digits[ALPHABET.charCodeAt(i)] = i;
  const curves: Float64Array[] = [];
  const now = new Int32Array(size);
  const changes = new Int32Array(size);
  let at = 0;
  while (at < text.length) {
    for (let c = 0; c < 3; c++) {
      for (let i = c; i < size; i += 3) {
        let value = 0;
        let scale = 1;
        let digit = 32;
        while (digit & 32) {
          digit = digits[text.charCodeAt(at++)]!;
          value += (digit & 31) * scale;
          scale *= 32;
        }
        changes[i] = (value % 2 === 1 ? -(value + 1) / 2 : value / 2) + foretold(changes, i);
        now[i] = now[i]! + changes[i]!;
      }
    }
    curves.push(Float64Array.from(now, (v) => v * STEP));
  }
  return curves;
}
