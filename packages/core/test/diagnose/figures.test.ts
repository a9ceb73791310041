import { describe, expect, it } from 'vitest';
import { MISTAKE_KINDS, type MistakeKind } from '../../src/index.js';
import { generator } from '../support/charts.js';
import {
  figureInWords,
  type Looked,
  measure,
  newFigure,
  plant,
  randomPlan,
} from '../support/planted.js';

/** Plans for each kind; the figures in docs/mistakes.md were made with 400. */
const PLANS = Number(process.env['HALFHITCH_PLANTED'] ?? 24);
const LOOKED: readonly Looked[] = ['colours', 'rows', 'everything'];

describe.each(LOOKED)('mistakes planted in random plans, %s looked at', (looked) => {
  it.each(MISTAKE_KINDS)(
    '%s is among the first three',
    (kind) => {
      const figure = newFigure();
      for (let seed = 0; seed < PLANS; seed++) {
        const plan = randomPlan(31 * seed + 7);
        const mistakes = plant(plan, [kind], generator(977 * seed + MISTAKE_KINDS.indexOf(kind)));
        if (mistakes !== null) measure(plan, mistakes, looked, figure);
      }
      console.info(`${looked}, ${kind}: ${figureInWords(figure)}`);
      expect(figure.found).toBeGreaterThanOrEqual(0.9 * figure.tried);
    },
    600_000,
  );

  it('two of any kinds are among the first three', () => {
    const figure = newFigure();
    for (let seed = 0; seed < 4 * PLANS; seed++) {
      const plan = randomPlan(31 * seed + 11);
      const next = generator(977 * seed + 5);
      const any = (): MistakeKind =>
        MISTAKE_KINDS[Math.floor(next() * MISTAKE_KINDS.length)] as MistakeKind;
      const mistakes = plant(plan, [any(), any()], next);
      if (mistakes !== null) measure(plan, mistakes, looked, figure);
    }
    console.info(`${looked}, two: ${figureInWords(figure)}`);
    expect(figure.tried).toBeGreaterThan(PLANS / 2);
    expect(figure.found).toBeGreaterThanOrEqual(0.9 * figure.tried);
  }, 600_000);
});
