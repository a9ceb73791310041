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
import { bandsOf7Rows, changesNearlyAlways, chartOf } from '../../../testing/bench-pieces.mjs';
import { noteRatio } from '../../../testing/bench-ratios.mjs';
import { median, numbersFrom, timed } from '../../../testing/bench-timing.mjs';

const ROWS = 60;
const COLUMNS = 40;
const ROUNDS = 12;

const CHARTS = {
  'bands of 7 rows': bandsOf7Rows,
  'blocks of 9 knots': (row, column) => (Math.floor(column / 9) + Math.floor(row / 5)) % 6,
  'a change at nearly every knot': changesNearlyAlways,
};

const next = numbersFrom(12_345);

for (const [name, colourOf] of Object.entries(CHARTS)) {
  const plan = planAlpha(chartOf(ROWS, COLUMNS, colourOf));
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
