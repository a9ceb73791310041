/**
 * Poses per second of one knot and of a row of 30 knots (the last of them being tied); beside each, in
 * the same run, as many points of a helix written to a typed array: the ratio does not depend on the
 * machine.
 */
import { knotPose, rowPose } from '@halfhitch/geometry';
import { noteRatio } from '../../../testing/bench-ratios.mjs';
import { median } from '../../../testing/bench-timing.mjs';

const ROUNDS = 7;

/** Milliseconds for one call, the median of some rounds of many calls at times spread evenly. */
function perCall(calls, work) {
  const times = [];
  for (let round = 0; round < ROUNDS; round++) {
    const before = performance.now();
    for (let i = 0; i < calls; i++) work((i + round / ROUNDS) / calls);
    times.push((performance.now() - before) / calls);
  }
  return median(times);
}

let kept = 0;

function helix(count, turn) {
  const points = new Float64Array(count * 3);
  for (let i = 0; i < count; i++) {
    points[i * 3] = Math.cos(turn + i * 0.1);
    points[i * 3 + 1] = i * 0.02;
    points[i * 3 + 2] = Math.sin(turn + i * 0.1);
  }
  kept += points[count - 1];
}

function report(name, calls, points, work) {
  const pose = perCall(calls, work);
  const plain = perCall(calls, (f) => helix(points, f));
  noteRatio(name, pose / plain);
  console.log(
    `${name}: ${pose.toFixed(3)} ms, ${Math.round(1000 / pose)} per second, ` +
      `${(pose / plain).toFixed(1)} times a helix of ${points} points`,
  );
}

for (const kind of ['forward', 'forward-backward']) {
  const { tying, held } = knotPose(kind, 0);
  report(`one ${kind} knot`, 2000, (tying.length + held.length) / 3, (f) => {
    kept += knotPose(kind, f * 2).tying[0];
  });
}

const base = Array.from({ length: 30 }, (_, i) => `base ${i}`);
const scene = {
  base,
  knots: base.map((held, column) => ({
    column,
    held,
    tying: 'lead',
    kind: column === 0 ? 'backward-forward' : column === 29 ? 'forward-backward' : 'forward',
  })),
};
const before = performance.now();
const first = rowPose(scene, 29, 0);
const made = performance.now() - before;
const points = first.strands.reduce((sum, s) => sum + s.points.length / 3, 0);
console.log(`row of 30 knots, its joints worked out the first time: ${made.toFixed(0)} ms`);
report('row of 30 knots', 100, points, (f) => {
  kept += rowPose(scene, 29, f * 2).strands[0].points[0];
});
if (!Number.isFinite(kept)) throw new Error('A pose is not a number.');
