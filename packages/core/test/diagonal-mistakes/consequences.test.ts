import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import {
  type DiagonalMistake,
  DiagonalMistakeWords,
  type DiagonalPattern,
  diagnoseDiagonal,
  diagonalConsequences,
  diagonalDiagnosisText,
  firstSlotOf,
  knotsAcross,
  makeDiagonalMistakes,
  possibleDiagonalMistakes,
  simulateDiagonal,
} from '../../src/index.js';
import { everyDiagonalSlip } from '../support/diagonal-slips.js';

const small = anyDiagonal({ maxStrings: 8, maxRows: 9, maxColours: 3, bareTenths: 1 });

/** Places whose colours differ, by their index. */
function differing(one: Uint8Array, other: Uint8Array, from = 0): number[] {
  return [...one.keys()].filter((at) => at >= from && one[at] !== other[at]);
}

describe('what mistakes do', () => {
  it('says which knots show another colour, and when all hangs as written again', () => {
    fc.assert(
      fc.property(small, fc.nat(), (pattern, choice) => {
        const slips = everyDiagonalSlip(pattern).filter(
          ({ kind }) => !kind.endsWith('row') && kind !== 'swapped-strings',
        );
        fc.pre(slips.length > 0);
        const slip = slips[choice % slips.length] as DiagonalMistake;
        const sound = simulateDiagonal(pattern);
        const made = makeDiagonalMistakes(pattern, [slip]);
        const found = diagonalConsequences(pattern, [slip]);
        const across = knotsAcross(pattern);
        expect(found.differing.map(({ row, place }) => row * across + place)).toEqual(
          differing(made.seen.cells, sound.picture.cells),
        );
        const { strings, rows } = pattern;
        const same = (row: number): boolean =>
          differing(
            new Uint8Array(made.drawn.order.slice(row * strings, (row + 1) * strings)),
            new Uint8Array(sound.order.slice(row * strings, (row + 1) * strings)),
          ).length === 0;
        let back: number | null = null;
        for (let row = rows; row >= 0 && same(row); row--) back = row;
        expect(found.orderBack).toBe(back);
      }),
      { numRuns: 60 },
    );
  });

  it('mends, where it says so, by the one knot', () => {
    let mended = 0;
    let exchanged = 0;
    const check = (pattern: DiagonalPattern, slip: DiagonalMistake, cut: number): void => {
      const at = 'row' in slip ? slip.row : 0;
      const rows = Math.min(pattern.rows, at + 1 + (cut % 3));
      const across = knotsAcross(pattern);
      const sound = simulateDiagonal(pattern).picture.cells;
      for (const way of diagonalConsequences(pattern, [slip], rows).ways) {
        if (way.way === 'mend') {
          mended++;
          expect(way.row).toBeGreaterThanOrEqual(rows);
          const { row, place, tied } = way;
          const made = makeDiagonalMistakes(pattern, [
            slip,
            { kind: 'wrong-kind', row, place, tied },
          ]);
          const differs = differing(made.seen.cells, sound);
          expect(differs).toHaveLength(way.differing);
          expect(differs.filter((cell) => cell >= row * across)).toEqual([]);
        }
        if (way.way === 'exchange') {
          exchanged++;
          // The rest of the pattern by itself, with the strings as they hang when exchanged.
          const { seen } = makeDiagonalMistakes(pattern, [slip], { rows: way.row });
          const start = (seen.hanging as Uint8Array).slice();
          const [one, two] = way.slots;
          [start[one], start[two]] = [start[two] as number, start[one] as number];
          const rest: DiagonalPattern = {
            ...pattern,
            start,
            rows: pattern.rows - way.row,
            first: firstSlotOf(pattern, way.row),
            knots: pattern.knots.slice(way.row * across),
          };
          expect(simulateDiagonal(rest).picture.cells).toEqual(sound.slice(way.row * across));
          expect(differing(seen.cells, sound.slice(0, way.row * across))).toHaveLength(
            way.differing,
          );
        }
      }
    };
    fc.assert(
      fc.property(small, fc.nat(), (pattern, cut) => {
        const slips = everyDiagonalSlip(pattern).filter(
          ({ kind }) => !kind.endsWith('row') && kind !== 'wrong-colour',
        );
        for (const slip of slips) check(pattern, slip, cut);
      }),
      { numRuns: 20 },
    );
    expect(mended).toBeGreaterThan(0);
    expect(exchanged).toBeGreaterThan(0);
  });
});

describe('mistakes in words', () => {
  it('have whole sentences for every mistake and every way to go on', () => {
    fc.assert(
      fc.property(small, (pattern) => {
        const words = new DiagonalMistakeWords(pattern);
        for (const mistake of possibleDiagonalMistakes(pattern)) {
          const { ways, ...rest } = diagonalConsequences(pattern, [mistake], 3);
          const all = [mistake];
          const told = [
            words.what(mistake),
            words.effect({ ways, ...rest }),
            words.goOn(all),
            ...ways.map((way) => words.way(way, all)),
          ];
          for (const sentence of told) {
            expect(sentence).toMatch(/^[A-Z].*\.$/s);
            expect(sentence).not.toMatch(/undefined|NaN|null|another colour belongs/);
          }
        }
      }),
      { numRuns: 8 },
    );
  });

  it('tell a diagnosis from the first line to the last', () => {
    fc.assert(
      fc.property(small, fc.nat(), (pattern, choice) => {
        const slips = everyDiagonalSlip(pattern);
        const slip = slips[choice % slips.length] as DiagonalMistake;
        const { seen } = makeDiagonalMistakes(pattern, [slip]);
        const diagnosis = diagnoseDiagonal(pattern, seen);
        const text = [...diagonalDiagnosisText(pattern, seen.rows, diagnosis)].join('\n');
        expect(text).not.toMatch(/undefined|NaN|null/);
        const words = new DiagonalMistakeWords(pattern);
        const told = diagnosis.explanations[0]?.alternatives.slice(0, 6) ?? [];
        for (const { mistakes } of told) {
          for (const mistake of mistakes) expect(text).toContain(words.what(mistake, mistakes));
        }
      }),
      { numRuns: 30 },
    );
  });
});
