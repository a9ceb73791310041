import { expect, test } from 'vitest';
import { type DiagonalPattern, knotsInRow, NO_KNOT, simulateDiagonal } from '../../src/index.js';
import { Clock } from '../../src/solve/clock.js';
import { solveLong } from '../../src/solve/exact/long.js';
import { solveDiagonal } from '../../src/solve/index.js';
import { problemOf } from '../../src/solve/problem.js';
import { loadCadical } from '../../src/solve/sat/cadical.js';
import { settle } from '../../src/solve/settle.js';

/** A pattern of knots at random, the same in every run. */
function strewn(strings: number, rows: number): DiagonalPattern {
  let state = 7;
  const next = (below: number) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
  const lattice = { strings, rows, first: 1 as const };
  const across = Math.floor(strings / 2);
  const knots = new Uint8Array(rows * across).fill(NO_KNOT);
  for (let row = 0; row < rows; row++) {
    for (let place = 0; place < knotsInRow(lattice, row); place++) {
      knots[row * across + place] = next(4);
    }
  }
  const colours = ['b', 'o', 'g'].map((key) => ({ key, hex: '#1f6fb2', name: '' }));
  const start = Uint8Array.from({ length: strings }, () => next(3));
  return { ...lattice, name: '', colours, start, knots };
}

test('a piece in windows: what cannot go on below is taken up again above', async () => {
  const { picture } = simulateDiagonal(strewn(30, 120));
  const problem = problemOf(picture, {});
  const clock = new Clock({ seconds: 60 });
  const { colours } = await solveLong(problem, await loadCadical(), clock, clock);
  if (colours === null) throw new Error('not solved');
  const found = settle(problem, colours, 'none');
  expect(simulateDiagonal(found).picture.cells).toEqual(picture.cells);
});

test('any picture of two colours is knotted, however large', async () => {
  const { picture } = simulateDiagonal(strewn(300, 1_000));
  const cells = picture.cells.map((colour) => (colour === 2 ? 1 : colour));
  const { status, wrong } = await solveDiagonal({ ...picture, cells });
  expect([status, wrong.length]).toEqual(['solved', 0]);
});

test('a piece in windows: proven impossible where a window is', async () => {
  const { picture } = simulateDiagonal(strewn(30, 120));
  const cells = picture.cells.slice();
  // Three rows of one colour each, in the first of which all knots need a string of it.
  for (let row = 80; row < 83; row++) cells.fill(row - 80, row * 15, row * 15 + 14);
  const problem = problemOf({ ...picture, cells }, {});
  const clock = new Clock({ seconds: 60 });
  const { verdict } = await solveLong(problem, await loadCadical(), clock, clock);
  expect(verdict).toBe('unsatisfiable');
});
