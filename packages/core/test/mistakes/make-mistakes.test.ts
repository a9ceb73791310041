import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  Cursor,
  Edge,
  InputError,
  Look,
  MISTAKE_KINDS,
  type Mistake,
  type MistakeKind,
  makeMistakes,
  planAlpha,
  type Seen,
  Sight,
  Stick,
  verifyPlan,
} from '../../src/index.js';
import { anyChart, anyEdge, anyStart, drawn, generator } from '../support/charts.js';
import { looksTheSame, plant, randomPlan } from '../support/planted.js';

const chart = drawn('aabbc', 'aabbc', 'aabbc', 'ccbba', 'ccaaa');
const plan = planAlpha(chart);

function rowOf(seen: Seen, row: number): string {
  return [...seen.cells.slice(row * seen.columns, (row + 1) * seen.columns)]
    .map((cell) => (cell === Sight.bare ? '.' : 'abc'[cell]))
    .join('');
}

/** The third row, knotted from left to right, and its knots, with a mistake made. */
function third(mistake: Mistake): { row: string; knots: number; looks: number[]; seen: Seen } {
  const { seen } = makeMistakes(plan, [mistake]);
  return {
    row: rowOf(seen, 2),
    knots: seen.knots[2] as number,
    looks: [...seen.looks.slice(10, 15)],
    seen,
  };
}

describe('a piece knotted with mistakes', () => {
  it('is the plan itself, step by step, when there are none', () => {
    const joined = fc.array(fc.nat(), { maxLength: 3 });
    const size = { columns: 12, rows: 12 };
    fc.assert(
      fc.property(anyChart(size), anyEdge, anyStart, joined, (any, edge, start, cells) => {
        const joins = cells.map((n) => ({ row: n % any.rows, column: (n >>> 8) % any.columns }));
        const sound = planAlpha(any, { edge, start, joins });
        const { plan: done, seen } = makeMistakes(sound, []);
        expect([...done.steps]).toEqual([...sound.steps]);
        const { tying } = verifyPlan(sound, any);
        expect([...seen.cells].map((cell) => seen.colours[cell])).toEqual(
          [...tying].map((string) => sound.strings[string]?.colour),
        );
      }),
    );
  });

  it('is made of steps that the state machine can do', () => {
    for (let seed = 0; seed < 150; seed++) {
      const sound = randomPlan(seed);
      const next = generator(seed + 1);
      const kinds = [0, 1, 2].map(
        () => MISTAKE_KINDS[Math.floor(next() * MISTAKE_KINDS.length)] as MistakeKind,
      );
      const mistakes = plant(sound, kinds, next);
      if (mistakes === null) continue;
      const { plan: done } = makeMistakes(sound, mistakes);
      const cursor = new Cursor(done.steps, done.hung);
      expect(cursor.seek(done.steps.length)).toBe(done.steps.length);
    }
  });

  it('shows what the verifier, too, finds in its steps', () => {
    for (let seed = 0; seed < 150; seed++) {
      const sound = randomPlan(seed);
      const kind = (
        ['missing-knot', 'wrong-lead', 'early-change', 'late-change', 'long-run'] as const
      )[seed % 5] as MistakeKind;
      const mistakes = plant(sound, [kind], generator(seed));
      if (mistakes === null) continue;
      const { plan: done, seen } = makeMistakes(sound, mistakes);
      const blank = {
        name: '',
        rows: done.rows,
        columns: done.columns,
        colours: [{ key: 'x', hex: '#000000', name: '' }],
        cells: new Uint8Array(done.rows * done.columns),
      };
      const { tying } = verifyPlan(done, blank);
      expect([...tying].map((string) => done.strings[string]?.colour)).toEqual(
        [...seen.cells].map((cell) => (cell < 0 ? undefined : seen.colours[cell])),
      );
    }
  });

  it('looks the same at both ends of each turn', () => {
    for (let seed = 0; seed < 100; seed++) {
      const sound = randomPlan(seed);
      const mistakes = plant(sound, [MISTAKE_KINDS[seed % 16] as MistakeKind], generator(seed));
      if (mistakes === null) continue;
      const { seen } = makeMistakes(sound, mistakes);
      for (let row = 0; row + 1 < seen.rows; row++) {
        const side = (sound.start === 'left') === (row % 2 === 0) ? 1 : 0;
        expect(seen.edges[2 * row + side]).toBe(seen.edges[2 * row + 2 + side]);
      }
    }
  });
});

describe('what each mistake makes of a row', () => {
  const at = { row: 2, column: 1 };
  const { forward, forwardBackward, backwardForward, two, none, half } = Look;

  it.each<[Mistake, string, number]>([
    [{ kind: 'skipped-string', ...at }, 'a.abb', 4],
    [{ kind: 'missing-knot', ...at }, 'a.bbc', 4],
    // The second knot on the string is the next one: blue comes one column early.
    [{ kind: 'doubled-knot', ...at }, 'abbcc', 6],
    [{ kind: 'half-knot', ...at }, 'aabbc', 4],
    [{ kind: 'wrong-lead', ...at, lead: 'L3', span: 'knot' }, 'acbbc', 5],
    [{ kind: 'wrong-lead', row: 2, column: 2, lead: 'L1', span: 'run' }, 'aaaac', 5],
    [{ kind: 'early-change', ...at }, 'abbbc', 5],
    [{ kind: 'short-run', ...at }, 'abbcc', 5],
    [{ kind: 'late-change', row: 2, column: 2 }, 'aaabc', 5],
    [{ kind: 'long-run', row: 2, column: 2 }, 'aaabb', 5],
    [{ kind: 'missing-row', row: 2 }, 'ccbba', 5],
    [{ kind: 'extra-row', row: 2 }, 'aabbc', 5],
    [{ kind: 'wrong-kind', ...at, tied: 'forward-backward' }, 'aabbc', 5],
  ])('%j', (mistake, row, knots) => {
    expect(third(mistake)).toMatchObject({ row, knots });
  });

  it('shows single, double and missing knots, and other kinds', () => {
    expect(third({ kind: 'half-knot', ...at }).looks[1]).toBe(half);
    expect(third({ kind: 'doubled-knot', ...at }).looks[1]).toBe(two);
    expect(third({ kind: 'missing-knot', ...at }).looks).toEqual([
      backwardForward,
      none,
      forward,
      forward,
      forwardBackward,
    ]);
    const looks = third({ kind: 'wrong-kind', ...at, tied: 'backward' }).looks;
    expect(looks[1]).toBe(Look.backward);
  });

  it('pulls in at a turn with one edge knot, whichever of the two it is', () => {
    const [end, start] = (['end', 'start'] as const).map(
      (lacking) => makeMistakes(plan, [{ kind: 'single-edge-knot', row: 3, lacking }]).seen,
    ) as [Seen, Seen];
    // Rows 4 and 5 meet in one colour: nobody can tell which knot is missing.
    expect(looksTheSame(end, start)).toBe(true);
    expect(end.edges[6]).toBe(Edge.in);
    expect(end.edges[8]).toBe(Edge.in);
    expect(end.knots[4]).toBe(4);
  });

  it('steps out where the lead goes round the outside', () => {
    const { seen } = makeMistakes(plan, [{ kind: 'other-edge', row: 2 }]);
    expect(seen.edges[5]).toBe(Edge.out);
    expect(seen.edges[4]).toBe(Edge.straight);
    const wrong = makeMistakes(plan, [
      { kind: 'wrong-kind', row: 2, column: 4, tied: 'forward' },
    ]).seen;
    expect(wrong.edges[5]).toBe(Edge.out);
  });

  it('has a lead sticking out where it was caught at an edge', () => {
    const { seen } = makeMistakes(plan, [{ kind: 'caught-at-edge', row: 2, column: 4 }]);
    expect(seen.sticks[5]).toBe(Stick.yes);
    expect([...seen.sticks].filter((stick) => stick === Stick.yes)).toHaveLength(1);
  });
});

describe('mistakes that do not fit', () => {
  it.each<Mistake>([
    { kind: 'missing-knot', row: 5, column: 0 },
    { kind: 'missing-knot', row: 0, column: 5 },
    { kind: 'missing-knot', row: -1, column: 0 },
    { kind: 'half-knot', row: 0.5, column: 0 },
    { kind: 'extra-row', row: 0 },
    { kind: 'other-edge', row: 4 },
    { kind: 'wrong-lead', row: 0, column: 0, lead: 'B1', span: 'knot' },
    { kind: 'nonsense' as 'half-knot', row: 0, column: 0 },
  ])('%j is refused', (mistake) => {
    expect(() => makeMistakes(plan, [mistake])).toThrow(InputError);
  });
});
