/**
 * Knots planned, applied and verified per second on 100 x 5,000, beside a plain typed-array loop
 * that does the same exchanges of places in the same run: the ratio does not depend on the machine.
 */
import { planAlpha, verifyPlan } from '@halfhitch/core';
import {
  bandsOf7Rows,
  blocksOf9Knots,
  changesNearlyAlways,
  chartOf,
} from '../../../testing/bench-pieces.mjs';
import { noteRatio } from '../../../testing/bench-ratios.mjs';
import { medianTime } from '../../../testing/bench-timing.mjs';

const ROWS = 5_000;
const COLUMNS = 100;
const ROUNDS = 7;

const CHARTS = {
  'bands of 7 rows': bandsOf7Rows,
  'blocks of 9 knots': blocksOf9Knots,
  'a change at nearly every knot': changesNearlyAlways,
};

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

for (const [name, colourOf] of Object.entries(CHARTS)) {
  const drawn = chartOf(ROWS, COLUMNS, colourOf);
  const plain = medianTime(ROUNDS, () => plainLoop(drawn));
  const planning = medianTime(ROUNDS, () => planAlpha(drawn));
  const plan = planAlpha(drawn);
  const verifying = medianTime(ROUNDS, () => {
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
