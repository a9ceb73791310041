/**
 * 1,000,000 knots of a diagonal pattern, 201 strings by 10,000 rows: simulated, planned, verified and
 * asked for their repeat, beside a plain typed-array loop that does the same exchanges and notes the
 * same colours in the same run: the ratio does not depend on the machine.
 */
import {
  chevrons,
  diagonalStripes,
  planDiagonal,
  repeatOf,
  simulateDiagonal,
  verifyDiagonal,
} from '@halfhitch/core';
import { SIX_COLOURS } from '../../../testing/bench-pieces.mjs';
import { noteRatio } from '../../../testing/bench-ratios.mjs';
import { medianTime } from '../../../testing/bench-timing.mjs';

const STRINGS = 201;
const ROWS = 10_000;
const ACROSS = (STRINGS - 1) / 2;
const ROUNDS = 5;

const SIZE = { strings: STRINGS, rows: ROWS, colours: SIX_COLOURS };
const PATTERNS = {
  stripes: diagonalStripes(SIZE),
  chevrons: chevrons(SIZE),
  'kinds at random': { ...diagonalStripes(SIZE), knots: kindsAtRandom() },
};

function kindsAtRandom() {
  let state = 7;
  return Uint8Array.from({ length: ROWS * ACROSS }, () => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff;
    return (state >> 16) & 3;
  });
}

/** What the knots do to the order and to the picture, with no lattice, no steps and no history. */
function plainLoop({ knots, start }) {
  const front = Uint16Array.from({ length: STRINGS }, (_, slot) => slot);
  const shown = new Uint8Array(ROWS * ACROSS);
  for (let row = 0; row < ROWS; row++) {
    for (let place = 0; place < ACROSS; place++) {
      const kind = knots[row * ACROSS + place];
      const slot = (row % 2) + 2 * place;
      const left = front[slot];
      const right = front[slot + 1];
      shown[row * ACROSS + place] = start[kind % 2 === 0 ? left : right];
      if (kind < 2) {
        front[slot] = right;
        front[slot + 1] = left;
      }
    }
  }
  return front[0] + shown[shown.length - 1];
}

for (const [name, pattern] of Object.entries(PATTERNS)) {
  const plain = medianTime(ROUNDS, () => plainLoop(pattern));
  const { picture } = simulateDiagonal(pattern);
  const plan = planDiagonal(pattern);
  const works = {
    simulate: () => simulateDiagonal(pattern),
    plan: () => planDiagonal(pattern),
    'verify without the pattern': () => sound(verifyDiagonal(plan, picture)),
    'verify with the pattern': () => sound(verifyDiagonal(plan, picture, { pattern })),
    repeat: () => repeatOf(pattern),
  };
  const told = Object.entries(works).map(([what, work]) => {
    const taken = medianTime(ROUNDS, work);
    noteRatio(`${name}: ${what}`, taken / plain);
    return `  ${what} ${taken.toFixed(1)} ms, ${(taken / plain).toFixed(1)} times`;
  });
  console.log(`${name}, beside the plain loop of ${plain.toFixed(1)} ms:\n${told.join('\n')}`);
}
console.log(`resident memory ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB`);

function sound({ ok, knots }) {
  if (!ok || knots !== ROWS * ACROSS) throw new Error('The benchmark plan must be sound.');
}
