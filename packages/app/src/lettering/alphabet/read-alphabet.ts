/** A letter, sign or mark as it is drawn. */
export interface Glyph {
  /** `#` where there is ink and `.` where there is none, all equally long, from the top. */
  readonly rows: readonly string[];
  readonly width: number;
  /** How many rows the first one is above the line that letters stand on; 1 stands right on it. */
  readonly top: number;
}

export interface AlphabetMetrics {
  /** Height of capitals, in knots. */
  readonly capital: number;
  /** Height of small letters without what rises above or goes below. */
  readonly small: number;
}

/** Marks over or under letters, by what Unicode combines with a letter. */
export const MARKS = {
  grave: '\u0300',
  acute: '\u0301',
  circumflex: '\u0302',
  tilde: '\u0303',
  macron: '\u0304',
  dot: '\u0307',
  diaeresis: '\u0308',
  ring: '\u030a',
  caron: '\u030c',
  cedilla: '\u0327',
} as const;

export interface Alphabet extends AlphabetMetrics {
  /** By character. */
  readonly glyphs: ReadonlyMap<string, Glyph>;
  /** Each mark in one or more widths, by the combining character. Their tops mean nothing. */
  readonly marks: ReadonlyMap<string, readonly Glyph[]>;
}

/**
 * Reads a drawn alphabet: blocks of glyphs side by side. A block begins with `@` and the rows that
 * its first is above the line; then come the characters, and below them their rows. Glyphs that go
 * below the line have more rows than that.
 *
 * @throws Error when it is drawn badly: a slip of ours, found by the tests
 */
export function readAlphabet(metrics: AlphabetMetrics, letters: string, marks: string): Alphabet {
  const glyphs = new Map<string, Glyph>();
  for (const { label, glyph } of readBlocks(letters)) {
    if (glyphs.has(label)) throw new Error(`${label} is drawn twice.`);
    glyphs.set(label, glyph);
  }
  const drawnMarks = new Map<string, Glyph[]>();
  for (const { label, glyph } of readBlocks(marks)) {
    const mark = MARKS[label as keyof typeof MARKS];
    if (mark === undefined) throw new Error(`There is no mark ${label}.`);
    drawnMarks.set(mark, [...(drawnMarks.get(mark) ?? []), glyph]);
  }
  return { ...metrics, glyphs, marks: drawnMarks };
}

function* readBlocks(drawn: string): Generator<{ label: string; glyph: Glyph }> {
  const lines = drawn.split('\n').map((line) => line.trim());
  const starts = [...lines.keys()].filter((at) => lines[at]?.startsWith('@'));
  for (const [i, start] of starts.entries()) {
    const block = lines
      .slice(start + 1, starts[i + 1] ?? lines.length)
      .filter((line) => line !== '');
    const [labels, ...rows] = block.map((line) => line.split(/\s+/));
    const top = Number(lines[start]?.slice(1));
    for (const [at, label] of (labels ?? []).entries()) {
      const drawnRows = rows.map((row) => row[at] ?? '');
      const width = drawnRows[0]?.length ?? 0;
      if (width === 0 || drawnRows.some((row) => row.length !== width || /[^.#]/.test(row))) {
        throw new Error(`${label} is drawn badly.`);
      }
      yield { label, glyph: { rows: drawnRows, width, top } };
    }
  }
}
