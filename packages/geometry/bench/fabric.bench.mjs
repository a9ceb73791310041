/**
 * Whole pieces of 60 x 300 knots built, all chunks, at full detail and for a view from afar, and the
 * most memory taken meanwhile; beside it, in the same run, as many points of straight lines written
 * to typed arrays of the same sizes: the ratio does not depend on the machine. The first build of a
 * chart works out the ways between its knots, which later ones find again; both times are given.
 */
import { planAlpha } from '@halfhitch/core';
import { Fabric } from '@halfhitch/geometry';
import {
  bandsOf7Rows,
  blocksOf9Knots,
  changesNearlyAlways,
  chartOf,
} from '../../../testing/bench-pieces.mjs';
import { noteRatio } from '../../../testing/bench-ratios.mjs';
import { medianTime, timed } from '../../../testing/bench-timing.mjs';
import { straightLines } from './straight-lines.mjs';

const ROWS = 300;
const COLUMNS = 60;
const ROUNDS = 5;

const CHARTS = {
  'one colour': () => 0,
  'bands of 7 rows': bandsOf7Rows,
  'blocks of 9 knots': blocksOf9Knots,
  'a change at nearly every knot': changesNearlyAlways,
};

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

console.log(`${ROWS * COLUMNS} knots, ${COLUMNS} x ${ROWS}, straight edges; median of ${ROUNDS}`);
for (const [name, colourOf] of Object.entries(CHARTS)) {
  const plan = planAlpha(chartOf(ROWS, COLUMNS, colourOf));
  for (const [level, view] of [
    [0, 'full detail'],
    [3, 'from afar'],
  ]) {
    let sizes = [];
    const build = () => {
      sizes = buildAll(plan, level);
    };
    const first = timed(build);
    const built = medianTime(ROUNDS, build);
    const plain = medianTime(ROUNDS, () => straightLines(sizes));
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
