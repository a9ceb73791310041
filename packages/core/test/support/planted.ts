import type { Mistake, MistakeKind, Plan, Seen } from '../../src/index.js';
import { MISTAKE_KINDS, nothingSeen, planAlpha, possibleMistakes, Written } from '../../src/index.js';
import { drawnAtRandom, generator } from './charts.js';

/** How much of a piece its maker has looked at. */
export type Looked = 'colours' | 'rows' | 'everything';

export function lookedAt(seen: Seen, looked: Looked): Seen {
  if (looked === 'everything') return seen;
  const { rows, columns, colours, cells } = seen;
  const nothing = nothingSeen(rows, columns, colours);
  if (looked === 'colours') return { ...nothing, cells };
  return { ...seen, looks: nothing.looks };
}

export function looksTheSame(one: Seen, other: Seen): boolean {
  const same = (a: ArrayLike<number>, b: ArrayLike<number>): boolean =>
    a.length === b.length && Array.prototype.every.call(a, (value, i) => value === b[i]);
  return (
    one.rows === other.rows &&
    same(one.cells, other.cells) &&
    same(one.looks, other.looks) &&
    same(one.backs, other.backs) &&
    same(one.knots, other.knots) &&
    same(one.edges, other.edges) &&
    same(one.sticks, other.sticks)
  );
}

/** A random plan of 3 to 16 columns, 3 to 20 rows and 1 to 6 colours, of either technique. */
export function randomPlan(seed: number): Plan {
  const next = generator(seed);
  const pick = (from: number, to: number): number => from + Math.floor(next() * (to - from + 1));
  const chart = drawnAtRandom({
    columns: pick(3, 16),
    rows: pick(3, 20),
    colours: pick(1, 6),
    run: pick(1, 12),
    seed: pick(0, 1e9),
  });
  return planAlpha(chart, {
    edge: next() < 0.5 ? 'straight' : 'wrapped',
    start: next() < 0.5 ? 'left' : 'right',
  });
}

/** Every mistake of a kind that a sound piece has room for. */
export function allMistakes(plan: Plan): Map<MistakeKind, Mistake[]> {
  const written = new Written(plan);
  const byKind = new Map<MistakeKind, Mistake[]>(MISTAKE_KINDS.map((kind) => [kind, []]));
  for (let row = 0; row < plan.rows; row++) {
    for (const mistake of possibleMistakes(written, row, row, plan.rows)) {
      byKind.get(mistake.kind)?.push(mistake);
    }
    if (row > 0) byKind.get('extra-row')?.push({ kind: 'extra-row', row });
    byKind.get('missing-row')?.push({ kind: 'missing-row', row });
  }
  return byKind;
}
