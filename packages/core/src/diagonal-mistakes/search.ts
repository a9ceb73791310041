import type { Comparison } from './comparison.js';
import { type DiagonalMistake, diagonalMistakeKey, isOfStart, isPlaced } from './mistake.js';
import { type Piece, soundPiece, withMistake } from './piece.js';
import { possibleAtStart, possibleInRow, possibleRows } from './possible.js';
import { Trial } from './trial.js';
import { diagonalWeightOf } from './weights.js';

/** Mistakes that together leave so many things seen unexplained. */
export interface Found {
  readonly mistakes: readonly DiagonalMistake[];
  readonly unexplained: number;
}

export interface SearchLimits {
  /** Most mistakes together. */
  readonly mistakes: number;
  /** Knots tied for trials before the search is ended. */
  readonly work: number;
}

export interface SearchResult {
  /** All that explain everything with the fewest mistakes; or else those that come near. */
  readonly found: readonly Found[];
  /** Whether everything was tried that could have been. */
  readonly complete: boolean;
}

interface Survivor {
  readonly mistake: DiagonalMistake;
  readonly differing: number;
  readonly first: number;
}

/** Mistakes taken further, at each number of mistakes: those that leave least, and those that
 * explain furthest down. */
const BREADTH = [64, 10] as const;

/** Partial explanations that are kept. */
const NEAR = 40;

/** @returns null when nothing differs */
export function searchDiagonal(
  pattern: Piece['pattern'],
  comparison: Comparison,
  limits: SearchLimits,
): SearchResult | null {
  return new Search(comparison, limits).run(soundPiece(pattern));
}

class Search {
  private work = 0;
  private cut = false;
  private readonly near: Found[] = [];

  constructor(
    private readonly comparison: Comparison,
    private readonly limits: SearchLimits,
  ) {}

  run(sound: Piece): SearchResult | null {
    const trial = new Trial(sound, this.comparison);
    if (trial.total === 0) return null;
    // A wave is all pieces with so many mistakes that are worth one more.
    let wave: { trial: Trial; mistakes: readonly DiagonalMistake[] }[] = [{ trial, mistakes: [] }];
    for (let many = 1; many <= this.limits.mistakes && wave.length > 0; many++) {
      const exact: Found[] = [];
      const next: { mistakes: readonly DiagonalMistake[]; piece: Piece; survivor: Survivor }[] = [];
      for (const { trial: at, mistakes } of wave) {
        for (const survivor of this.survivors(at)) {
          const all = together(mistakes, survivor.mistake);
          if (all === null) continue;
          if (survivor.differing === 0) exact.push({ mistakes: all, unexplained: 0 });
          else next.push({ mistakes: all, piece: at.piece, survivor });
        }
      }
      const proven = unique(exact).filter(({ mistakes }) => this.explains(sound, mistakes));
      if (proven.length > 0) return { found: proven, complete: !this.cut };
      this.keep(
        next.map(({ mistakes, survivor }) => ({ mistakes, unexplained: survivor.differing })),
      );
      wave = this.best(next, BREADTH[many - 1] ?? 0).map(({ piece, survivor, mistakes }) => ({
        trial: new Trial(withMistake(piece, survivor.mistake), this.comparison),
        mistakes,
      }));
    }
    this.near.push({ mistakes: [], unexplained: trial.total });
    const honest = this.near.filter(
      ({ mistakes, unexplained }) => this.left(sound, mistakes) === unexplained,
    );
    return { found: honest, complete: !this.cut };
  }

  /** What all mistakes together leave, knotted anew from the sound piece. */
  private left(sound: Piece, mistakes: readonly DiagonalMistake[]): number {
    return new Trial(mistakes.reduce(withMistake, sound), this.comparison).total;
  }

  private explains(sound: Piece, mistakes: readonly DiagonalMistake[]): boolean {
    return this.left(sound, mistakes) === 0;
  }

  private survivors(trial: Trial): Survivor[] {
    const survivors: Survivor[] = [];
    const before = this.work;
    for (const mistake of candidates(trial)) {
      const outcome = trial.try(mistake);
      if (outcome !== null && outcome.differing < trial.total) {
        survivors.push({ mistake, ...outcome });
      }
      this.work = before + trial.work;
      if (this.work > this.limits.work) {
        this.cut = true;
        break;
      }
    }
    return survivors;
  }

  private keep(found: readonly Found[]): void {
    this.near.push(...found);
    this.near.sort(
      (one, other) =>
        one.unexplained + 2 * one.mistakes.length - other.unexplained - 2 * other.mistakes.length,
    );
    this.near.splice(NEAR);
  }

  private best<T extends { readonly survivor: Survivor; readonly piece: Piece }>(
    all: readonly T[],
    breadth: number,
  ): T[] {
    if (breadth === 0) return [];
    const weight = new Map(
      all.map((one) => [one, diagonalWeightOf(one.survivor.mistake, one.piece)]),
    );
    const heavier = (one: T, other: T): number => (weight.get(other) ?? 0) - (weight.get(one) ?? 0);
    const least = [...all].sort(
      (one, other) => one.survivor.differing - other.survivor.differing || heavier(one, other),
    );
    const furthest = [...all].sort(
      (one, other) => other.survivor.first - one.survivor.first || heavier(one, other),
    );
    return [...new Set([...least.slice(0, breadth), ...furthest.slice(0, breadth)])];
  }
}

/** Every mistake that can bear on the first row that differs, from that row upwards. */
function* candidates(trial: Trial): Generator<DiagonalMistake> {
  const { piece, first, comparison, knotted } = trial;
  yield* possibleRows(piece, first);
  yield* possibleAtStart(piece);
  const slots = trial.differingSlots();
  const { near, last } = distances(slots, comparison.strings);
  for (let row = Math.min(first, knotted.rows - 1); row >= 0; row--) {
    const reach = first - row + 2;
    for (const mistake of possibleInRow(piece, row)) {
      const slot = piece.rows[row]?.slots[mistake.place] ?? 0;
      const rest = mistake.kind === 'one-slot-off' && mistake.span === 'rest';
      if (slots !== null && (near[slot] ?? 0) > reach && !(rest && slot < last)) continue;
      yield mistake;
    }
  }
}

/** How far each slot is from the nearest of some, and the rightmost of those. */
function distances(
  slots: readonly number[] | null,
  strings: number,
): { near: number[]; last: number } {
  const near = Array.from({ length: strings }, (_, slot) =>
    (slots ?? []).reduce((least, one) => Math.min(least, Math.abs(one - slot)), strings),
  );
  return { near, last: slots?.at(-1) ?? strings };
}

/**
 * Mistakes in the order in which `withMistake` takes them, those that move rows first; null when
 * the mistakes are not two.
 */
function together(
  mistakes: readonly DiagonalMistake[],
  more: DiagonalMistake,
): readonly DiagonalMistake[] | null {
  const moving = !isPlaced(more) && !isOfStart(more);
  if (!moving) return settled([...mistakes, more]);
  const moved: DiagonalMistake[] = [];
  for (const mistake of mistakes) {
    if (isOfStart(mistake)) {
      moved.push(mistake);
      continue;
    }
    if (more.kind === 'missing-row') {
      if (isPlaced(mistake) && mistake.row === more.row) return null;
      moved.push(mistake.row > more.row ? { ...mistake, row: mistake.row - 1 } : mistake);
    } else moved.push(mistake.row >= more.row ? { ...mistake, row: mistake.row + 1 } : mistake);
  }
  return settled([...moved, more]);
}

function settled(mistakes: readonly DiagonalMistake[]): readonly DiagonalMistake[] | null {
  const rank = (mistake: DiagonalMistake): number =>
    isOfStart(mistake) ? 1 : isPlaced(mistake) ? 2 : 0;
  const rowOf = (mistake: DiagonalMistake): number => ('row' in mistake ? mistake.row : 0);
  const sorted = [...mistakes].sort(
    (one, other) => rank(one) - rank(other) || rowOf(one) - rowOf(other),
  );
  const keys = sorted.map(diagonalMistakeKey);
  if (new Set(keys).size < keys.length) return null;
  return sorted.some((one, at) => sorted.slice(0, at).some((other) => meddles(one, other)))
    ? null
    : sorted;
}

/** Whether two mistakes in one place come to one other: a knot is left out or tied once only. */
function meddles(one: DiagonalMistake, other: DiagonalMistake): boolean {
  if (!isPlaced(one) || !isPlaced(other)) return false;
  if (one.row !== other.row || one.place !== other.place) return false;
  const all = [one.kind, other.kind];
  return one.kind === other.kind || all.includes('missing-knot') || all.includes('extra-knot');
}

function unique(found: readonly Found[]): Found[] {
  const keys = new Set<string>();
  return found.filter(({ mistakes }) => {
    const key = mistakes.map(diagonalMistakeKey).join('; ');
    return !keys.has(key) && keys.add(key);
  });
}
