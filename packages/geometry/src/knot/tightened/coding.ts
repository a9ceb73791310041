/**
 * Curves packed into text: coordinates in steps of `STEP`, each as its change from the curve before
 * (the first curve: from the point before), as variable-length numbers in base 64.
 */
export const STEP = 0.001;

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Digits of 5 bits, least first; the sixth bit says that another follows. */
export function pack(curves: readonly ArrayLike<number>[]): string {
  let text = '';
  let before: readonly number[] = [];
  curves.forEach((curve, k) => {
    const now = Array.from(curve, (v) => Math.round(v / STEP));
    now.forEach((v, i) => {
      const delta = k > 0 ? v - before[i]! : i >= 3 ? v - now[i - 3]! : v;
      let rest = delta < 0 ? -2 * delta - 1 : 2 * delta;
      while (rest >= 32) {
        text += ALPHABET[(rest & 31) | 32];
        rest = Math.floor(rest / 32);
      }
      text += ALPHABET[rest];
    });
    before = now;
  });
  return text;
}

/** Curves of `size` coordinates each, packed by `pack`. */
export function unpack(text: string, size: number): Float64Array[] {
  const digits = new Uint8Array(128);
  for (let i = 0; i < 64; i++) digits[ALPHABET.charCodeAt(i)] = i;
  const curves: Float64Array[] = [];
  let at = 0;
  while (at < text.length) {
    const curve = new Float64Array(size);
    const before = curves[curves.length - 1];
    for (let i = 0; i < size; i++) {
      let value = 0;
      let scale = 1;
      let digit = 32;
      while (digit & 32) {
        digit = digits[text.charCodeAt(at++)]!;
        value += (digit & 31) * scale;
        scale *= 32;
      }
      const delta = (value % 2 === 1 ? -(value + 1) / 2 : value / 2) * STEP;
      curve[i] = delta + (before ? before[i]! : i >= 3 ? curve[i - 3]! : 0);
    }
    curves.push(curve);
  }
  return curves;
}
