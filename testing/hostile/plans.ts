import fc from 'fast-check';
import {
  type Chart,
  type DiagonalPlan,
  type Plan,
  planAlpha,
  planDiagonal,
  StepList,
  type ThreadString,
} from '../../packages/core/src/index.js';
import { anyDiagonal } from '../diagonals.js';

/** One piece of nonsense in the typed arrays of a list of steps, or in what stands beside them. */
const anySpoiling = fc.record({
  what: fc.constantFrom(
    'op' as const,
    'a' as const,
    'b' as const,
    'drop' as const,
    'double' as const,
    'repeat' as const,
    'swap' as const,
    'reverse' as const,
    'move' as const,
    'swap-rows' as const,
    'drop-row' as const,
    'double-row' as const,
    'drop-turns' as const,
    'cut' as const,
    'all-of-one' as const,
    'swap-strings' as const,
  ),
  at: fc.nat(),
  other: fc.nat(),
  long: fc.integer({ min: 1, max: 30 }),
  value: fc.oneof(
    { weight: 3, arbitrary: fc.nat(12) },
    { weight: 1, arbitrary: fc.constantFrom(0xffff, 0xfffe, 0x8000, 255, 256) },
  ),
});

export type Spoiling = typeof anySpoiling extends fc.Arbitrary<infer T> ? T : never;

/** Codes of steps as numbers, with their operands: what a StepList holds. */
type Codes = (readonly [op: number, a: number, b: number])[];

const TURN = 9;

function spoilt(codes: Codes, { what, at, other, long, value }: Spoiling, strings: number): Codes {
  if (codes.length === 0) return codes;
  const i = at % codes.length;
  const k = other % codes.length;
  const [op, a, b] = codes[i] as Codes[number];
  const put = (...news: Codes) => [...codes.slice(0, i), ...news, ...codes.slice(i + 1)];
  const stretch = codes.slice(i, i + long);
  switch (what) {
    case 'op':
      return put([value % 10, a, b]);
    case 'a':
      return put([op, value, b]);
    case 'b':
      return put([op, a, value]);
    case 'drop':
      return [...codes.slice(0, i), ...codes.slice(i + long)];
    case 'double':
      return [...codes.slice(0, i), ...stretch, ...codes.slice(i)];
    case 'repeat':
      return put(...Array.from({ length: long * 5 }, () => [op, a, b] as const));
    case 'swap': {
      const swapped = [...codes];
      swapped[i] = codes[k] as Codes[number];
      swapped[k] = [op, a, b];
      return swapped;
    }
    case 'reverse':
      return [...codes.slice(0, i), ...stretch.reverse(), ...codes.slice(i + long)];
    case 'move': {
      const rest = [...codes.slice(0, i), ...codes.slice(i + long)];
      const to = other % (rest.length + 1);
      return [...rest.slice(0, to), ...stretch, ...rest.slice(to)];
    }
    case 'swap-rows':
    case 'drop-row':
    case 'double-row': {
      const rows = inRows(codes);
      const one = at % rows.length;
      const two = other % rows.length;
      if (what === 'swap-rows') {
        [rows[one], rows[two]] = [rows[two] as Codes, rows[one] as Codes];
      } else
        rows.splice(one, 1, ...(what === 'drop-row' ? [] : ([rows[one], rows[one]] as Codes[])));
      return rows.flat();
    }
    case 'drop-turns':
      return codes.filter(([code]) => code !== TURN);
    case 'cut':
      return codes.slice(0, i);
    case 'all-of-one':
      return codes.map(() => [op, a, b] as const);
    case 'swap-strings': {
      const [one, two] = [at % strings, other % strings];
      const changed = (string: number) => (string === one ? two : string === two ? one : string);
      return codes.map(([code, x, y]) => [code, changed(x), code < 2 ? changed(y) : y] as const);
    }
  }
}

/** The steps of each row; the turn before a row belongs to it. */
function inRows(codes: Codes): Codes[] {
  const rows: Codes[] = [[]];
  for (const code of codes) {
    if (code[0] === TURN) rows.push([]);
    (rows.at(-1) as Codes).push(code);
  }
  return rows;
}

export function spoiltSteps(
  steps: StepList,
  strings: readonly ThreadString[],
  spoilings: readonly Spoiling[],
): StepList {
  const { op, a, b, length } = steps;
  let codes: Codes = Array.from(
    { length },
    (_, i) => [op[i] as number, a[i] as number, b[i] as number] as const,
  );
  for (const spoiling of spoilings) codes = spoilt(codes, spoiling, strings.length).slice(0, 3_000);
  return new StepList(
    strings,
    Uint8Array.from(codes, ([code]) => code),
    Uint16Array.from(codes, ([, first]) => first),
    Uint16Array.from(codes, ([, , second]) => second),
    codes.length,
  );
}

const KEYS = 'abcd';

/** Small charts with runs of a colour. */
export const anySmallChart: fc.Arbitrary<Chart> = fc
  .record({
    rows: fc.integer({ min: 1, max: 6 }),
    columns: fc.integer({ min: 1, max: 7 }),
    colours: fc.integer({ min: 1, max: 4 }),
    edge: fc.constantFrom('straight' as const, 'wrapped' as const),
    start: fc.constantFrom('left' as const, 'right' as const),
  })
  .chain((size) =>
    fc
      .array(fc.nat(size.colours - 1), {
        minLength: size.rows * size.columns,
        maxLength: size.rows * size.columns,
      })
      .map((cells) => ({
        name: 'Otter',
        rows: size.rows,
        columns: size.columns,
        edge: size.edge,
        start: size.start,
        colours: Array.from({ length: size.colours }, (_, i) => ({
          key: KEYS[i] as string,
          hex: `#${(i + 1).toString(16).repeat(6)}`,
          name: '',
        })),
        cells: Uint8Array.from(cells),
      })),
  );

/** Plans of which steps are nonsense, with the chart they were made for. */
export const anySpoiltPlan: fc.Arbitrary<{ readonly chart: Chart; readonly plan: Plan }> = fc
  .tuple(anySmallChart, fc.array(anySpoiling, { minLength: 1, maxLength: 6 }))
  .map(([chart, spoilings]) => {
    const plan = planAlpha(chart);
    return { chart, plan: { ...plan, steps: spoiltSteps(plan.steps, plan.strings, spoilings) } };
  });

/** The same of diagonal work. */
export const anySpoiltDiagonalPlan: fc.Arbitrary<{
  readonly pattern: Parameters<typeof planDiagonal>[0];
  readonly plan: DiagonalPlan;
}> = fc
  .tuple(
    anyDiagonal({ maxStrings: 7, maxRows: 7, bareTenths: 2 }),
    fc.array(anySpoiling, { minLength: 1, maxLength: 6 }),
  )
  .map(([pattern, spoilings]) => {
    const plan = planDiagonal(pattern);
    return { pattern, plan: { ...plan, steps: spoiltSteps(plan.steps, plan.strings, spoilings) } };
  });
