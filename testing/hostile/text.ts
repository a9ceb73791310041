import fc from 'fast-check';
import { anyHostilePiece } from './pieces.js';

/** Words, numbers and every other character by itself; a text is its tokens put together. */
function tokensOf(text: string): string[] {
  return text.match(/[\p{L}\p{N}_]+|[ \t]+|./gsu) ?? [];
}

const anyChange = fc.record({
  what: fc.constantFrom(
    'cut' as const,
    'drop' as const,
    'double' as const,
    'swap' as const,
    'replace' as const,
    'insert' as const,
    'repeat' as const,
    'drop-line' as const,
    'swap-lines' as const,
    'repeat-line' as const,
    'repeat-all' as const,
  ),
  at: fc.nat(),
  other: fc.nat(),
  times: fc.constantFrom(2, 20, 400),
  piece: anyHostilePiece,
});

type Change = typeof anyChange extends fc.Arbitrary<infer T> ? T : never;

/** Longer than this no text is made, so that a run stays small. */
const LONGEST = 40_000;

/**
 * Texts of a grammar with one to four of their words or lines dropped, doubled, swapped, repeated or
 * replaced by something hostile: most are nearly right, so they get deep into a reader.
 */
export function hostileText(valid: fc.Arbitrary<string>): fc.Arbitrary<string> {
  return fc
    .tuple(valid, fc.array(anyChange, { minLength: 1, maxLength: 4 }))
    .map(([text, changes]) => changes.reduce(changed, text));
}

function changed(text: string, { what, at, other, times, piece }: Change): string {
  switch (what) {
    case 'repeat-all':
      return repeated(text, times);
    case 'drop-line':
    case 'swap-lines':
    case 'repeat-line':
      return inParts(text.split(/(?<=\n)/u), what, at, other, times, piece);
    default:
      return inParts(tokensOf(text), what, at, other, times, piece);
  }
}

function inParts(
  parts: readonly string[],
  what: Change['what'],
  at: number,
  other: number,
  times: number,
  piece: string,
): string {
  const i = at % Math.max(1, parts.length);
  const k = other % Math.max(1, parts.length);
  const part = parts[i] ?? '';
  const put = (...news: string[]) =>
    [...parts.slice(0, i), ...news, ...parts.slice(i + 1)].join('');
  switch (what) {
    case 'cut':
      return parts.slice(0, i).join('');
    case 'drop':
    case 'drop-line':
      return put();
    case 'double':
      return put(part, part);
    case 'replace':
      return put(piece);
    case 'insert':
      return put(piece, part);
    case 'swap':
    case 'swap-lines': {
      const swapped = [...parts];
      swapped[i] = parts[k] ?? '';
      swapped[k] = part;
      return swapped.join('');
    }
    default:
      return put(repeated(part, times));
  }
}

function repeated(text: string, times: number): string {
  return text.repeat(Math.max(1, Math.min(times, Math.floor(LONGEST / Math.max(1, text.length)))));
}
