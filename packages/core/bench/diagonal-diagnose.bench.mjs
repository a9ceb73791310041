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

const SIZES = [
  [20, 60, 20],
  [40, 60, 20],
  [100, 400, 3],
];

const colours = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#e8702a', name: 'buoy orange' },
];

let state = 12345;
function next(below) {
  state = (Math.imul(state, 1103515245) + 12345) >>> 0;
  return Math.floor((state / 4294967296) * below);
}

function median(times) {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];
}

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
      const start = performance.now();
      diagnoseDiagonal(pattern, { ...seen, looks: undefined, hanging: undefined });
      times.push(performance.now() - start);
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
