/**
 * Knots planned, applied and verified per second on 100 x 5,000, beside a plain typed-array loop
 * that does the same exchanges of places in the same run: the ratio does not depend on the machine.
 */
import { planAlpha, verifyPlan } from '@halfhitch/core';
import { noteRatio } from '../../../testing/bench-ratios.mjs';

const ROWS = 5_000;
const COLUMNS = 100;
const ROUNDS = 7;

const CHARTS = {
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

/** The exchanges that the knots make and the colour each cell shows, with no rules and no steps. */
function plainLoop({ rows, columns, cells }) {
  const front = new Int32Array(columns + 1).map((_, i) => i);
  const shown = new Uint8Array(rows * columns);
  for (let row = 0; row < rows; row++) {
    for (let order = 0; order < columns; order++) {
      const column = row % 2 === 0 ? order : columns - 1 - order;
      const held = front[column];
      front[column] = front[column + 1];
      front[column + 1] = held;
      shown[row * columns + column] = cells[row * columns + column];
    }
  }
  return front[0] + shown[shown.length - 1];
}

function median(times) {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];
}

function time(work) {
  const times = [];
  for (let round = 0; round < ROUNDS; round++) {
    const before = performance.now();
    work();
    times.push(performance.now() - before);
  }
  return median(times);
}

for (const [name, colourOf] of Object.entries(CHARTS)) {
  const drawn = chart(colourOf);
  const plain = time(() => plainLoop(drawn));
  const planning = time(() => planAlpha(drawn));
  const plan = planAlpha(drawn);
  const verifying = time(() => {
    if (!verifyPlan(plan, drawn).ok) throw new Error('The benchmark plan must be sound.');
  });
  const knots = ROWS * COLUMNS;
  const both = planning + verifying;
  noteRatio(name, both / plain);
  console.log(
    `${name}: plan ${planning.toFixed(0)} ms, verify ${verifying.toFixed(0)} ms, ` +
      `${(knots / both / 1000).toFixed(1)} million knots a second, ` +
      `${(both / plain).toFixed(1)} times the plain loop (${plain.toFixed(1)} ms), ` +
      `${((plan.steps.op.byteLength * 5) / knots).toFixed(1)} bytes of steps a knot`,
  );
}
console.log(`resident memory ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB`);
