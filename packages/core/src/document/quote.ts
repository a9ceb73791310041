const LONGEST_QUOTE = 24;
const UNSEEN = /[\p{C}\p{Z}\p{M}]/u;

/** A piece of a file as it may stand in a message: short, on one line, nothing invisible. */
export function quoted(text: string): string {
  const start = [...text.slice(0, 2 * LONGEST_QUOTE)].slice(0, LONGEST_QUOTE).join('');
  const seen = start.replace(/[\p{C}\p{Zl}\p{Zp}]/gu, '\u{fffd}');
  return `"${seen}${start.length < text.length ? '…' : ''}"`;
}

/** One character, with its code where the eye would not tell which it is. */
export function quotedCharacter(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  const name = `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
  if (character === ' ') return 'a space';
  if (character === '\t') return 'a tab';
  if (UNSEEN.test(character)) return `the character ${name}`;
  return code > 0x7e ? `"${character}" (${name})` : `"${character}"`;
}

/** "a, b and c". */
export function listed(words: readonly string[], joint = 'and'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${joint} ${words.at(-1)}`;
}

/** A quoted character at the beginning of a sentence. */
export function sentenceCase(text: string): string {
  return text.replace(/^[at]/, (first) => first.toUpperCase());
}
