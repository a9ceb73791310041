import {
  type Chart,
  MistakeWords,
  makeMistakes,
  planAlpha,
  verifyPlan,
  Written,
} from '@halfhitch/core';
import type { Sound } from '../../src/mistakes/make.js';

const COLOURS = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#d9642a', name: 'buoy orange' },
  { key: 'w', hex: '#f4f1e8', name: 'chalk' },
];

/** Rows of the letters b, o and w as a chart. */
export function chartOf(rows: readonly string[]): Chart {
  const columns = rows[0]?.length ?? 0;
  const cells = Uint8Array.from(rows.join(''), (letter) => 'bow'.indexOf(letter));
  return { name: 'Heron', rows: rows.length, columns, colours: COLOURS, cells };
}

export function soundPiece(
  rows: readonly string[],
  edge: 'straight' | 'wrapped' = 'straight',
): Sound {
  const chart = chartOf(rows);
  const plan = planAlpha(chart, { edge, start: 'left' });
  return {
    chart,
    plan,
    written: new Written(plan),
    words: new MistakeWords(plan),
    verification: verifyPlan(plan, chart),
    seen: makeMistakes(plan, []).seen,
  };
}
