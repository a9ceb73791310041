import { describe, expect, it } from 'vitest';
import {
  ANY_COLOUR,
  BARE,
  type DiagonalFinding,
  type DiagonalPattern,
  planDiagonal,
  readDiagonalText,
  type Step,
  StepList,
  simulateDiagonal,
  verifyDiagonal,
} from '../../../src/index.js';
import { refusal } from '../../support/refusal.js';

const HEAD = 'pattern diagonal\nb #1f6fb2 lake blue\no #e8742c buoy orange\n\n';
/** Four strings; each row exchanges its pairs, so the colours cross. */
const CROSS = readDiagonalText(`${HEAD}bboo\n\n\\ \\\n \\\n\\ \\\n \\\n`);
const pictureOf = (pattern: DiagonalPattern) => simulateDiagonal(pattern).picture;

const half = (way: 'forward' | 'backward', tying: number, held: number): Step => ({
  do: 'halfHitch',
  way,
  tying: `S${tying}`,
  held: `S${held}`,
});

interface Judged {
  readonly steps: (steps: Step[]) => Step[];
  readonly known?: boolean;
}

/** The wrong findings of a plan whose steps were changed. */
function judge({ steps, known = true }: Judged): DiagonalFinding[] {
  const plan = planDiagonal(CROSS);
  const changed = StepList.from(plan.strings, steps([...plan.steps]));
  const options = known ? { pattern: CROSS } : {};
  const { findings } = verifyDiagonal({ ...plan, steps: changed }, pictureOf(CROSS), options);
  return findings.filter(({ grade }) => grade === 'wrong');
}

const without = (from: number, count: number) => (steps: Step[]) => [
  ...steps.slice(0, from),
  ...steps.slice(from + count),
];
const put =
  (at: number, count: number, ...more: Step[]) =>
  (steps: Step[]) => [...steps.slice(0, at), ...more, ...steps.slice(at + count)];

// Steps 0-3: row 1, two knots; 4: turn; 5-6: row 2; 7: turn; 8-11: row 3; 12: turn; 13-14: row 4.
describe('findings of diagonal plans', () => {
  const cases: [string, Judged, Partial<DiagonalFinding>][] = [
    [
      'a knot left out',
      { steps: without(2, 2) },
      { code: 'missing-knot', row: 1, place: 2, slot: 3 },
    ],
    ['a half left out', { steps: without(3, 1) }, { code: 'half-knot', row: 1, place: 2, slot: 3 }],
    [
      'the other way in the second half',
      { steps: put(1, 1, half('backward', 1, 2)) },
      { code: 'wrong-kind', row: 1, place: 1, slot: 1 },
    ],
    [
      'the other way in the first half',
      { steps: put(0, 1, half('backward', 1, 2)) },
      { code: 'wrong-kind', row: 1, place: 1, slot: 1 },
    ],
    [
      'a knot twice',
      { steps: put(2, 0, half('forward', 1, 2), half('forward', 1, 2)) },
      { code: 'doubled-knot', row: 1, place: 1, slot: 1 },
    ],
    [
      'a knot onto a string too far away',
      { steps: put(2, 2, half('forward', 3, 1), half('forward', 3, 1)) },
      { code: 'wrong-string', row: 1, place: 2, slot: 3 },
    ],
    [
      'a second half onto another string',
      { steps: put(1, 1, half('forward', 1, 4)) },
      { code: 'wrong-string', row: 1, place: 1, slot: 1 },
    ],
    ['a turn left out', { steps: without(4, 1) }, { code: 'turn-missing', row: 1, place: null }],
    [
      'a turn in the middle of a row',
      { steps: put(2, 0, { do: 'turn' }) },
      { code: 'turn-too-soon', row: 1, place: 2, slot: 3 },
    ],
    [
      'a turn in the middle of a knot',
      { steps: put(1, 0, { do: 'turn' }) },
      { code: 'turn-too-soon', row: 1, place: 1, slot: 1 },
    ],
    [
      'a row too many',
      { steps: put(15, 0, { do: 'turn' }, half('forward', 1, 2)) },
      { code: 'row-too-many', row: 5, place: null },
    ],
    [
      'a step of alpha work',
      { steps: put(5, 0, { do: 'park', string: 'S1', route: 'behind' }) },
      { code: 'step-cannot-be-done', row: 2, place: null },
    ],
  ];

  it.each(cases)('%s: found once, where it is made', (_, judged, finding) => {
    const found = judge(judged);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject(finding);
    expect(found[0]?.message).toMatch(/^[A-Z].*\.$/s);
  });

  it.each(cases.filter(([name]) => !name.startsWith('the other way in the second')))(
    '%s: found without the pattern too',
    (_, judged, { code, row }) => {
      const found = judge({ ...judged, known: false });
      expect(found).toHaveLength(1);
      expect(found[0]).toMatchObject({ code, row });
    },
  );

  it('blames an earlier knot when its strings are needed on the other sides', () => {
    const found = judge({ steps: put(1, 1, half('backward', 1, 2)), known: false });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ code: 'wrong-kind', row: 1, place: 1, slot: 1 });
    expect(found[0]?.message).toContain(
      'does not exchange S1 and S2, but in row 2 S1 is to be knotted with S4',
    );
  });

  it('tells colours that differ, knots not wanted, and strings hung in another colour', () => {
    const plan = planDiagonal(CROSS);
    const picture = pictureOf(CROSS);
    const cells = picture.cells.slice();
    cells[0] = 1;
    cells[1] = BARE;
    cells[2] = ANY_COLOUR;
    const { ok, findings } = verifyDiagonal(plan, { ...picture, cells });
    expect(ok).toBe(false);
    expect(findings).toMatchObject([
      { code: 'colour-differs', row: 1, place: 1, slot: 1 },
      { code: 'knot-not-wanted', row: 1, place: 2, slot: 3 },
    ]);
    expect(findings[0]?.message).toBe(
      'The knot shows lake blue (#1f6fb2), the colour of S1, but buoy orange (#e8742c) is wanted.',
    );
    const start = CROSS.start.slice();
    start[1] = 1;
    const [hung] = verifyDiagonal(plan, picture, { pattern: { ...CROSS, start } }).findings;
    expect(hung).toMatchObject({ code: 'wrong-start', row: null, place: null, slot: 2 });
  });

  it('reports a string that hangs loose for long', () => {
    const rows = ['\\ \\', ...Array.from({ length: 6 }, () => ' .\n\\ .'), ' .\n\\ \\'].join('\n');
    const pattern = readDiagonalText(`${HEAD}bboo\n\n${rows}\n`);
    const { ok, findings } = verifyDiagonal(planDiagonal(pattern), pictureOf(pattern));
    expect(ok).toBe(true);
    expect(findings.filter(({ code }) => code === 'loose-string')).toMatchObject([
      { grade: 'weak', row: 15, place: 2, slot: 4 },
      { grade: 'weak', row: 15, place: 2, slot: 3 },
    ]);
  });

  it('notes what keeps a repeat from closing, and nothing where it closes', () => {
    const note = (pattern: DiagonalPattern) =>
      verifyDiagonal(planDiagonal(pattern), pictureOf(pattern)).findings;
    expect(note(CROSS)).toMatchObject([{ grade: 'note', code: 'repeat-does-not-close' }]);
    expect(note(CROSS)[0]?.message).toContain('after 2 repeats');
    const twice = readDiagonalText(`${HEAD}bboo\n\n${'\\ \\\n \\\n'.repeat(4)}`);
    expect(note(twice)).toEqual([]);
    const odd = readDiagonalText(`${HEAD}bboo\n\n\\ \\\n \\\n\\ \\\n`);
    expect(note(odd)[0]?.message).toContain('an odd number');
  });

  it('lists at most 200 findings of one code, and counts the rest', () => {
    const rows = '\\ \\\n \\\n'.repeat(300);
    const pattern = readDiagonalText(`${HEAD}bboo\n\n${rows}`);
    const none = { ...pictureOf(pattern), cells: pictureOf(pattern).cells.map(() => BARE) };
    const { findings } = verifyDiagonal(planDiagonal(pattern), none);
    expect(findings).toHaveLength(201);
    expect(findings.at(-1)?.message).toContain('of 900 findings');
  });

  it('refuses what cannot be compared, and says why', () => {
    const plan = planDiagonal(CROSS);
    const picture = pictureOf(CROSS);
    const said = (read: () => unknown) => {
      const { code, what, remedy } = refusal(read);
      return [code, what, remedy];
    };
    const lattice = 'Give a picture and a plan of the same pattern.';
    expect(said(() => verifyDiagonal(plan, { ...picture, first: 1 }))).toEqual([
      'other-lattice',
      'The plan is for 4 strings and 4 rows from string 1 on, but the picture is for 4 strings and 4 rows from string 2 on.',
      lattice,
    ]);
    expect(said(() => verifyDiagonal(plan, { ...picture, rows: 1 }))).toEqual([
      'other-lattice',
      'The plan is for 4 strings and 4 rows from string 1 on, but the picture is for 4 strings and 1 row from string 1 on.',
      lattice,
    ]);
    const pattern = { ...CROSS, strings: 5 };
    expect(said(() => verifyDiagonal(plan, picture, { pattern }))).toEqual([
      'other-lattice',
      'The pattern is for 5 strings and 4 rows from string 1 on, but the picture is for 4 strings and 4 rows from string 1 on.',
      lattice,
    ]);
    const few = [
      { ...plan, hung: plan.hung.slice(1) },
      { ...plan, strings: [...plan.strings, { ...plan.strings[0]!, id: 'S9' }] },
    ];
    expect(few.map((one) => said(() => verifyDiagonal(one, picture)))).toEqual(
      ['lists 4 strings and hangs 3', 'lists 5 strings and hangs 4'].map((counts) => [
        'hung-strings',
        `The plan ${counts}, but its lattice is for 4.`,
        'In a diagonal pattern every string hangs from the start.',
      ]),
    );
  });

  it('names the colour that hangs in another’s place, and makes the piece wrong', () => {
    const start = CROSS.start.slice();
    start[2] = 0;
    const { ok, findings } = verifyDiagonal(planDiagonal(CROSS), pictureOf(CROSS), {
      pattern: { ...CROSS, start },
    });
    expect(ok).toBe(false);
    expect(findings).toEqual([
      {
        grade: 'wrong',
        code: 'wrong-start',
        row: null,
        place: null,
        slot: 3,
        message:
          'S3 is buoy orange (#e8742c), but the pattern hangs lake blue (#1f6fb2) in its place: every knot it ties shows the other colour.',
      },
    ]);
  });

  it('says after how many repeats colours and strings are back, by the colours that hang', () => {
    // One exchange of two strings: back after two repeats, or at once where both are of one colour.
    const note = (start: string) => {
      const pattern = readDiagonalText(`${HEAD}${start}\n\n\\\n .\n`);
      const { findings } = verifyDiagonal(planDiagonal(pattern), pictureOf(pattern));
      return findings.map(({ row, place, slot, message }) => [row, place, slot, message]);
    };
    const [[...two] = []] = note('bob');
    const [[...one] = []] = note('bbo');
    expect(two.slice(0, 3)).toEqual([null, null, null]);
    expect(two[3]).not.toEqual(one[3]);
    expect(one[3]).toMatch(/colours/);
  });

  it('counts the rows that a string hangs loose', () => {
    const loose = (bare: number, longLoose: number) => {
      const rows = `\\ \\\n${' .\n\\ .\n'.repeat(bare)} .\n\\ \\\n`;
      const pattern = readDiagonalText(`${HEAD}bboo\n\n${rows}`);
      const { findings } = verifyDiagonal(planDiagonal(pattern), pictureOf(pattern), { longLoose });
      return findings.filter(({ code }) => code === 'loose-string').map(({ message }) => message);
    };
    // Between rows 1 and 8 lie six rows.
    expect(loose(3, 7)).toEqual([]);
    expect(loose(3, 6)).toHaveLength(2);
    expect(loose(3, 6)[0]).toBe(
      'String S4 was in no knot for 7 rows before this one: that stretch hangs loose, and can catch.',
    );
  });
});
