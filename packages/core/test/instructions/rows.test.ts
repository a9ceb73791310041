import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Chart,
  type InstructionPart,
  instructionsText,
  instructRow,
  type Plan,
  type PlanOptions,
  PlanReader,
  planAlpha,
  type RowInstructions,
} from '../../src/index.js';
import { anyChart, anyEdge, anyStart, drawn } from '../support/charts.js';

const anyOptions: fc.Arbitrary<PlanOptions> = fc.record({ edge: anyEdge, start: anyStart });

function instruct(chart: Chart, options: PlanOptions = {}): RowInstructions[] {
  const plan = planAlpha(chart, options);
  return [...new PlanReader(plan)].map((row) => instructRow(row, plan));
}

function row(number: number, chart: Chart, options: PlanOptions = {}): RowInstructions {
  return instruct(chart, options)[number - 1] as RowInstructions;
}

function changes(instructions: RowInstructions): InstructionPart[] {
  return instructions.parts.filter((part) => part.kind === 'change');
}

/** Charts, options and a few places where a lead runs out. */
const anyPiece = fc
  .record({
    chart: anyChart({ rows: 10, columns: 10, colours: 5 }),
    options: anyOptions,
    joins: fc.array(fc.tuple(fc.nat(9), fc.nat(9)), { maxLength: 4 }),
  })
  .map(({ chart, options, joins }) => ({
    chart,
    options: {
      ...options,
      joins: joins.map(([r, c]) => ({ row: r % chart.rows, column: c % chart.columns })),
    },
  }));

describe('every row', () => {
  it('covers each knot once, in the order of knotting, and each step of the plan once', () => {
    fc.assert(
      fc.property(anyPiece, ({ chart, options }) => {
        const plan = planAlpha(chart, options);
        let step = 0;
        for (const reading of new PlanReader(plan)) {
          const { parts } = instructRow(reading, plan);
          const columns: number[] = [];
          for (const part of parts) {
            expect(part.steps.first).toBe(step);
            step = part.steps.end;
            if (part.columns === null) continue;
            const { first, last } = part.columns;
            const by = Math.sign(last - first);
            for (let c = first; ; c += by) {
              columns.push(c);
              if (c === last) break;
            }
          }
          expect(columns).toEqual(reading.knots.map((knot) => knot.column));
        }
        expect(step).toBe(plan.steps.length);
      }),
    );
  });

  it('says enough to get the drawing and the kinds back from the words alone', () => {
    fc.assert(
      fc.property(anyPiece, ({ chart, options }) => {
        const plan = planAlpha(chart, options);
        const told = readBack([...instructionsText(plan, chart)], plan);
        const planned: string[] = [];
        for (const { knots } of new PlanReader(plan)) {
          for (const knot of knots) {
            planned.push(`${knot.row + 1} ${knot.column + 1} ${knot.kind} ${knot.tying.id}`);
          }
        }
        expect(told).toEqual(planned);
      }),
    );
  });

  it('names both edge knots of every turn of straight edges', () => {
    fc.assert(
      fc.property(anyChart({ rows: 8, columns: 8, colours: 4 }), anyStart, (chart, start) => {
        const rows = instruct(chart, { edge: 'straight', start });
        for (const [index, { sentences }] of rows.entries()) {
          const second = 'the second edge knot at this turn';
          const both = 'one ended the last row, this one starts the new row';
          expect(sentences.split(second).length - 1).toBe(index === 0 ? 0 : 1);
          expect(sentences.toLowerCase().split(both).length - 1).toBe(index === 0 ? 0 : 1);
        }
      }),
    );
  });

  it('has no arrows, letter codes, or unfinished words', () => {
    fc.assert(
      fc.property(anyPiece, ({ chart, options }) => {
        for (const line of instructionsText(planAlpha(chart, options), chart)) {
          expect(line).not.toMatch(/[\u2190-\u21ff]|\b(FB|BF|fb|bf)\b|undefined|null|NaN|\[object/);
        }
      }),
    );
  });
});

/** Reads knots back from instructions: row, column, kind and lead of each, in order. */
function readBack(lines: readonly string[], plan: Plan): string[] {
  const knots: string[] = [];
  let rowNumber = 0;
  let lead = '';
  const tell = (kind: string, first: number, last: number): void => {
    for (let c = first; ; c += Math.sign(last - first)) {
      knots.push(`${rowNumber} ${c} ${kind} ${lead}`);
      if (c === last) break;
    }
  };
  for (const line of lines) {
    const heading = /^Row (\d+), from (left to right|right to left)$/.exec(line);
    if (heading) rowNumber = Number(heading[1]);
    if (!/^ {2}\d+\. /.test(line)) continue;
    const start = /Start with (\S+) .*at base string (\d+), with a (\S+) knot\./.exec(line);
    const change =
      /Colour change at base string (\d+) .*: from \S+ \(.*\) to (\S+) \(.*\), whose first knot is a (\S+) knot\./.exec(
        line,
      );
    const run = /Tie (\S+) knots on base strings (\d+) (?:to|and) (\d+) with (\S+) /.exec(line);
    const one =
      /, a (\S+) knot on base string (\d+):|Tie a (\S+) knot on base string (\d+) with/.exec(line);
    if (start) {
      lead = start[1] as string;
      tell(start[3] as string, Number(start[2]), Number(start[2]));
    } else if (change) {
      lead = change[2] as string;
      tell(change[3] as string, Number(change[1]), Number(change[1]));
    } else if (run) {
      expect(run[4]).toBe(lead);
      tell(run[1] as string, Number(run[2]), Number(run[3]));
    } else if (one) {
      tell((one[1] ?? one[3]) as string, Number(one[2] ?? one[4]), Number(one[2] ?? one[4]));
    }
  }
  expect(rowNumber).toBe(plan.rows);
  return knots;
}

describe('the cases of a colour change', () => {
  it.each([
    {
      name: 'within the row',
      chart: drawn('aaabb'),
      at: { row: 1, change: 1 },
      cases: ['within the row', 'first use of colour b'],
      says: [
        /^Lay L1 \(colour a\) aside to the left/,
        /^Add L2 \(colour b\) from behind, to the left of base string 4\. Leave a tail/,
        /^Tie the first half of this forward knot, a forward half hitch: L2 over base string 4 from left to right/,
        /^Lay L1 under L2, through the middle of this knot/,
        /^Tie the second half of this forward knot/,
        /locks L1\. Take it to the back/,
      ],
    },
    {
      name: 'after the first knot',
      chart: drawn('abbbb'),
      at: { row: 1, change: 1 },
      cases: ['after the first knot', 'first use of colour b'],
      says: [/aside/, /^Add L2/, /first half/, /through the middle/, /second half/, /locks L1/],
    },
    {
      name: 'at the last knot, the old lead not caught',
      chart: drawn('aaaab', 'bbbbb'),
      at: { row: 1, change: 1 },
      cases: ['at the last knot', 'first use of colour b'],
      says: [
        /^Add L2/,
        /^Pass L1 behind base string 5, under where this last knot comes.*Don't catch it/,
        /^Tie the first half of this forward-backward knot/,
        /^Tie the second half of this forward-backward knot.*comes back to the left of base string 5/,
      ],
    },
    {
      name: 'at the turn, the last knot looked at',
      chart: drawn('aaaa', 'bbbb'),
      at: { row: 2, change: 0 },
      cases: ['at the turn', 'first use of colour b'],
      says: [
        /^Take L1 down and behind the work\. Check that the last knot still lies level/,
        /^Turn:/,
        /^Add L2 .* to the left of base string 4/,
        /first half/,
        /second half/,
      ],
    },
    {
      name: 'at the start',
      chart: drawn('aa'),
      at: { row: 1, change: 0 },
      cases: ['first use of colour a'],
      says: [
        /^Add L1 .* to the right of base string 1\. Leave a tail/,
        /first half/,
        /second half/,
      ],
    },
    {
      name: 'a single knot of a colour',
      chart: drawn('aabaa'),
      at: { row: 1, change: 1 },
      cases: ['within the row', 'first use of colour b', 'a single knot of colour b'],
      says: [/aside/, /Add L2/, /first/, /through/, /second/, /locks/],
    },
    {
      name: 'changes at every knot',
      chart: drawn('abababab'),
      at: { row: 1, change: 1 },
      cases: [
        'after the first knot',
        'first use of colour b',
        'changes at every knot, for 7 knots',
      ],
      says: [/aside/, /Add L2/, /first/, /through/, /second/, /locks/],
    },
    {
      name: 'both at the last knot and at the turn',
      chart: drawn('aaab', 'aaaa'),
      at: { row: 1, change: 1 },
      cases: [
        'at the last knot',
        'first use of colour b',
        'a single knot of colour b',
        'the colour changes again at the turn after it',
      ],
      says: [/Add L2/, /Pass L1/, /first/, /second/],
    },
    {
      name: 'a lead coming back over a float',
      chart: drawn('aabbb', 'bbbbb', 'bbbba'),
      at: { row: 3, change: 0 },
      cases: ['at the last knot', 'the lead comes back over a float'],
      says: [
        /^Bring L1 .*since row 1 at base string 3, so its float runs over 2 rows and 2 knots: keep the float flat/,
        /Pass L2/,
        /first/,
        /second/,
      ],
    },
    {
      name: 'two knots wide',
      chart: drawn('ab', 'bb'),
      at: { row: 1, change: 1 },
      cases: ['at the last knot', 'first use of colour b', 'a piece two knots wide'],
      says: [/Add L2/, /Pass L1/, /first/, /second/],
    },
    {
      name: 'one knot wide',
      chart: drawn('a', 'b', 'b'),
      at: { row: 2, change: 0 },
      cases: ['at the turn', 'first use of colour b', 'a piece one knot wide'],
      says: [/Take L1 down/, /Turn/, /Add L2/, /first/, /second/],
    },
  ])('$name', ({ chart, at, cases, says }) => {
    const change = changes(row(at.row, chart))[at.change] as InstructionPart;
    expect(change.cases).toEqual(cases);
    expect(change.substeps).toHaveLength(says.length);
    for (const [i, wanted] of says.entries()) expect(change.substeps[i]).toMatch(wanted);
  });

  it('names a lead that runs out, and says to leave its end', () => {
    const told = row(1, drawn('aaaaa'), { joins: [{ row: 0, column: 2 }] });
    const change = changes(told)[1] as InstructionPart;
    expect(change.cases).toEqual(['within the row', 'join: L1 has run out']);
    expect(change.substeps.at(-1)).toMatch(/^L1 has run out: leave its end at the back/);
  });
});

describe('a turn', () => {
  it('takes the lead round the outside of a wrapped edge', () => {
    const turn = row(2, drawn('aaa', 'aaa'), { edge: 'wrapped' }).parts[1];
    expect(turn?.kind).toBe('turn');
    expect(turn?.text).toMatch(/Take L1 \(colour a\) round the outside of base string 3/);
  });

  it('leaves the lead on the inner side of a straight edge', () => {
    const turn = row(2, drawn('aaa', 'aaa')).parts[1];
    expect(turn?.kind).toBe('turn');
    expect(turn?.text).toMatch(/hangs to the left of base string 3/);
    expect(turn?.text).not.toMatch(/outside/);
  });
});

describe('the opening', () => {
  it('says what to hang and where row 1 starts', () => {
    const chart = drawn('aab', 'aab');
    const left = [...instructionsText(planAlpha(chart), chart)].join('\n');
    expect(left).toContain('Fasten 3 base strings');
    expect(left).toContain('It starts with L1 (colour a) just to the right of base string 1.');
    const right = [
      ...instructionsText(planAlpha(chart, { edge: 'wrapped', start: 'right' }), chart),
    ].join('\n');
    expect(right).toContain('It starts with L1 (colour b) just to the right of base string 3.');
    expect(right.indexOf('L1: colour b')).toBeLessThan(right.indexOf('L2: colour a'));
  });
});

describe('a chart whose own knots cannot be tied', () => {
  it('is told up to the row that stops it', () => {
    // Two forward knots on the first string: the lead cannot start the second row there.
    const chart: Chart = { ...drawn('aa', 'aa'), knots: Uint8Array.from([0, 0, 0, 0]) };
    const lines = [...instructionsText(planAlpha(chart), chart)];
    expect(lines.at(-1)).toMatch(/^The instructions stop here\. row 2/);
    expect(lines).toContain('Row 1, from left to right');
  });
});
