/**
 * Looking for what makes a piece easier, and the best way to knot it, on the largest chart there
 * may be (300 x 10,000); beside planning and verifying that chart once, in the same run: the ratio
 * does not depend on the machine.
 */
import { bestWay, easier, effortOf } from '@halfhitch/core';
import { changesNearlyAlways, chartOf } from '../../../testing/bench-pieces.mjs';
import { noteRatio } from '../../../testing/bench-ratios.mjs';

const ROWS = 10_000;
const COLUMNS = 300;
const CHOICE = { edge: 'straight', start: 'left' };

const CHARTS = {
  'bands with stray knots': (row, column) =>
    (row * COLUMNS + column) % 97 === 0 ? 5 : Math.floor(row / 9) % 4,
  'a change at nearly every knot': changesNearlyAlways,
  'a colour from long ago': (row, column) =>
    row % 4_999 === 7 && column === 20 ? 5 : Math.floor(column / 50),
};

function seconds(work) {
  const before = performance.now();
  const result = work();
  return [(performance.now() - before) / 1_000, result];
}

for (const [name, colourOf] of Object.entries(CHARTS)) {
  const piece = chartOf(ROWS, COLUMNS, colourOf);
  const [once] = seconds(() => effortOf(piece, CHOICE));
  const [looking, { suggestions, untried }] = seconds(() => easier(piece, CHOICE));
  const [ways] = seconds(() => bestWay(piece, { ...CHOICE, mayMirror: true }));
  const told = (time) => `${time.toFixed(1)} s (${(time / once).toFixed(1)} x)`;
  noteRatio(`${name}: easier`, looking / once);
  noteRatio(`${name}: best way`, ways / once);
  console.log(`${name}: planned and verified once ${once.toFixed(1)} s`);
  console.log(`  easier ${told(looking)}: ${suggestions.length} suggestions, ${untried} untried`);
  console.log(`  best of 8 ways ${told(ways)}`);
}
