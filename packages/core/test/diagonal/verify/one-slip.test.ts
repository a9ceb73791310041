import { describe, expect, it } from 'vitest';
import {
  BARE,
  type DiagonalKnotReading,
  type DiagonalPlan,
  DiagonalPlanReader,
  type DiagonalVerification,
  planDiagonal,
  readDiagonalText,
  type Step,
  StepList,
  simulateDiagonal,
  slotOfPlace,
  verifyDiagonal,
} from '../../../src/index.js';

// Five strings, so that each row leaves one idle; all four kinds of knot; one place left bare.
const pattern = readDiagonalText(`pattern diagonal
b #1f6fb2 lake blue
o #e8742c buoy orange
g #4f7942 reed green

bbogo

\\ <
 / \\
\\ \\
 > .
\\ /
`);
const plan = planDiagonal(pattern);
const { picture } = simulateDiagonal(pattern);
const steps = [...plan.steps];
const knots = [...new DiagonalPlanReader(plan)].flatMap((row) => row.knots);
const turns = [...steps.keys()].filter((i) => steps[i]?.do === 'turn');

const withSteps = (changed: readonly Step[]): DiagonalPlan => ({
  ...plan,
  steps: StepList.from(plan.strings, changed),
});
const put = (at: number, instead: number, ...more: Step[]): Step[] => [
  ...steps.slice(0, at),
  ...more,
  ...steps.slice(at + instead),
];
/** The half hitch at a step with something changed. */
const changed = (at: number, news: object): Step => ({ ...(steps[at] as Step), ...news }) as Step;
const otherWay = (at: number): Step =>
  changed(at, { way: (steps[at] as { way: string }).way === 'forward' ? 'backward' : 'forward' });

/** Verified with the pattern and without it. */
function judged(steps: readonly Step[]): [known: DiagonalVerification, DiagonalVerification] {
  const slip = withSteps(steps);
  return [verifyDiagonal(slip, picture, { pattern }), verifyDiagonal(slip, picture)];
}

const wrong = ({ findings }: DiagonalVerification): string[] =>
  findings
    .filter(({ grade }) => grade === 'wrong')
    .map(({ code, row, place, slot }) => `${code} at ${row},${place ?? '-'},${slot ?? '-'}`);
const placed = (code: string, { row, place }: DiagonalKnotReading): string =>
  `${code} at ${row + 1},${place + 1},${slotOfPlace(pattern, row, place) + 1}`;
const said = (result: DiagonalVerification): string => result.findings[0]?.message ?? '';

/** A name for a knot in a test's title. */
const named = (knot: DiagonalKnotReading): [string, DiagonalKnotReading, number] => {
  const [row, place] = [knot.row + 1, knot.place + 1];
  return [`${knot.kind} in row ${row}, place ${place}`, knot, knot.steps.end - 2];
};

describe('one slip in a diagonal plan', () => {
  it.each(knots.map(named))('%s, left out', (_, knot, first) => {
    const [known, unknown] = judged(put(first, 2));
    for (const result of [known, unknown]) {
      expect(wrong(result)).toEqual([placed('missing-knot', knot)]);
      expect(result).toMatchObject({ ok: false, knots: knots.length - 1 });
      expect(result.halfHitches).toBe(2 * knots.length - 2);
    }
    // What the pattern has is known, so that the strings hang right all the same.
    expect(known.order).toEqual(simulateDiagonal(pattern).order);
    const [one, other] = [knot.tying.id, knot.held.id].sort();
    expect(said(known)).toMatch(new RegExp(`^The ${knot.kind} knot between `));
    expect(said(unknown)).toMatch(/^The knot between /);
    for (const result of [known, unknown]) {
      expect(said(result)).toContain(one);
      expect(said(result)).toContain(other);
    }
  });

  it.each(knots.map(named))('%s, its second half left out', (_, knot, first) => {
    for (const result of judged(put(first + 1, 1))) {
      expect(wrong(result)).toEqual([placed('half-knot', knot)]);
      expect(said(result)).toContain(`is tied by ${knot.tying.id} onto ${knot.held.id}`);
      expect(result).toMatchObject({ knots: knots.length - 1 });
      expect(result.halfHitches).toBe(2 * knots.length - 1);
    }
  });

  it.each(knots.map(named))('%s, tied twice', (_, knot, first) => {
    const again = steps.slice(first, first + 2);
    for (const result of judged(put(first + 2, 0, ...again))) {
      expect(wrong(result)).toEqual([placed('doubled-knot', knot)]);
      expect(said(result)).toContain(knot.tying.id);
      expect(said(result)).toContain(knot.held.id);
      expect(result.knots).toBe(knots.length);
    }
  });

  it.each(knots.map(named))('%s, begun the other way', (_, knot, first) => {
    for (const result of judged(put(first, 1, otherWay(first)))) {
      expect(wrong(result)).toEqual([placed('wrong-kind', knot)]);
      const way = (otherWay(first) as { way: string }).way;
      expect(said(result)).toMatch(
        new RegExp(
          `a ${way} half hitch, .* ${knot.tying.id} .* on the ${way === 'forward' ? 'left' : 'right'} of ${knot.held.id};`,
        ),
      );
      expect(result.knots).toBe(knots.length);
    }
  });

  it.each(knots.map(named))('%s, ended the other way', (_, knot, first) => {
    const [known, unknown] = judged(put(first + 1, 1, otherWay(first + 1)));
    expect(wrong(known)).toEqual([placed('wrong-kind', knot)]);
    expect(said(known)).toContain(`where the pattern has a ${knot.kind} one`);
    const exchanges = knot.kind === 'forward' || knot.kind === 'backward';
    expect(said(known)).toMatch(exchanges ? /It leaves the two strings/ : /It exchanges the two/);
    // Without the pattern it shows where the strings are needed next, which is nowhere at the end.
    if (knot.row + 1 === pattern.rows) expect(unknown.ok).toBe(true);
    else expect(wrong(unknown)).toEqual([placed('wrong-kind', knot)]);
  });

  it.each(knots.map(named))('%s, its halves tied by two strings', (_, knot, first) => {
    const other = plan.hung.find((id) => id !== knot.tying.id && id !== knot.held.id);
    for (const result of judged(put(first + 1, 1, changed(first + 1, { tying: other })))) {
      expect(wrong(result)).toEqual([placed('wrong-string', knot)]);
      expect(said(result)).toContain(`is tied by ${knot.tying.id}, but the second by ${other}`);
    }
  });

  it.each(knots.map(named))('%s, its halves tied onto two strings', (_, knot, first) => {
    const other = plan.hung.find((id) => id !== knot.tying.id && id !== knot.held.id);
    for (const result of judged(put(first + 1, 1, changed(first + 1, { held: other })))) {
      expect(wrong(result)).toEqual([placed('wrong-string', knot)]);
      expect(said(result)).toContain(`is tied onto ${knot.held.id}, but the second onto ${other}`);
    }
  });

  it.each(knots.map(named))(
    '%s, its first half tied by the held string itself',
    (_, knot, first) => {
      for (const result of judged(put(first, 1, changed(first, { tying: knot.held.id })))) {
        expect(wrong(result)).toEqual([placed('wrong-string', knot)]);
        expect(said(result)).toContain(`${knot.held.id} is to be tied onto ${knot.held.id}`);
        expect(result.knots).toBe(knots.length);
      }
    },
  );

  it.each(knots.map(named))('%s, its first half tied onto the tying string', (_, knot, first) => {
    for (const result of judged(put(first, 1, changed(first, { held: knot.tying.id })))) {
      expect(wrong(result)).toEqual([placed('wrong-string', knot)]);
      expect(result.knots).toBe(knots.length);
    }
  });

  it.each(knots.map(named))('%s, tied by a string that is not in the table', (_, knot, first) => {
    const half = (i: number) => changed(i, { tying: 'S9' });
    for (const result of judged(put(first, 2, half(first), half(first + 1)))) {
      expect(wrong(result)).toEqual([placed('wrong-string', knot)]);
      expect(said(result)).toMatch(/^a string that is not in the table is to be tied onto /);
    }
  });

  it.each(knots.map(named))('%s, tied onto a string that is not in the table', (_, knot, first) => {
    const half = (i: number) => changed(i, { held: 'S9' });
    for (const result of judged(put(first, 2, half(first), half(first + 1)))) {
      expect(wrong(result)).toEqual([placed('wrong-string', knot)]);
    }
  });

  it.each(knots.map(named))('a turn before the %s', (_, knot, first) => {
    for (const result of judged(put(first, 0, { do: 'turn' }))) {
      expect(wrong(result)).toEqual([placed('turn-too-soon', knot)]);
      expect(said(result)).toContain(`${knot.tying.id} onto ${knot.held.id}`);
      expect(result.order).toEqual(simulateDiagonal(pattern).order);
    }
  });

  it.each(knots.map(named))('a turn in the middle of the %s', (_, knot, first) => {
    for (const result of judged(put(first + 1, 0, { do: 'turn' }))) {
      expect(wrong(result)).toEqual([placed('turn-too-soon', knot)]);
      expect(said(result)).toContain(
        `${knot.tying.id} has tied only one half onto ${knot.held.id}`,
      );
    }
  });

  it.each(turns.map((i, row) => [row + 1, i] as const))('no turn after row %i', (row, i) => {
    for (const result of judged(put(i, 1))) {
      expect(wrong(result)).toEqual([`turn-missing at ${row},-,-`]);
      const next = knots.find((knot) => knot.row === row) as DiagonalKnotReading;
      expect(said(result)).toContain(
        `${next.tying.id} is tied onto ${next.held.id}, which is a knot of row ${row + 1}`,
      );
      expect(said(result)).toContain(`no turn after row ${row}:`);
      expect(result.order).toEqual(simulateDiagonal(pattern).order);
    }
  });

  it('two strings that are in no place of the row, and of none', () => {
    const half = { do: 'halfHitch', way: 'forward', tying: 'S9', held: 'S8' } as const;
    for (const result of judged(put(0, 0, half, half))) {
      expect(wrong(result)).toEqual(['wrong-string at 1,-,-']);
      expect(said(result)).toContain('no place of this row that is still free has either');
      expect(result.knots).toBe(knots.length);
    }
  });

  it('a knot where none is wanted', () => {
    // Row 4 leaves the place of S1 and S4 bare.
    const half = { do: 'halfHitch', way: 'forward', tying: 'S1', held: 'S4' } as const;
    const [known, unknown] = judged(put(17, 0, half, half));
    expect(wrong(known)).toEqual(['knot-not-wanted at 4,2,4']);
    expect(said(known)).toContain('S1 is tied onto S4 where no knot is wanted');
    expect(wrong(unknown)[0]).toBe('knot-not-wanted at 4,2,4');
    expect(known.knots).toBe(knots.length + 1);
  });

  it('steps that end before the last rows', () => {
    for (const result of judged(steps.slice(0, 12))) {
      expect(wrong(result)).toEqual([
        'missing-knot at 3,2,3',
        'missing-knot at 4,1,2',
        'missing-knot at 5,1,1',
        'missing-knot at 5,2,3',
      ]);
    }
  });

  it('a half hitch at the end that stays half', () => {
    for (const result of judged(steps.slice(0, -1))) {
      expect(wrong(result)).toEqual(['half-knot at 5,2,3']);
    }
  });

  it('a row too many, of which no more is said', () => {
    const half = { do: 'halfHitch', way: 'forward', tying: 'S1', held: 'S5' } as const;
    for (const result of judged([...steps, { do: 'turn' }, half, half, { do: 'turn' }, half])) {
      expect(wrong(result)).toEqual(['row-too-many at 6,-,-']);
    }
  });

  it('a plan for another picture altogether is followed for 2,000 mistakes', () => {
    const long = readDiagonalText(
      `pattern diagonal\nb #1f6fb2 lake blue\n\nbbbb\n\n${'\\ \\\n \\\n'.repeat(1400)}`,
    );
    const bare = {
      ...picture,
      strings: 4,
      rows: 2800,
      first: 0 as const,
      cells: new Uint8Array(5600),
    };
    const none = { ...bare, cells: bare.cells.fill(BARE) };
    const notes = verifyDiagonal(planDiagonal(long), none).findings.filter(
      ({ code }) => code === 'more-findings',
    );
    expect(notes.map(({ message }) => message)).toEqual([
      'Only the first 200 of 2001 findings "knot-not-wanted" are listed.',
    ]);
    expect(notes[0]).toMatchObject({ grade: 'note', row: null, place: null, slot: null });
  });

  // Steps 2 and 3 tie S4 onto S3, in place 2 of row 1, before the knot of place 1 here.
  const laterFirst = [...steps.slice(2, 4), ...steps.slice(0, 2), ...steps.slice(4)];

  it('no slip: the knots of a row in another order', () => {
    for (const result of judged(laterFirst)) {
      expect(wrong(result)).toEqual([]);
      expect(result.kinds).toEqual(pattern.knots);
    }
  });

  it.each([
    ['tied by another string, by', { tying: 'S1' }],
    ['tied by an idle string, by', { tying: 'S5' }],
    ['tied onto another string, by', { held: 'S2' }],
  ])('the first half of a knot out of turn, %s what its second half says', (_, news) => {
    const slip = [{ ...(laterFirst[0] as Step), ...news } as Step, ...laterFirst.slice(1)];
    for (const result of judged(slip)) expect(wrong(result)).toEqual(['wrong-string at 1,2,3']);
  });

  it('a knot with a wrong string, which is taken for the first that the row lacks', () => {
    const half = { do: 'halfHitch', way: 'forward', tying: 'S2', held: 'S5' } as const;
    // In row 3 hang S2 S3, S1 S5 and S4: each string is of another place, and both are free.
    for (const result of judged(put(10, 2, half, half))) {
      expect(wrong(result)).toEqual(['wrong-string at 3,1,1']);
    }
    // With the first place tied, it can only be the second.
    for (const result of judged(put(12, 2, half, half))) {
      expect(wrong(result)).toEqual(['wrong-string at 3,2,3']);
    }
  });

  it('a knot with a string that only an earlier mistake could have put there', () => {
    // S3 and S4 have just been knotted, so that S4 would hang beside S1 had they changed places.
    const [known, unknown] = judged(
      put(5, 2, changed(5, { tying: 'S4' }), changed(6, { tying: 'S4' })),
    );
    expect(wrong(known)).toEqual(['wrong-string at 2,1,2']);
    expect(wrong(unknown)[0]).toBe('wrong-kind at 1,2,3');
    expect(said(unknown)).toBe(
      'This backward-forward knot does not exchange S4 and S3, but in row 2 S4 is to be knotted with S1, on whose side it does not hang then: one that exchanges them belongs here.',
    );
  });

  it('a knot of the row to come, tied too soon', () => {
    // S1 and S3 hang side by side after the first knot of row 1, and are a pair of row 2.
    const half = { do: 'halfHitch', way: 'backward', tying: 'S3', held: 'S1' } as const;
    for (const result of judged(put(2, 0, half, half))) {
      expect(result.ok).toBe(false);
      expect(wrong(result)[0]).toMatch(/^wrong-string at 1,2,3$/);
      expect(result.order).toEqual(simulateDiagonal(pattern).order);
    }
  });

  it('no turn, and the last knot of its row left out', () => {
    for (const result of judged(put(2, 3))) {
      expect(wrong(result)).toEqual(['turn-missing at 1,-,-', 'missing-knot at 1,2,3']);
    }
  });

  it('a knot of a row to come, after the last', () => {
    // In row 5 hang S3 S2, S5 S1 and S4, and then S2 and S5 are neighbours, as if for a row 6.
    const half = { do: 'halfHitch', way: 'backward', tying: 'S3', held: 'S5' } as const;
    for (const result of judged([...steps, half, half])) {
      expect(wrong(result)).toEqual(['wrong-string at 5,-,-']);
      expect(result.rows).toBe(5);
    }
  });

  it('the last knot of a row left out, and a knot of the next row in its place', () => {
    // The row goes on with a turn, so that this was no turn left out.
    const half = { do: 'halfHitch', way: 'backward', tying: 'S3', held: 'S1' } as const;
    for (const result of judged(put(2, 2, half, half))) {
      expect(wrong(result)).toEqual(['wrong-string at 1,2,3', 'colour-differs at 1,2,3']);
      expect(result.knots).toBe(knots.length);
    }
  });

  it('more turns at the end change nothing', () => {
    for (const result of judged([...steps, { do: 'turn' }, { do: 'turn' }])) {
      expect(wrong(result)).toEqual([]);
      expect(result.order).toEqual(simulateDiagonal(pattern).order);
    }
  });

  it('is found the same however the strings are listed', () => {
    const strings = [...plan.strings].reverse();
    const relisted = (changed: readonly Step[]): DiagonalPlan => ({
      ...plan,
      strings,
      steps: StepList.from(strings, changed),
    });
    for (const first of knots.map(({ steps: { end } }) => end - 2)) {
      for (const slip of [put(first, 2), put(first + 1, 1), put(first, 1, otherWay(first))]) {
        const { findings } = verifyDiagonal(relisted(slip), picture);
        expect(findings).toEqual(judged(slip)[1].findings);
      }
    }
  });
});

describe('a knot left out between two strings that meet again', () => {
  // The third string is in no knot, so that the first two are knotted in every second row.
  it.each([
    ['\\', '\\'],
    ['\\', '/'],
    ['>', '\\'],
    ['<', '/'],
    ['/', '<'],
    ['/', '>'],
  ])('is one finding: %s and then %s', (first, then) => {
    const met = readDiagonalText(
      `pattern diagonal\nb #1f6fb2 lake blue\no #e8742c buoy orange\n\nbob\n\n${first}\n .\n${then}\n`,
    );
    const whole = planDiagonal(met);
    const slip = { ...whole, steps: StepList.from(whole.strings, [...whole.steps].slice(2)) };
    const wanted = simulateDiagonal(met).picture;
    for (const options of [{ pattern: met }, {}]) {
      expect(wrong(verifyDiagonal(slip, wanted, options))).toEqual(['missing-knot at 1,1,1']);
    }
  });
});

describe('a row without knots', () => {
  // Row 2 has none: two turns stand side by side, and no more tell where it is.
  const gap = readDiagonalText(
    `pattern diagonal\nb #1f6fb2 lake blue\no #e8742c buoy orange\n\nbobo\n\n\\ /\n .\n/ \\\n`,
  );
  const whole = planDiagonal(gap);
  const drawn = simulateDiagonal(gap);
  const sound = [...whole.steps];
  const judge = (changed: readonly Step[]) =>
    [{ pattern: gap }, {}].map((options) =>
      verifyDiagonal(
        { ...whole, steps: StepList.from(whole.strings, changed) },
        drawn.picture,
        options,
      ),
    );

  it('is turned past twice', () => {
    expect(sound.slice(4, 6)).toEqual([{ do: 'turn' }, { do: 'turn' }]);
    for (const result of judge(sound)) expect(wrong(result)).toEqual([]);
  });

  it('may be turned past once too often', () => {
    for (const result of judge([...sound.slice(0, 4), { do: 'turn' }, ...sound.slice(4)])) {
      expect(wrong(result)).toEqual(['turn-too-soon at 3,1,1']);
      expect(result.order).toEqual(drawn.order);
    }
  });

  it('may be turned past only once', () => {
    for (const result of judge([...sound.slice(0, 4), ...sound.slice(5)])) {
      expect(wrong(result)).toEqual(['turn-missing at 2,-,-']);
      expect(result.order).toEqual(drawn.order);
    }
  });

  it('has no place for a knot', () => {
    const half = { do: 'halfHitch', way: 'forward', tying: 'S1', held: 'S4' } as const;
    expect(drawn.order.slice(4, 8)).toEqual(Uint16Array.of(1, 0, 3, 2));
    for (const result of judge([...sound.slice(0, 5), half, half, ...sound.slice(5)])) {
      expect(wrong(result)[0]).toBe('knot-not-wanted at 2,1,2');
    }
  });
});
