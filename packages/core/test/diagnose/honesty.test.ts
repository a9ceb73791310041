import { describe, expect, it } from 'vitest';
import {
  diagnose,
  MISTAKE_KINDS,
  type Mistake,
  type MistakeKind,
  makeMistakes,
  nothingSeen,
  planAlpha,
} from '../../src/index.js';
import { drawn, generator } from '../support/charts.js';
import { type Looked, lookedAt, looksTheSame, plant, randomPlan } from '../support/planted.js';

const LOOKED: readonly Looked[] = ['colours', 'rows', 'everything'];

describe('explanations', () => {
  it('explain all of what was seen, in every combination of their alternatives', () => {
    let combinations = 0;
    for (let seed = 0; seed < 90; seed++) {
      const plan = randomPlan(seed);
      const next = generator(seed);
      const any = () => MISTAKE_KINDS[Math.floor(next() * MISTAKE_KINDS.length)] as MistakeKind;
      const mistakes = plant(plan, seed % 2 === 0 ? [any()] : [any(), any()], next);
      if (mistakes === null) continue;
      const looked = LOOKED[seed % 3] as Looked;
      const seen = lookedAt(makeMistakes(plan, mistakes).seen, looked);
      for (const { parts, unexplained } of diagnose(plan, seen)) {
        if (unexplained > 0) continue;
        for (const made of combined(
          parts.map(({ alternatives }) => alternatives),
          40,
        )) {
          combinations++;
          const again = lookedAt(makeMistakes(plan, made, { rows: seen.rows }).seen, looked);
          expect(looksTheSame(again, seen), JSON.stringify(made)).toBe(true);
        }
      }
    }
    expect(combinations).toBeGreaterThan(150);
  });

  it('have no more mistakes than were made', () => {
    for (let seed = 0; seed < 60; seed++) {
      const plan = randomPlan(seed + 500);
      const kind = MISTAKE_KINDS[seed % MISTAKE_KINDS.length] as MistakeKind;
      const mistakes = plant(plan, [kind], generator(seed));
      if (mistakes === null) continue;
      const { seen } = makeMistakes(plan, mistakes);
      for (const { mistakes: count, unexplained } of diagnose(plan, seen)) {
        expect(count).toBeLessThanOrEqual(1);
        expect(unexplained).toBe(0);
      }
    }
  });

  it('are none when nothing differs, or nothing was looked at', () => {
    const plan = randomPlan(3);
    expect(diagnose(plan, makeMistakes(plan, []).seen)).toEqual([]);
    expect(diagnose(plan, nothingSeen(3, plan.columns, []))).toEqual([]);
  });
});

describe('a piece knotted so far', () => {
  const plan = planAlpha(drawn('aaabbb', 'aaabbb', 'aaabbb', 'aaabbb', 'aaabbb'));

  it('is undone to the mistake, with as many knots as are tied since', () => {
    const mistake: Mistake = { kind: 'long-run', row: 1, column: 2 };
    const { seen } = makeMistakes(plan, [mistake], { rows: 3 });
    const [first] = diagnose(plan, seen);
    // Row 2 runs to the left: columns 3, 2 and 1 of it are undone, and the whole of row 3.
    expect(first?.undo).toEqual({ row: 1, column: 2, knots: 9 });
  });

  it('needs no rows when it is noted where the colours are off', () => {
    const seen = { ...nothingSeen(3, 6, []), off: [{ row: 2, towards: 'right' as const }] };
    const kinds = diagnose(plan, seen).flatMap(({ parts }) =>
      parts.flatMap(({ alternatives }) => alternatives.map(({ mistakes }) => mistakes[0]?.kind)),
    );
    expect(kinds).toContain('long-run');
    expect(kinds).not.toContain('short-run');
  });

  it('is told by its edge alone', () => {
    const seen = nothingSeen(4, 6, []);
    seen.edges[2 * 2 + 1] = 3;
    const [first] = diagnose(plan, seen);
    expect(first?.parts[0]?.alternatives[0]?.mistakes[0]?.kind).toBe('single-edge-knot');
  });

  it('is explained as far as it goes when it was looked at wrongly', () => {
    const seen = makeMistakes(plan, []).seen;
    const next = generator(1);
    seen.cells.forEach((_, cell) => {
      if (next() < 0.5) seen.cells[cell] = Math.floor(next() * 3) - 1;
    });
    const found = diagnose(plan, seen);
    expect(found.length).toBeGreaterThan(0);
    for (const { mistakes } of found) expect(mistakes).toBeLessThanOrEqual(4);
  });
});

function* combined<T extends { readonly mistakes: readonly Mistake[] }>(
  parts: readonly (readonly T[])[],
  most: number,
): Generator<Mistake[]> {
  const sizes = parts.reduce((product, part) => product * part.length, 1);
  const next = generator(sizes);
  for (let i = 0; i < Math.min(most, sizes); i++) {
    yield parts.flatMap((part) => {
      const one = sizes <= most ? part[i % part.length] : part[Math.floor(next() * part.length)];
      return [...(one?.mistakes ?? [])];
    });
  }
}
