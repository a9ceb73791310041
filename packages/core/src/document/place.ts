/** Line and column of a place in a text, as people count. */
export function placeIn(text: string, at: number): { line: number; column: number } {
  let line = 1;
  let start = 0;
  for (let i = 0; i < at; i++) {
    const code = text.charCodeAt(i);
    if (code === 0x0a || (code === 0x0d && text.charCodeAt(i + 1) !== 0x0a)) {
      line++;
      start = i + 1;
    }
  }
  let column = 1;
  for (let i = start; i < at; i++) {
    const code = text.charCodeAt(i);
    // A pair of surrogates is one character.
    if (code < 0xdc00 || code > 0xdfff) column++;
  }
  return { line, column };
}
