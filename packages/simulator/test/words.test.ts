import { type Chart, KNOT_KINDS, mirrorKnot, PlanReader, planAlpha } from '@halfhitch/core';
import { rowPhases } from '@halfhitch/geometry';
import { describe, expect, it } from 'vitest';
import { KNOT_SCORE } from '../src/knot/knot-score.js';
import { halfInWords, knotWords, movesOfHalf, undoingWords } from '../src/knot/knot-words.js';
import { movesOf, windowAt } from '../src/row/row-scene.js';
import { rowKnotWords } from '../src/row/row-words.js';

const NAMES = { tying: 'the lead', held: 'string 4' };
const swapped = (text: string): string =>
  text.replace(/left|right|forward-backward|backward-forward|forward|backward/g, (word) => {
    const other: Record<string, string> = {
      left: 'right',
      right: 'left',
      forward: 'backward',
      backward: 'forward',
      'forward-backward': 'backward-forward',
      'backward-forward': 'forward-backward',
    };
    return other[word] as string;
  });

function chartOf(...lines: string[]): Chart {
  const keys = [...new Set(lines.join(''))].sort();
  const hexes = ['#1f6fb2', '#d9642a', '#4f7f4a'];
  return {
    name: '',
    rows: lines.length,
    columns: lines[0]?.length ?? 0,
    colours: keys.map((key, i) => ({ key, hex: hexes[i] as string, name: `colour ${key}` })),
    cells: Uint8Array.from([...lines.join('')].map((key) => keys.indexOf(key))),
  };
}

function rowsOf(chart: Chart, edge: 'straight' | 'wrapped' = 'straight') {
  const reader = new PlanReader(planAlpha(chart, { edge }));
  return Array.from({ length: chart.rows }, (_, row) => ({
    reading: reader.row(row),
    previous: row > 0 ? reader.row(row - 1) : null,
  }));
}

function wordsOf(play: ReturnType<typeof rowsOf>[number], order: number) {
  const { scene, index } = windowAt(play, order);
  const knot = play.reading.knots[order];
  if (knot === undefined) throw new Error(`The row has no knot ${order}.`);
  return rowKnotWords(knot, rowPhases(scene, index), play.reading.knots.length, false);
}

describe('the words of a knot', () => {
  it('mirror when the knot is mirrored', () => {
    for (const kind of KNOT_KINDS) {
      for (const half of [0, 1] as const) {
        expect(movesOfHalf(mirrorKnot(kind), half, NAMES)).toEqual(
          movesOfHalf(kind, half, NAMES).map(swapped),
        );
      }
    }
  });

  it('say something else at every still, so that no move passes unsaid', () => {
    for (const kind of KNOT_KINDS) {
      const said = KNOT_SCORE.stills.map((position) => knotWords(kind, position, NAMES).said);
      expect(new Set(said).size).toBe(said.length);
      expect(said.at(-1)).toContain(`The ${kind} knot is tied.`);
    }
  });

  it('take every move back in words of its own, the last one first', () => {
    for (const kind of KNOT_KINDS) {
      const said = [...KNOT_SCORE.stills]
        .reverse()
        .map((position) => undoingWords(kind, position, NAMES).said);
      expect(new Set(said).size).toBe(said.length);
      expect(said[1]).toMatch(/^Second half, .*undoing move 1 of 4\. Loosen/);
      expect(said.at(-1)).toMatch(
        /^First half, .*undoing move 4 of 4\. Lift the bar.*hang free\.$/,
      );
    }
    // Over from left to right and back behind from right to left, so: forth behind, then back over.
    const { moves } = undoingWords('forward', 1.5, NAMES);
    expect(moves[2]).toContain('behind string 4, from the left to the right');
    expect(moves[3]).toContain('over string 4 again, from the right to the left');
  });

  it('follow the table of the knots: over towards, under back, and where the lead ends', () => {
    expect(halfInWords('forward', 0, NAMES)).toMatch(
      /over string 4 from left to right.*behind string 4, back to the left, above the bar.*through the loop.*over its own bar/,
    );
    expect(halfInWords('forward', 1, NAMES)).toContain('the two strings have changed places');
    expect(halfInWords('forward-backward', 1, NAMES)).toMatch(
      /over string 4 from right to left.*to the left: both strings hang where they began/,
    );
  });
});

describe('the words of a row', () => {
  it('lay the old lead through the middle of the knot within a row', () => {
    const [row] = rowsOf(chartOf('aaabbb'));
    if (row === undefined) throw new Error('no row');
    const words = wordsOf(row, 3);
    expect(words.moves).toHaveLength(4);
    expect(words.moves[0]).toMatch(/^Lay L1 \(colour a\) aside\. Add L2 \(colour b\)/);
    expect(words.moves[2]).toBe(
      'Lay L1 (colour a) under L2 (colour b), through the middle of this half-made knot.',
    );
    expect(words.moves[3]).toMatch(/locks L1 \(colour a\), which now goes to the back\.$/);
  });

  it('pass it behind and uncaught at the last knot, and down and behind at a turn', () => {
    const [last] = rowsOf(chartOf('aaab'));
    if (last === undefined) throw new Error('no row');
    expect(wordsOf(last, 3).moves[0]).toMatch(/behind and under this last knot, not caught/);
    const [, turned] = rowsOf(chartOf('aaaa', 'bbbb'));
    if (turned === undefined) throw new Error('no row');
    expect(wordsOf(turned, 0).moves[0]).toMatch(/down and behind.*last knot lies level/);
  });

  it('name the edge knots, the place and the lead', () => {
    const [row] = rowsOf(chartOf('aaaa'));
    if (row === undefined) throw new Error('no row');
    expect(wordsOf(row, 0).heading).toBe(
      'Row 1, knot 1 of 4: edge knot, backward-forward on base string 1, tied by L1 (colour a)',
    );
    expect(wordsOf(row, 1).heading).toContain('knot 2 of 4: forward on base string 2');
  });

  it('have as many moves as the row is played in, for charts with changes of every kind', () => {
    const charts = [chartOf('abcabc', 'cbacba', 'aabbcc'), chartOf('ab', 'ba'), chartOf('a', 'b')];
    for (const chart of charts) {
      for (const edge of ['straight', 'wrapped'] as const) {
        for (const play of rowsOf(chart, edge)) {
          const moves = movesOf(play);
          expect(moves).toHaveLength(chart.columns);
          moves.forEach((count, order) => {
            const words = wordsOf(play, order);
            expect(words.moves).toHaveLength(count);
            expect(words.moves.every((move) => move.trim().length > 10)).toBe(true);
          });
        }
      }
    }
  });
});
