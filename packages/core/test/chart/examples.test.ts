import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planAlpha, readChart, readPattern, readPlan, verifyPlan } from '../../src/index.js';

const FOLDER = new URL('../../../../examples/', import.meta.url);
const read = (name: string) => readChart(readFileSync(new URL(name, FOLDER)), name);
const NAMES = readdirSync(FOLDER)
  .filter((name) => /\.(txt|json|png)$/.test(name))
  .filter((name) => readPattern(readFileSync(new URL(name, FOLDER)), name).kind === 'alpha');

describe('the example charts', () => {
  it.each(NAMES)('%s knots out as drawn', (name) => {
    const { chart, notices } = read(name);
    expect(notices).toEqual([]);
    expect(verifyPlan(planAlpha(chart), chart).ok).toBe(true);
  });

  it('show a six-colour picture of 60 rows and 40 columns', () => {
    const { chart } = read('regatta.png');
    expect([chart.rows, chart.columns, chart.colours.length]).toEqual([60, 40, 6]);
  });

  it('show every case of a colour change in the otter', () => {
    const { chart } = read('otter.json');
    const { changes } = verifyPlan(planAlpha(chart), chart);
    expect([chart.rows, chart.columns, chart.colours.length]).toEqual([24, 14, 4]);
    for (const [name, count] of Object.entries(changes))
      expect({ name, count }).not.toEqual({ name, count: 0 });
    expect(Object.keys(changes)).toHaveLength(5);
  });
});

describe('the documents shown in docs/formats.md', () => {
  const docs = readFileSync(new URL('../../../../docs/formats.md', import.meta.url), 'utf8');
  const shown = [...docs.matchAll(/```(?:text|json)\n(.*?)```/gs)].map((found) => found[1] ?? '');

  it('are read, and show the same chart', () => {
    const [text, document] = shown.map((block) => new TextEncoder().encode(block));
    const fromText = readChart(text as Uint8Array, '').chart;
    const { knots, ...fromDocument } = readChart(document as Uint8Array, '').chart;
    expect(fromDocument).toEqual(fromText);
    expect(verifyPlan(planAlpha({ ...fromText, knots } as never), fromText).ok).toBe(true);
  });

  it('hold a plan that knots out as drawn', () => {
    const plan = shown.find((block) => block.includes('"halfhitch-plan"'));
    const chart = readChart(new TextEncoder().encode('b #1f6fb2\n\nbb\nbb'), '').chart;
    expect(verifyPlan(readPlan(plan ?? ''), chart).ok).toBe(true);
  });
});
