import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import {
  ANY_COLOUR,
  DIAGONAL_DIAGNOSE_LIMITS,
  type DiagonalMistake,
  type DiagonalPattern,
  type DiagonalSeen,
  diagnoseDiagonal,
  diagonalMistakeKey,
  makeDiagonalMistakes,
} from '../../src/index.js';
import { everyDiagonalSlip } from '../support/diagonal-slips.js';
import { refusal } from '../support/refusal.js';

const small = anyDiagonal({ maxStrings: 7, maxRows: 7, maxColours: 3 });

/** Whether a piece looks as was seen; compared here from the whole piece, place by place. */
function looksLike(
  pattern: DiagonalPattern,
  mistakes: readonly DiagonalMistake[],
  seen: DiagonalSeen,
): boolean {
  const made = makeDiagonalMistakes(pattern, mistakes, { rows: seen.rows }).seen;
  const alike = (one: Uint8Array | undefined, other: Uint8Array | undefined): boolean =>
    (one ?? []).every((value, at) => value === ANY_COLOUR || value === (other?.[at] ?? 255));
  return (
    alike(seen.cells, made.cells) &&
    alike(seen.looks, made.looks) &&
    alike(seen.hanging, made.hanging)
  );
}

function coloursOnly({ looks: _, hanging: __, ...seen }: DiagonalSeen): DiagonalSeen {
  return seen;
}

describe('diagnosing a diagonal piece', () => {
  it('finds nothing where nothing differs', () => {
    fc.assert(
      fc.property(small, (pattern) => {
        const { seen } = makeDiagonalMistakes(pattern, []);
        expect(diagnoseDiagonal(pattern, seen)).toMatchObject({ ok: true, explanations: [] });
      }),
      { numRuns: 20 },
    );
  });

  // A second way: every single mistake is knotted by the state machine and compared as a whole.
  it('lists exactly the single mistakes that explain everything', () => {
    fc.assert(
      fc.property(
        small,
        fc.nat(),
        fc.boolean(),
        fc.infiniteStream(fc.nat(9)),
        (pattern, choice, full, dice) => {
          const slips = everyDiagonalSlip(pattern);
          const planted = slips[choice % slips.length] as DiagonalMistake;
          const made = makeDiagonalMistakes(pattern, [planted]).seen;
          const cells = made.cells.map((cell) => (dice.next().value === 0 ? ANY_COLOUR : cell));
          const seen = { ...(full ? made : coloursOnly(made)), cells };
          const found = diagnoseDiagonal(pattern, seen);
          const expected = slips.filter((slip) => looksLike(pattern, [slip], seen));
          expect(found.ok).toBe(looksLike(pattern, [], seen));
          if (found.ok) return;
          expect(found.explanations).toHaveLength(1);
          const [first] = found.explanations;
          expect(first).toMatchObject({ mistakes: 1, unexplained: 0, likelihood: 1 });
          const keys = first?.alternatives.map(({ mistakes }) => mistakes.map(diagonalMistakeKey));
          expect(keys?.map(String).sort()).toEqual(expected.map(diagonalMistakeKey).sort());
        },
      ),
      { numRuns: 40 },
    );
  });

  it('gives only pairs that look as was seen, or says what they leave', () => {
    fc.assert(
      fc.property(small, fc.nat(), fc.nat(), (pattern, one, two) => {
        const slips = everyDiagonalSlip(pattern).filter(({ kind }) => !kind.endsWith('row'));
        fc.pre(slips.length > 0);
        const planted = [slips[one % slips.length], slips[two % slips.length]];
        const { seen } = makeDiagonalMistakes(pattern, planted as DiagonalMistake[]);
        const { explanations } = diagnoseDiagonal(pattern, seen);
        for (const { alternatives, unexplained } of explanations) {
          for (const { mistakes } of alternatives.slice(0, 20)) {
            expect(looksLike(pattern, mistakes, seen)).toBe(unexplained === 0);
          }
        }
      }),
      { numRuns: 25 },
    );
  });

  it('asks for one look that parts the alternatives as it says', () => {
    fc.assert(
      fc.property(small, fc.nat(), (pattern, choice) => {
        const slips = everyDiagonalSlip(pattern);
        const planted = slips[choice % slips.length] as DiagonalMistake;
        const seen = coloursOnly(makeDiagonalMistakes(pattern, [planted]).seen);
        const [first] = diagnoseDiagonal(pattern, seen).explanations;
        const question = first?.question ?? null;
        if (first === undefined || question === null) return;
        expect(question.answers.length).toBeGreaterThan(1);
        for (const { seen: answer, alternatives } of question.answers) {
          for (const at of alternatives) {
            const { mistakes = [] } = first.alternatives[at] ?? {};
            // As far as was seen: with a row left out, the others end a row later.
            const made = makeDiagonalMistakes(pattern, mistakes, { rows: seen.rows }).seen;
            const across = made.cells.length / made.rows;
            if (question.of === 'hanging') {
              expect(made.hanging?.[question.slot]).toBe(answer);
            } else {
              const cell = question.row * across + question.place;
              const values = question.of === 'colour' ? made.cells : made.looks;
              expect(values?.[cell] ?? 255).toBe(answer);
            }
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  // A second way: undone is what is not tied before any knot that is wrong, string by string.
  it('undoes just the knots that hold the others', () => {
    fc.assert(
      fc.property(small, fc.nat(), (pattern, choice) => {
        const slips = everyDiagonalSlip(pattern).filter(({ kind }) => kind === 'wrong-kind');
        fc.pre(slips.length > 0);
        const planted = slips[choice % slips.length] as DiagonalMistake & { kind: 'wrong-kind' };
        const made = makeDiagonalMistakes(pattern, [planted]);
        const [first] = diagnoseDiagonal(pattern, made.seen).explanations;
        const its = first?.alternatives.find(
          ({ mistakes: [one] }) =>
            one !== undefined && diagonalMistakeKey(one) === diagonalMistakeKey(planted),
        );
        const knots: { row: number; place: number; strings: string[] }[] = [];
        let row = 0;
        for (const step of made.plan.steps) {
          if (step.do === 'turn') row++;
          if (step.do !== 'halfHitch') continue;
          const strings = [step.tying, step.held];
          const last = knots.at(-1);
          if (
            last?.row === row &&
            last.strings.includes(step.tying) &&
            last.strings.includes(step.held)
          )
            continue;
          knots.push({ row, place: -1, strings });
        }
        let at = 0;
        for (let r = 0; r < made.seen.rows; r++) {
          for (const { place } of made.drawn.knotsOf(r))
            (knots[at++] as { place: number }).place = place;
        }
        const tainted = new Set<string>();
        const undone = knots.filter((knot) => {
          const wrong = knot.row === planted.row && knot.place === planted.place;
          if (!wrong && !knot.strings.some((string) => tainted.has(string))) return false;
          for (const string of knot.strings) tainted.add(string);
          return true;
        });
        expect(its?.undo.knots).toEqual(
          undone.map(({ row: r, place }) => ({ row: r, place })).reverse(),
        );
        expect(its?.undo).toMatchObject({ row: planted.row, place: planted.place });
      }),
      { numRuns: 40 },
    );
  });

  it('refuses what does not fit the pattern', () => {
    const [pattern] = fc.sample(small, 1) as [DiagonalPattern];
    const { seen } = makeDiagonalMistakes(pattern, []);
    const wide = { ...seen, strings: seen.strings + 1 };
    expect(refusal(() => diagnoseDiagonal(pattern, wide))).toMatchObject({ code: 'other-width' });
    const colours = [{ key: 'x', hex: '#123456', name: '' }];
    const strange = { ...seen, colours, cells: seen.cells.map(() => 0) };
    expect(refusal(() => diagnoseDiagonal(pattern, strange))).toMatchObject({
      code: 'colour-not-in-pattern',
    });
    const rows = DIAGONAL_DIAGNOSE_LIMITS.knots + 1;
    expect(refusal(() => diagnoseDiagonal(pattern, { ...seen, rows }))).toMatchObject({
      code: 'too-many-rows-seen',
    });
  });

  it('refuses mistakes that do not fit', () => {
    const [pattern] = fc.sample(small, 1) as [DiagonalPattern];
    const bad: DiagonalMistake[] = [
      { kind: 'missing-knot', row: 99, place: 0 },
      { kind: 'missing-knot', row: 0, place: 99 },
      { kind: 'wrong-colour', slot: 0, colour: 9 },
      { kind: 'swapped-strings', slot: 0, other: 99 },
      { kind: 'extra-row', row: 0 },
      { kind: 'missing-row', row: 1.5 },
    ];
    for (const mistake of bad) {
      expect(refusal(() => makeDiagonalMistakes(pattern, [mistake])).code).toBe('no-such-mistake');
    }
  });
});
