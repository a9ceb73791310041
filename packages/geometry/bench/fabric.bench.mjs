/**
 * Whole pieces of 60 x 300 knots built, all chunks, at full detail and for a view from afar, and the
 * most memory taken meanwhile; beside it, in the same run, as many points of straight lines written
 * to typed arrays of the same sizes: the ratio does not depend on the machine. The first build of a
 * chart works out the ways between its knots, which later ones find again; both times are given.
 */
import { planAlpha } from '@halfhitch/core';
import { Fabric } from '@halfhitch/geometry';
import { noteRatio } from '../../../testing/bench-ratios.mjs';

const ROWS = 300;
const COLUMNS = 60;
const ROUNDS = 5;

const CHARTS = {
  'one colour': () => 0,
  'bands of 7 rows': (row) => Math.floor(row / 7) % 6,
  'blocks of 9 knots': (_row, column) => Math.floor(column / 9) % 6,
  'a change at nearly every knot': (row, column) =>
    (row * 31 + column * 17 + ((row * column) % 5)) % 6,
};

function chart(colourOf) {
  const cells = new Uint8Array(ROWS * COLUMNS);
  for (let row = 0; row < ROWS; row++) {
    for (let column = 0; column < COLUMNS; column++)
      cells[row * COLUMNS + column] = colourOf(row, column);
  }
  const colours = Array.from({ length: 6 }, (_, i) => ({
    key: 'abcdef'[i],
    hex: `#${(0x202020 + i * 0x1f1f1f).toString(16)}`,
    name: '',
  }));
  return { name: '', rows: ROWS, columns: COLUMNS, colours, cells };
}

let mostMemory = 0;

function noteMemory() {
  mostMemory = Math.max(mostMemory, process.memoryUsage().rss);
}

/** Builds every chunk and keeps none. */
function buildAll(plan, level) {
  const fabric = new Fabric(plan);
  const sizes = [];
  for (let k = 0; k < fabric.chunks; k++) {
    sizes.push(fabric.chunk(k, level).points.length);
    noteMemory();
  }
  return sizes;
}

/** Points of straight lines, as many as the chunks have. */
function straightLines(sizes) {
  let sum = 0;
  for (const size of sizes) {
    const points = new Float32Array(size);
    for (let i = 0; i < size; i += 3) {
      points[i] = i * 0.25;
      points[i + 1] = i * 0.5;
      points[i + 2] = 1;
    }
    sum += points[size - 1];
  }
  return sum;
}

function timed(work) {
  const before = performance.now();
  work();
  return performance.now() - before;
}

function median(work) {
  const times = Array.from({ length: ROUNDS }, () => timed(work));
  return times.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)];
}

console.log(`${ROWS * COLUMNS} knots, ${COLUMNS} x ${ROWS}, straight edges; median of ${ROUNDS}`);
for (const [name, colourOf] of Object.entries(CHARTS)) {
  const plan = planAlpha(chart(colourOf));
  for (const [level, view] of [
    [0, 'full detail'],
    [3, 'from afar'],
  ]) {
    let sizes = [];
    const build = () => {
      sizes = buildAll(plan, level);
    };
    const first = timed(build);
    const built = median(build);
    const plain = median(() => straightLines(sizes));
    noteRatio(`${name}, ${view}`, built / plain);
    const points = sizes.reduce((sum, size) => sum + size, 0) / 3;
    console.log(
      `${name}, ${view}: ${built.toFixed(0)} ms (first ${first.toFixed(0)} ms), ${points} points ` +
        `(${(points / (ROWS * COLUMNS)).toFixed(1)} per knot), ` +
        `${(built / plain).toFixed(0)} times writing straight lines (${plain.toFixed(1)} ms)`,
    );
  }
}
console.log(`most memory of the process: ${(mostMemory / 1e6).toFixed(0)} MB`);
