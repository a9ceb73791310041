import { type Mistake, mistakeKey } from '../mistakes/mistake.js';
import type { Written } from '../mistakes/written.js';
import type { Comparison } from './comparison.js';
import type { Piece, Workshop } from './piece.js';
import { movedRows, suspects } from './suspects.js';
import { Tallier, type Tally } from './tally.js';

/** One thing that went wrong, in every way that looks the same. */
export interface FoundPart {
  readonly alternatives: readonly (readonly Mistake[])[];
}

/** An explanation: a piece, and the parts of what went wrong in it. */
export interface Found {
  readonly piece: Piece;
  readonly parts: readonly FoundPart[];
  readonly tally: Tally;
}

export interface SearchOptions {
  /** Most mistakes in one explanation. */
  readonly most: number;
  /** Explanations followed up at each number of mistakes. */
  readonly breadth: number;
  /** Knots tied in pieces tried, as the workshop counts them; when they are used up, what has been found is all there is. */
  readonly work: number;
}

/** Knots tied in looking for the places of a row too many or too few. */
const KNOTS_FOR_MOVED_ROWS = 400_000;
const MOST_MOVED_ROWS = 200;

interface Branch {
  readonly alternatives: Mistake[];
  readonly tally: Tally;
}

/**
 * Looks for the fewest mistakes that make the piece look as it was seen; failing that, for some
 * that come near, or none at all when none comes nearer. The piece is read in
 * the order of knotting: whatever explains the first difference lies at it or shortly before it,
 * and what is left is looked into in the same way.
 */
export function search(
  written: Written,
  workshop: Workshop,
  comparison: Comparison,
  options: SearchOptions,
): Found[] {
  const piece = workshop.sound;
  let level: Found[] = [
    { piece, parts: [], tally: new Tallier(workshop, comparison, piece, 0).own },
  ];
  if ((level[0] as Found).tally.total === 0) return level;
  const met = new Set<string>();
  const partial: Found[] = [...level];
  for (let mistakes = 1; mistakes <= options.most; mistakes++) {
    const next: Found[] = [];
    for (const found of level) {
      if (workshop.work > options.work) break;
      for (const branch of branches(written, workshop, comparison, found, options)) {
        const first = branch.alternatives[0] as Mistake;
        const made = [...found.piece.mistakes, first];
        const name = made.map(mistakeKey).sort().join(',');
        if (met.has(name)) continue;
        met.add(name);
        const alternatives = branch.alternatives.map((mistake) => [mistake]);
        next.push({
          piece: workshop.with(found.piece, first),
          parts: [...found.parts, { alternatives }],
          tally: branch.tally,
        });
      }
    }
    const exact = next.filter(({ tally }) => tally.total === 0);
    if (exact.length > 0) return exact;
    level = best(next, options.breadth);
    partial.push(...level);
    if (level.length === 0) break;
  }
  const [untouched] = partial as [Found, ...Found[]];
  const better = partial.filter(({ tally }) => tally.total < untouched.tally.total);
  const price = ({ tally, parts }: Found): number => tally.total + 2 * parts.length;
  // More mistakes that explain no more explain nothing.
  const needed = better.filter(
    ({ parts, tally }) =>
      !better.some(
        (other) => other.parts.length < parts.length && other.tally.total <= tally.total,
      ),
  );
  needed.sort((one, other) => price(one) - price(other));
  return needed.length === 0 ? [untouched] : needed.slice(0, options.breadth);
}

/** Those that get furthest, and those that leave least. */
function best<T extends { readonly tally: Tally }>(all: T[], breadth: number): T[] {
  if (all.length <= breadth) return all;
  const kept = new Set(all.sort(byProgress).slice(0, Math.ceil((breadth * 2) / 3)));
  for (const one of all.sort((a, b) => a.tally.total - b.tally.total)) {
    if (kept.size >= breadth) break;
    kept.add(one);
  }
  return [...kept];
}

function byProgress(one: { readonly tally: Tally }, other: { readonly tally: Tally }): number {
  const [a, b] = [one.tally, other.tally];
  if (a.row !== b.row) return a.row < b.row ? 1 : -1;
  return b.order - a.order || a.total - b.total;
}

/** The ways on from an explanation: one more mistake each. */
function branches(
  written: Written,
  workshop: Workshop,
  comparison: Comparison,
  found: Found,
  options: SearchOptions,
): Branch[] {
  const { piece } = found;
  const tallier = new Tallier(workshop, comparison, piece, 0);
  const { row, order, key } = tallier.own;
  if (row === Number.POSITIVE_INFINITY) return [];
  const groups = new Map<string, { alternatives: Mistake[]; tally: Tally }>();
  const made = new Set(piece.mistakes.map(mistakeKey));
  const take = (mistake: Mistake, tally: Tally | null): void => {
    if (tally === null || tally.key === key) return;
    const group = groups.get(tally.key);
    if (group === undefined) groups.set(tally.key, { alternatives: [mistake], tally });
    else group.alternatives.push(mistake);
  };
  for (const mistake of suspects(written, piece.mistakes, row, order)) {
    if (workshop.work > options.work) break;
    if (made.has(mistakeKey(mistake))) continue;
    take(mistake, tallier.of(workshop.change(piece, mistake)));
  }
  const knots = comparison.seen.rows * written.columns;
  const most = Math.max(4, Math.min(MOST_MOVED_ROWS, Math.floor(KNOTS_FOR_MOVED_ROWS / knots)));
  for (const kind of ['extra-row', 'missing-row'] as const) {
    let tried = 0;
    for (const mistake of movedRows(written, piece.mistakes, kind, row)) {
      // Two rows can be left out at one place, but no row can be the first repetition twice.
      if (kind === 'extra-row' && made.has(mistakeKey(mistake))) continue;
      const tally = tallier.of(workshop.change(piece, mistake), row);
      if (tally === null || ++tried > most) break;
      take(mistake, tally);
    }
  }
  return chosen([...groups.values()], row);
}

const CLEAR = 4;
const UNCLEAR = 14;

/** Where the first difference is explained whole, other ways on are hardly worth following. */
function chosen(all: Branch[], row: number): Branch[] {
  const clear = all.filter(({ tally }) => tally.total === 0 || tally.row > row + 1);
  const rest = all.filter((branch) => !clear.includes(branch));
  if (clear.length === 0) return best(rest, UNCLEAR);
  return [...best(clear, CLEAR), ...best(rest, CLEAR)];
}
