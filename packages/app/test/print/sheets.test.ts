import { readFileSync } from 'node:fs';
import { type Chart, readChart } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { KEYED, layChart, MOST_BY_HATCH, ROOM } from '../../src/print/chart-layout.js';
import { mostRows, SHEET_LIMITS, type SheetChoice, wrongWith } from '../../src/print/choice.js';
import { markingsOf } from '../../src/print/hatches.js';
import { PAPERS, usualPaper } from '../../src/print/paper.js';
import { withoutRepeats, withRepeats } from '../../src/print/repeated-steps.js';
import { written } from '../../src/print/written.js';

const OTTER: Chart = readChart(
  readFileSync(new URL('../../../../examples/otter.json', import.meta.url)),
  'otter.json',
).chart;

describe('a chart on paper', () => {
  test('is cut into pages that hold every cell once, whole rows, and no more than fits', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.integer({ min: 0, max: 50 }),
        fc.integer({ min: 1, max: 120 }),
        fc.integer({ min: 1, max: 64 }),
        fc.constantFrom(...Object.values(PAPERS)),
        (columns, first, many, colours, paper) => {
          const end = first + many;
          const layout = layChart({ first, end }, columns, colours, paper);
          const seen = new Uint8Array(many * columns);
          const { width, height } = layout.cell;
          const head =
            ROOM.title +
            Math.ceil(colours / layout.legendPerLine) * ROOM.legendLine +
            ROOM.marks +
            ROOM.top;
          for (const { firstRow, endRow, firstColumn, endColumn } of layout.parts) {
            expect(endRow).toBeGreaterThan(firstRow);
            for (let row = firstRow; row < endRow; row++) {
              for (let column = firstColumn; column < endColumn; column++) {
                const at = (row - first) * columns + column;
                seen[at] = (seen[at] as number) + 1;
              }
            }
            const wide =
              ROOM.words + 2 * ROOM.mark + ROOM.number + (endColumn - firstColumn) * width;
            expect(wide).toBeLessThanOrEqual(paper.width + 1e-9);
            expect(head + (endRow - firstRow) * height).toBeLessThanOrEqual(paper.height);
          }
          expect(seen.every((times) => times === 1)).toBe(true);
          expect(layout.legendPerLine).toBe(4);
          // More colours than hatches are told apart by their keys alone.
          if (colours > MOST_BY_HATCH) expect(layout.keyed).toBe(true);
          expect(layout.keyed).toBe(width >= KEYED);
        },
      ),
    );
  });

  test('has hatches that differ, darker ones for darker threads', () => {
    const hexes = ['#101418', '#f4f1e8', '#1f6fb2', '#d9642a', '#8a8f94', '#4d8b5a'];
    const chart: Chart = {
      name: '',
      rows: 1,
      columns: hexes.length,
      colours: hexes.map((hex, i) => ({ key: String(i), hex, name: '' })),
      cells: Uint8Array.from(hexes, (_, i) => i),
    };
    const markings = markingsOf(chart);
    expect(new Set(markings.map(({ hatch }) => hatch)).size).toBe(hexes.length);
    const [black, chalk] = markings;
    expect(black?.solid).toBe(true);
    expect(chalk?.hatch).toBe(0);
    expect(markings.map(({ colour }) => colour)).toEqual([0, 1, 2, 3, 4, 5]);
  });

  test('marks only colours that are drawn', () => {
    expect(
      markingsOf({ ...OTTER, cells: new Uint8Array(OTTER.cells.length).fill(2) }),
    ).toHaveLength(1);
  });
});

describe('written rows', () => {
  const rows = written(OTTER, { edge: 'straight', start: 'left' }, { first: 0, end: 24 }).rows;

  test('say the steps of a colour change once, and then where they stand', () => {
    const printed = withoutRepeats(rows);
    const all = withRepeats(rows);
    let repeats = 0;
    printed.forEach((parts, row) => {
      parts.forEach((part, i) => {
        const full = all[row]?.[i];
        expect(part.text).toBe(full?.text);
        if (part.like === null) {
          expect(part.substeps).toEqual(full?.substeps);
          return;
        }
        repeats++;
        const first = printed[part.like.row - 1]?.[part.like.part - 1];
        expect(first?.like).toBeNull();
        expect(first?.substeps.length).toBe(full?.substeps.length);
        // The same hands' work: halves, sides and what is locked by what.
        const words = (steps: readonly string[] = []): string =>
          // Where it rested and how long its float is, differs from lead to lead.
          (
            steps
              .join(' ')
              .replace(/ It has rested [^.]*\./g, '')
              .match(/\b(forward|backward|left|right|aside|under|through|behind|turn)\b/g) ?? []
          ).join(' ');
        expect(words(first?.substeps)).toBe(words(full?.substeps));
      });
    });
    expect(repeats).toBeGreaterThan(50);
  });

  test('come with the edge knots of every row', () => {
    const { edges } = written(OTTER, { edge: 'straight', start: 'left' }, { first: 0, end: 0 });
    expect(edges).toHaveLength(48);
    // Left backward-forward, right forward-backward.
    for (let row = 0; row < 24; row++)
      expect([...edges.slice(2 * row, 2 * row + 2)]).toEqual([3, 2]);
  });
});

describe('what can be printed', () => {
  const choice: SheetChoice = {
    paper: 'a4',
    firstRow: 1,
    lastRow: 24,
    chart: true,
    written: true,
    cut: true,
    inColour: true,
    everyStep: false,
  };

  test.each([
    [{}, 24, 14, null],
    [{ lastRow: 25 }, 24, 14, /from 1 to 24/],
    [{ firstRow: 0 }, 24, 14, /from 1 to 24/],
    [{ firstRow: 1.5 }, 24, 14, /whole numbers/],
    [{ firstRow: Number.NaN }, 24, 14, /whole numbers/],
    [{ firstRow: 9, lastRow: 8 }, 24, 14, /before the first/],
    [{ lastRow: 401 }, 1000, 14, /At most 400 rows.*rows 1 to 400 first/],
    [{ lastRow: 400 }, 1000, 14, null],
    [{ lastRow: 200 }, 1000, 300, /At most 133 rows/],
    [{ chart: false, written: false, cut: false }, 24, 14, /at least one thing/],
  ] as const)('%j of %i rows of %i', (change, rows, columns, wrong) => {
    const said = wrongWith({ ...choice, ...change }, rows, columns);
    if (wrong === null) expect(said).toBeNull();
    else expect(said).toMatch(wrong);
  });

  test('is never more than the limits', () => {
    for (const columns of [1, 14, 100, 300]) {
      expect(mostRows(columns)).toBeLessThanOrEqual(SHEET_LIMITS.rows);
      expect(mostRows(columns) * columns).toBeLessThanOrEqual(SHEET_LIMITS.knots);
    }
  });

  test('goes onto the paper of the place', () => {
    expect(usualPaper(['en-US', 'en'])).toBe('letter');
    expect(usualPaper(['en-GB'])).toBe('a4');
    expect(usualPaper(['de'])).toBe('a4');
    expect(usualPaper([])).toBe('a4');
  });
});
