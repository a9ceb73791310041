/**
 * Time to diagnose one and two mistakes in diagonal pieces, beside trying every single mistake the
 * plain way, by knotting the whole piece anew for each: of that as many as fit into a second are
 * measured and the rest is reckoned. The ratio does not depend on the machine.
 */
import {
  chevrons,
  diagnoseDiagonal,
  makeDiagonalMistakes,
  possibleDiagonalMistakes,
} from '@halfhitch/core';
import { noteRatio } from '../../../testing/bench-ratios.mjs';
import { median, numbersFrom, timed } from '../../../testing/bench-timing.mjs';

const SIZES = [
  [20, 60, 20],
  [40, 60, 20],
  [100, 400, 3],
];

const colours = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#e8702a', name: 'buoy orange' },
];

const next = numbersFrom(12_345);

for (const [strings, rows, rounds] of SIZES) {
  const pattern = chevrons({ strings, colours, rows });
  const all = [...possibleDiagonalMistakes(pattern)];
  const stays = all.filter(({ kind }) => !kind.endsWith('row'));
  let tried = 0;
  const before = performance.now();
  while (performance.now() - before < 1_000) {
    makeDiagonalMistakes(pattern, [all[next(all.length)]]);
    tried++;
  }
  const plain = ((performance.now() - before) / tried) * all.length;
  for (const mistakes of [1, 2]) {
    const times = [];
    for (let round = 0; round < rounds; round++) {
      const made = Array.from({ length: mistakes }, () => stays[next(stays.length)]);
      const { seen } = makeDiagonalMistakes(pattern, made);
      const shown = { ...seen, looks: undefined, hanging: undefined };
      times.push(timed(() => diagnoseDiagonal(pattern, shown)));
    }
    const middle = median(times);
    noteRatio(`diagonal, ${strings} x ${rows}, ${mistakes}`, middle / plain);
    console.log(
      `${strings} strings, ${rows} rows, ${mistakes === 1 ? 'one mistake' : 'two mistakes'}: ` +
        `${middle.toFixed(0)} ms, at most ${Math.max(...times).toFixed(0)} ms; ` +
        `${all.length} single mistakes tried out whole: ${(plain / 1000).toFixed(0)} s`,
    );
  }
}
