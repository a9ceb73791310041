import type {
  Diagnosis,
  EdgeTechnique,
  Mistake,
  MistakeKind,
  Plan,
  Seen,
} from '../../src/index.js';
import {
  diagnose,
  EDGE_TECHNIQUES,
  InputError,
  MISTAKE_KINDS,
  makeMistakes,
  mistakeKey,
  nothingSeen,
  planAlpha,
  possibleMistakes,
  Written,
} from '../../src/index.js';
import { rowsTied, sourceOf } from '../../src/mistakes/sequence.js';
import { drawnAtRandom, generator } from './charts.js';
import { readOrRefusal } from './refusal.js';

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

/** A random plan of 3 to 16 columns, 3 to 20 rows and 1 to 6 colours, of any technique. */
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
    edge: EDGE_TECHNIQUES[pick(0, EDGE_TECHNIQUES.length - 1)] as EdgeTechnique,
    start: next() < 0.5 ? 'left' : 'right',
  });
}

/** Every mistake that can be made in a piece that has some already, by kind. */
export function mistakesByKind(plan: Plan, made: readonly Mistake[]): Map<MistakeKind, Mistake[]> {
  const written = new Written(plan);
  const byKind = new Map<MistakeKind, Mistake[]>(MISTAKE_KINDS.map((kind) => [kind, []]));
  const rows = rowsTied(plan.rows, made);
  for (let row = 0; row < rows; row++) {
    for (const mistake of possibleMistakes(written, row, sourceOf(row, made), rows)) {
      byKind.get(mistake.kind)?.push(mistake);
    }
    if (row > 0) byKind.get('extra-row')?.push({ kind: 'extra-row', row });
    byKind.get('missing-row')?.push({ kind: 'missing-row', row });
  }
  return byKind;
}

/** One mistake of each kind asked for; null when the piece has no room for one of them. */
export function plant(
  plan: Plan,
  kinds: readonly MistakeKind[],
  next: () => number,
): Mistake[] | null {
  const made: Mistake[] = [];
  const moves = (kind: MistakeKind): number => (kind.endsWith('-row') ? 0 : 1);
  for (const kind of [...kinds].sort((one, other) => moves(one) - moves(other))) {
    const some = mistakesByKind(plan, made).get(kind) ?? [];
    const keys = made.map(mistakeKey);
    const fresh = some.filter((mistake) => !keys.includes(mistakeKey(mistake)));
    const mistake = fresh[Math.floor(next() * fresh.length)];
    if (mistake === undefined || (kind === 'missing-row' && rowsTied(plan.rows, made) < 2)) {
      return null;
    }
    made.push(mistake);
  }
  return made;
}

export interface Figure {
  tried: number;
  /** The truth is in one of the first three explanations. */
  found: number;
  /** It is in the first, and named there among the first three alternatives of its part. */
  named: number;
  /** Fewer mistakes explain the same, so that the truth is not listed. */
  fewer: number;
  /** Not to be seen: left out of `tried`. */
  invisible: number;
  /** Ways that look alike in the explanation with the truth, smallest first. */
  sizes: number[];
}

export function newFigure(): Figure {
  return { tried: 0, found: 0, named: 0, fewer: 0, invisible: 0, sizes: [] };
}

/** Plants mistakes, looks, diagnoses, and counts. */
export function measure(
  plan: Plan,
  mistakes: readonly Mistake[],
  looked: Looked,
  figure: Figure,
): void {
  const seen = lookedAt(makeMistakes(plan, mistakes).seen, looked);
  const without = [[], ...(mistakes.length === 2 ? mistakes.map((one) => [one]) : [])];
  for (const fewer of without) {
    // A mistake may fit only a piece that the other one has made longer or shorter.
    const piece = readOrRefusal(() => makeMistakes(plan, fewer, { rows: seen.rows }));
    if (piece instanceof InputError) continue;
    if (!looksTheSame(lookedAt(piece.seen, looked), seen)) continue;
    figure.invisible++;
    return;
  }
  figure.tried++;
  const diagnoses = diagnose(plan, seen);
  const place = diagnoses.slice(0, 3).findIndex((one) => holds(one, mistakes));
  if (place < 0) {
    if ((diagnoses[0]?.mistakes ?? 9) < mistakes.length) figure.fewer++;
    return;
  }
  figure.found++;
  const { parts } = diagnoses[place] as Diagnosis;
  const short = { parts: parts.map((part) => ({ alternatives: part.alternatives.slice(0, 3) })) };
  if (place === 0 && holds({ ...(diagnoses[0] as Diagnosis), ...short }, mistakes)) figure.named++;
  figure.sizes.push(parts.reduce((ways, part) => ways * part.alternatives.length, 1));
  figure.sizes.sort((one, other) => one - other);
}

/** Whether an explanation says just this: one alternative of each part, and nothing more. */
export function holds(diagnosis: Diagnosis, mistakes: readonly Mistake[]): boolean {
  if (diagnosis.mistakes !== mistakes.length) return false;
  const rest = new Set(mistakes.map(mistakeKey));
  for (const { alternatives } of diagnosis.parts) {
    const mine = alternatives.find((one) => one.mistakes.every((m) => rest.has(mistakeKey(m))));
    if (mine === undefined) return false;
    for (const mistake of mine.mistakes) rest.delete(mistakeKey(mistake));
  }
  return rest.size === 0;
}

export function figureInWords({ tried, found, named, fewer, invisible, sizes }: Figure): string {
  const size = (share: number): number => sizes[Math.floor(sizes.length * share)] ?? 0;
  const percent = tried === 0 ? '-' : `${((100 * found) / tried).toFixed(1)} %`;
  return `${percent} (${found}/${tried}, named ${named}, fewer ${fewer}); unseen ${invisible}; ways ${size(0.5)}, ${size(0.9)}, ${sizes.at(-1) ?? 0}`;
}
