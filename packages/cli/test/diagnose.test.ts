import { writeFileSync } from 'node:fs';
import {
  type Mistake,
  makeMistakes,
  type Plan,
  planAlpha,
  printPlan,
  printTextChart,
} from '@halfhitch/core';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { pngOf, waveBand } from './support/charts.js';
import { halfhitch, isPlainRefusal, useTool } from './support/halfhitch.js';

const { path } = useTool();
const band = waveBand(8, 7, 3);
const plan: Plan = planAlpha(band);

beforeAll(() => {
  writeFileSync(path('plan.json'), [...printPlan(plan)].join(''));
  writeFileSync(path('band.png'), pngOf(band));
});

/** The piece with a mistake, as a text file of its rows. */
function rowsSeen(mistake: Mistake): string {
  const { seen } = makeMistakes(plan, [mistake]);
  const keys = 'abcdefgh';
  const legend = seen.colours.map((hex, at) => `${keys[at]} ${hex}`);
  const rows: string[] = [];
  for (let row = 0; row < seen.rows; row++) {
    const cells = [...seen.cells.slice(row * seen.columns, (row + 1) * seen.columns)];
    rows.push(cells.map((cell) => (cell < 0 ? '.' : keys[cell])).join(''));
  }
  return `${[...legend, '', ...rows].join('\n')}\n`;
}

describe('diagnose', () => {
  it('ends with 0 when nothing differs, from a picture or from text', async () => {
    for (const seen of [pngOf(band), printTextChart(band)]) {
      const { code, stdout, stderr } = await halfhitch(
        ['diagnose', path('plan.json'), '--seen', '-'],
        { input: seen },
      );
      expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
      expect(stdout).toContain('Nothing differs');
    }
  });

  it('finds the mistake and says how to undo it', async () => {
    const mistake: Mistake = { kind: 'missing-knot', row: 2, column: 3 };
    const { code, stdout } = await halfhitch(['diagnose', path('plan.json'), '--seen', '-'], {
      input: rowsSeen(mistake),
    });
    expect(code).toBe(1);
    expect(stdout).toContain('The knot on base string 4 in row 3 is left out.');
    expect(stdout).toMatch(/Undo \d+ knots, the last one first, back to base string 4 in row 3\./);
  });

  it('answers as JSON with stable keys', async () => {
    const { code, stdout } = await halfhitch(
      ['diagnose', path('plan.json'), '--seen', '-', '--json'],
      { input: 'row 3 right edge pulls in\n' },
    );
    expect(code).toBe(1);
    const answer = JSON.parse(stdout);
    expect(Object.keys(answer)).toEqual(['ok', 'rows', 'columns', 'explanations']);
    const [first] = answer.explanations;
    expect(Object.keys(first)).toEqual(['mistakes', 'unexplained', 'likelihood', 'undo', 'parts']);
    expect(Object.keys(first.undo)).toEqual(['row', 'column', 'knots', 'steps']);
    const [alternative] = first.parts[0].alternatives;
    expect(Object.keys(alternative)).toEqual(['likelihood', 'undo', 'mistakes']);
    expect(Object.keys(alternative.mistakes[0])).toEqual([
      'kind',
      'row',
      'column',
      'tied',
      'lead',
      'span',
      'lacking',
      'message',
      'goOn',
    ]);
    expect(alternative.mistakes[0].kind).toBe('single-edge-knot');
  });

  it('refuses what it cannot use', async () => {
    const seen = (input: string, words = ['diagnose', path('plan.json'), '--seen', '-']) =>
      halfhitch(words, { input });
    expect(isPlainRefusal(await seen('row 3 is odd\n'))).toBe(true);
    expect(isPlainRefusal(await seen('x #123456\n\nxxx\n'))).toBe(true);
    expect(isPlainRefusal(await seen('', ['diagnose', '-', '--seen', '-']))).toBe(true);
    expect(isPlainRefusal(await seen('{}', ['diagnose', '-', '--seen', path('band.png')]))).toBe(
      true,
    );
    expect((await halfhitch(['diagnose', path('plan.json')])).code).toBe(2);
  });

  it('refuses a plan that cannot be followed', async () => {
    const text = [...printPlan(plan)].join('').replace('"kind": "forward"', '"kind": "backward"');
    const outcome = await halfhitch(['diagnose', '-', '--seen', path('band.png')], { input: text });
    expect(isPlainRefusal(outcome)).toBe(true);
    expect(outcome.stderr).toContain('Verify the plan');
  });

  it('ends in an answer or a refusal, whatever was seen', async () => {
    const lines = fc.array(
      fc.oneof(
        fc.constantFrom('row 2 knots 3', 'row 1 colours off', '', 'x #1f6fb2', '???????', 'x.x'),
        fc.string({ maxLength: 12 }),
      ),
      { maxLength: 8 },
    );
    await fc.assert(
      fc.asyncProperty(lines, async (some) => {
        const outcome = await halfhitch(['diagnose', path('plan.json'), '--seen', '-'], {
          input: some.join('\n'),
        });
        const answered = (outcome.code === 0 || outcome.code === 1) && outcome.stderr === '';
        expect(answered || isPlainRefusal(outcome), JSON.stringify(outcome)).toBe(true);
      }),
      { numRuns: 20 },
    );
  }, 120_000);
});
