/**
 * Whole pieces of diagonal work, 60 strings x 600 rows, all chunks built, at full detail and for a
 * view from afar; the length of every string; and the poses of a knot being tied. Beside each, in the
 * same run, as many points of straight lines written to typed arrays: the ratio does not depend on
 * the machine. The first build works out the knots and the ways between them, which later ones find
 * again; both times are given.
 */
import { knotsInRow } from '@halfhitch/core';
import { DiagonalFabric, diagonalPose, diagonalScene, diagonalUsage } from '@halfhitch/geometry';
import { noteRatio } from '../../../testing/bench-ratios.mjs';
import { medianTime, timed } from '../../../testing/bench-timing.mjs';
import { straightLines } from './straight-lines.mjs';

const STRINGS = 60;
const ROWS = 600;
const ROUNDS = 5;
const POSES = 400;

const COLOURS = ['#1f6fb2', '#e8742c', '#4f7f4a'].map((hex, i) => ({
  key: 'bog'[i],
  hex,
  name: '',
}));

function patternOf(kindOf) {
  const across = STRINGS / 2;
  const knots = new Uint8Array(ROWS * across).fill(255);
  const lattice = { strings: STRINGS, rows: ROWS, first: 0 };
  for (let row = 0; row < ROWS; row++) {
    for (let place = 0; place < knotsInRow(lattice, row); place++) {
      knots[row * across + place] = kindOf(row, place);
    }
  }
  const start = Uint8Array.from({ length: STRINGS }, (_, slot) => slot % 3);
  return { ...lattice, name: '', colours: COLOURS, start, knots };
}

const PATTERNS = {
  'all crossing': patternOf(() => 0),
  'all kinds mixed': patternOf((row, place) => (row * 7 + place * 5 + ((row * place) % 3)) % 4),
};

function buildAll(pattern, level) {
  const fabric = new DiagonalFabric(pattern);
  const sizes = [];
  for (let k = 0; k < fabric.chunks; k++) sizes.push(fabric.chunk(k, level).points.length);
  return sizes;
}

for (const [name, pattern] of Object.entries(PATTERNS)) {
  const count = pattern.knots.reduce((sum, kind) => sum + (kind === 255 ? 0 : 1), 0);
  console.log(`${count} knots, ${name}; median of ${ROUNDS}`);
  for (const [level, view] of [
    [0, 'full detail'],
    [3, 'from afar'],
  ]) {
    let sizes = [];
    const build = () => {
      sizes = buildAll(pattern, level);
    };
    const first = timed(build);
    const built = medianTime(ROUNDS, build);
    const plain = medianTime(ROUNDS, () => straightLines(sizes));
    const points = sizes.reduce((sum, size) => sum + size, 0) / 3;
    noteRatio(`diagonal fabric, ${name}, ${view}`, built / plain);
    console.log(
      `  ${view}: ${built.toFixed(0)} ms (first ${first.toFixed(0)} ms), ` +
        `${(points / count).toFixed(1)} points a knot, ` +
        `${(built / plain).toFixed(0)} times writing straight lines (${plain.toFixed(1)} ms)`,
    );
  }
  console.log(
    `  length of every string: ${medianTime(ROUNDS, () => diagonalUsage(pattern)).toFixed(0)} ms`,
  );
  const scene = diagonalScene(pattern);
  const middle = Math.floor(scene.knots / 2);
  let points = 0;
  const posed = medianTime(ROUNDS, () => {
    points = 0;
    for (let k = 0; k < POSES; k++) {
      for (const strand of diagonalPose(scene, middle, (2 * k) / POSES).strands) {
        points += strand.points.length;
      }
    }
  });
  const plain = medianTime(ROUNDS, () => straightLines([points]));
  noteRatio(`diagonal poses, ${name}`, posed / plain);
  console.log(
    `  pose of a knot: ${(posed / POSES).toFixed(2)} ms, ${(posed / plain).toFixed(0)} times writing straight lines`,
  );
}
