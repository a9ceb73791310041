/**
 * Looking for what makes a piece easier, and the best way to knot it, on the largest chart there
 * may be (300 x 10,000); beside planning and verifying that chart once, in the same run: the ratio
 * does not depend on the machine.
 */
import { bestWay, easier, effortOf } from '@halfhitch/core';
import { noteRatio } from '../../../testing/bench-ratios.mjs';

const ROWS = 10_000;
const COLUMNS = 300;
const CHOICE = { edge: 'straight', start: 'left' };

const CHARTS = {
  'bands with stray knots': (row, column) =>
    (row * COLUMNS + column) % 97 === 0 ? 5 : Math.floor(row / 9) % 4,
  'a change at nearly every knot': (row, column) =>
    (row * 31 + column * 17 + ((row * column) % 5)) % 6,
  'a colour from long ago': (row, column) =>
    row % 4_999 === 7 && column === 20 ? 5 : Math.floor(column / 50),
};

function chart(colourOf) {
  const cells = new Uint8Array(ROWS * COLUMNS);
  for (let at = 0; at < cells.length; at++) {
    cells[at] = colourOf(Math.floor(at / COLUMNS), at % COLUMNS);
  }
  const colours = Array.from({ length: 6 }, (_, i) => ({
    key: 'abcdef'[i],
    hex: `#${(0x202020 + i * 0x1f1f1f).toString(16)}`,
    name: '',
  }));
  return { name: '', rows: ROWS, columns: COLUMNS, colours, cells };
}

function seconds(work) {
  const before = performance.now();
  const result = work();
  return [(performance.now() - before) / 1_000, result];
}

for (const [name, colourOf] of Object.entries(CHARTS)) {
  const piece = chart(colourOf);
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
