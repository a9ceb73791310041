import { describe, expect, it } from 'vitest';
import {
  type ChartColour,
  chevrons,
  DIAGONAL_MISTAKE_KINDS,
  type DiagonalMistake,
  type DiagonalPattern,
  type DiagonalSeen,
  diagnoseDiagonal,
  diagonalMistakeKey,
  diagonalStripes,
  diamonds,
  knotsAcross,
  knotsInRow,
  makeDiagonalMistakes,
  NO_KNOT,
  wave,
  zigzag,
} from '../../src/index.js';
import { generator } from '../support/charts.js';
import { everyDiagonalSlip } from '../support/diagonal-slips.js';

/** Pieces for each kind; the figures in docs/mistakes.md were made with 300. */
const PIECES = Number(process.env['HALFHITCH_PLANTED'] ?? 7);

const COLOURS: readonly ChartColour[] = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#e8702a', name: 'buoy orange' },
  { key: 'g', hex: '#4f7942', name: 'reed green' },
  { key: 'c', hex: '#f4f1e8', name: 'chalk' },
  { key: 's', hex: '#3b4650', name: 'slate' },
];

/** Any pattern of 4 to 16 strings, 4 to 24 rows and 2 to 5 colours; one place in 20 is bare. */
function anyPiece(next: () => number): DiagonalPattern {
  const pick = (from: number, to: number): number => from + Math.floor(next() * (to - from + 1));
  const lattice = { strings: pick(4, 16), rows: pick(4, 24), first: pick(0, 1) as 0 | 1 };
  const colours = COLOURS.slice(0, pick(2, 5));
  const across = knotsAcross(lattice);
  const knots = new Uint8Array(lattice.rows * across).fill(NO_KNOT);
  for (let row = 0; row < lattice.rows; row++) {
    for (let place = 0; place < knotsInRow(lattice, row); place++) {
      knots[row * across + place] = next() < 0.05 ? NO_KNOT : pick(0, 3);
    }
  }
  const start = Uint8Array.from({ length: lattice.strings }, () => pick(0, colours.length - 1));
  return { ...lattice, name: '', colours, start, knots };
}

/** A known piece of 8 to 16 strings in 2 colours, up to 32 rows. */
function knownPiece(next: () => number): DiagonalPattern {
  const pieces = [diagonalStripes, chevrons, diamonds, zigzag, wave];
  const strings = 8 + Math.floor(next() * 9);
  const piece = pieces[Math.floor(next() * pieces.length)] as (typeof pieces)[number];
  return piece({ strings, colours: COLOURS.slice(0, 2), rows: Math.min(32, 2 * strings) });
}

type Looked = 'colours' | 'half the colours' | 'everything';

function lookedAt(seen: DiagonalSeen, looked: Looked, next: () => number): DiagonalSeen {
  if (looked === 'everything') return seen;
  const { looks: _, hanging: __, ...rest } = seen;
  if (looked === 'colours') return rest;
  return { ...rest, cells: seen.cells.map((cell) => (next() < 0.5 ? 254 : cell)) };
}

interface Figure {
  tried: number;
  unseen: number;
  found: number;
  named: number;
  readonly alike: number[];
}

function measure(
  pattern: DiagonalPattern,
  planted: readonly DiagonalMistake[],
  looked: Looked,
  next: () => number,
  figure: Figure,
): void {
  const seen = lookedAt(makeDiagonalMistakes(pattern, planted).seen, looked, next);
  const { ok, explanations } = diagnoseDiagonal(pattern, seen);
  const [first] = explanations;
  // What looks like no mistake, or like fewer, is no fault of the search.
  if (ok || (first !== undefined && first.unexplained === 0 && first.mistakes < planted.length)) {
    figure.unseen++;
    return;
  }
  figure.tried++;
  const keyOf = (mistakes: readonly DiagonalMistake[]): string =>
    mistakes.map(diagonalMistakeKey).sort().join('; ');
  const at = first?.alternatives.findIndex(({ mistakes }) => keyOf(mistakes) === keyOf(planted));
  if (at === undefined || at < 0) return;
  figure.found++;
  if (at < 3) figure.named++;
  figure.alike.push(first?.alternatives.length ?? 0);
}

function inWords({ tried, unseen, found, named, alike }: Figure): string {
  const share = (number: number): string =>
    tried === 0 ? '-' : `${((100 * number) / tried).toFixed(0)} %`;
  alike.sort((one, other) => one - other);
  const at = (part: number): number => alike[Math.floor(part * (alike.length - 1))] ?? 0;
  return `found ${share(found)}, named ${share(named)}, alike ${at(0.5)}, ${at(0.9)}, ${at(1)}; unseen ${unseen} of ${tried + unseen}`;
}

const newFigure = (): Figure => ({ tried: 0, unseen: 0, found: 0, named: 0, alike: [] });

const SORTS = { 'random pieces': anyPiece, 'known pieces': knownPiece } as const;
const CASES = (Object.keys(SORTS) as (keyof typeof SORTS)[]).flatMap((sort) =>
  (['colours', 'half the colours', 'everything'] as const).map((looked) => [sort, looked] as const),
);

describe.each(CASES)('mistakes planted in %s, %s looked at', (sort, looked) => {
  it('are all found singly', () => {
    for (const [at, kind] of DIAGONAL_MISTAKE_KINDS.entries()) {
      const figure = newFigure();
      for (let seed = 0; seed < PIECES; seed++) {
        const next = generator(977 * seed + at);
        const pattern = SORTS[sort](next);
        const slips = everyDiagonalSlip(pattern).filter((slip) => slip.kind === kind);
        const slip = slips[Math.floor(next() * slips.length)];
        if (slip !== undefined) measure(pattern, [slip], looked, next, figure);
      }
      console.info(`${sort}, ${looked}, ${kind}: ${inWords(figure)}`);
      expect(figure.found).toBe(figure.tried);
    }
  }, 600_000);

  it('are found in pairs, but for a few', () => {
    const figure = newFigure();
    for (let seed = 0; seed < PIECES; seed++) {
      const next = generator(31 * seed + 5);
      const pattern = SORTS[sort](next);
      const slips = everyDiagonalSlip(pattern).filter(({ kind }) => !kind.endsWith('row'));
      const two = [0, 1].map(() => slips[Math.floor(next() * slips.length)] as DiagonalMistake);
      if (new Set(two.map(diagonalMistakeKey)).size === 2) {
        measure(pattern, two, looked, next, figure);
      }
    }
    console.info(`${sort}, ${looked}, two: ${inWords(figure)}`);
    expect(figure.found).toBeGreaterThanOrEqual(0.7 * figure.tried);
  }, 600_000);
});
