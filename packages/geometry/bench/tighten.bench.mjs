/**
 * Time to tighten the four knots (two and their mirror images) from loose; beside it, in the same run,
 * as many beads moved to the middle of their neighbours as often: the ratio does not depend on the
 * machine. Reaches into the build, as tightening is no part of what the package exports.
 */

import { noteRatio } from '../../../testing/bench-ratios.mjs';
import { medianTime } from '../../../testing/bench-timing.mjs';
import { tightenHalves } from '../dist/relax/hitches.js';

const ROUNDS = 3;

/** About the beads of one half hitch, and its steps: see src/relax/tighten.ts. */
const BEADS = 170;
const STEPS = 16_000;

let kept = 0;

function averaged() {
  let now = Float64Array.from({ length: BEADS * 3 }, (_, i) => Math.sin(i));
  let next = Float64Array.from(now);
  for (let step = 0; step < STEPS; step++) {
    for (let i = 3; i < now.length - 3; i++) next[i] = (now[i - 3] + now[i + 3]) / 2;
    [now, next] = [next, now];
  }
  kept += now[300];
}

const plain = medianTime(ROUNDS, () => {
  // Two halves.
  averaged();
  averaged();
});
for (const [pairing, kinds] of [
  ['same', 'forward and backward'],
  ['opposite', 'forward-backward and backward-forward'],
]) {
  const time = medianTime(ROUNDS, () => {
    kept += tightenHalves(pairing, 1).second[0][0];
  });
  noteRatio(kinds, time / plain);
  console.log(
    `${kinds}: ${time.toFixed(0)} ms, ${(time / plain).toFixed(0)} times averaging neighbours ` +
      `(${plain.toFixed(0)} ms for ${STEPS} steps of ${BEADS} beads, twice)`,
  );
}
if (!Number.isFinite(kept)) throw new Error('A curve is not a number.');
