/**
 * Time to diagnose one and two mistakes in a piece 40 knots wide and 60 rows long, beside knotting
 * that piece once with its mistakes in the same run: the ratio does not depend on the machine.
 */
import {
  diagnose,
  makeMistakes,
  nothingSeen,
  planAlpha,
  possibleMistakes,
  Written,
} from '@halfhitch/core';
import { noteRatio } from '../../../testing/bench-ratios.mjs';

const ROWS = 60;
const COLUMNS = 40;
const ROUNDS = 12;

const colours = Array.from({ length: 6 }, (_, i) => ({
  key: 'abcdef'[i],
  hex: `#${(0x202020 + i * 0x1f1f1f).toString(16)}`,
  name: '',
}));

function chart(colourOf) {
  const cells = new Uint8Array(ROWS * COLUMNS);
  for (let cell = 0; cell < cells.length; cell++) {
    cells[cell] = colourOf(Math.floor(cell / COLUMNS), cell % COLUMNS);
  }
  return { name: '', rows: ROWS, columns: COLUMNS, colours, cells };
}

const CHARTS = {
  'bands of 7 rows': (row) => Math.floor(row / 7) % 6,
  'blocks of 9 knots': (row, column) => (Math.floor(column / 9) + Math.floor(row / 5)) % 6,
  'a change at nearly every knot': (row, column) =>
    (row * 31 + column * 17 + ((row * column) % 5)) % 6,
};

let state = 12345;
function next(below) {
  state = (Math.imul(state, 1103515245) + 12345) >>> 0;
  return Math.floor((state / 4294967296) * below);
}

function median(times) {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];
}

function timed(work) {
  const before = performance.now();
  work();
  return performance.now() - before;
}

for (const [name, colourOf] of Object.entries(CHARTS)) {
  const plan = planAlpha(chart(colourOf));
  const written = new Written(plan);
  const any = () => {
    const row = next(ROWS - 1);
    const all = [...possibleMistakes(written, row, row, ROWS)];
    return all[next(all.length)];
  };
  for (const mistakes of [1, 2]) {
    for (const looked of ['colours', 'everything']) {
      const knotting = [];
      const finding = [];
      for (let round = 0; round < ROUNDS; round++) {
        const made = Array.from({ length: mistakes }, any);
        let piece;
        knotting.push(
          timed(() => {
            piece = makeMistakes(plan, made);
          }),
        );
        const { rows, columns, colours: hexes, cells } = piece.seen;
        const seen =
          looked === 'colours' ? { ...nothingSeen(rows, columns, hexes), cells } : piece.seen;
        finding.push(timed(() => diagnose(plan, seen)));
      }
      const longest = Math.max(...finding);
      noteRatio(`${name}, ${mistakes}, ${looked}`, median(finding) / median(knotting));
      console.log(
        `${name}, ${mistakes === 1 ? 'one mistake' : 'two mistakes'}, ${looked} looked at: ` +
          `${median(finding).toFixed(0)} ms, at most ${longest.toFixed(0)} ms, ` +
          `${(median(finding) / median(knotting)).toFixed(0)} times knotting the piece once (${median(knotting).toFixed(1)} ms)`,
      );
    }
  }
}
