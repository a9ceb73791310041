import type { DiagonalPattern } from '../diagonal/pattern.js';
import { InputError } from '../errors.js';
import { Comparison } from './comparison.js';
import { type DiagonalMistake, diagonalMistakeKey, isPlaced } from './mistake.js';
import { knotPiece, type Piece, soundPiece, withMistake } from './piece.js';
import { type Found, searchDiagonal } from './search.js';
import type { DiagonalSeen } from './seen.js';
import { type DiagonalQuestion, tellApart } from './tell-apart.js';
import { type DiagonalUndo, diagonalUndo } from './undo.js';
import { DIAGONAL_WEIGHT_OF_ALL, diagonalWeightOf } from './weights.js';

/** Stated limits of what can be diagnosed. */
export const DIAGONAL_DIAGNOSE_LIMITS = {
  /** Places of the rows seen: 100 strings and 2,400 rows, say. */
  knots: 120_000,
  /** Mistakes in one explanation. */
  mistakes: 3,
  /** Knots tied in trials, so that what fits no explanation does not take for ever. */
  tried: 60_000_000,
} as const;

export interface DiagonalDiagnoseOptions {
  /** Most mistakes in one explanation, up to 3. Default: 2. */
  readonly mistakes?: number;
  /** Most explanations listed. Default: 8. */
  readonly explanations?: number;
}

/** One way in which a part of what was seen can have come about. */
export interface DiagonalAlternative {
  readonly mistakes: readonly DiagonalMistake[];
  /** Share of all alternatives of the explanation, from 0 to 1. */
  readonly likelihood: number;
  readonly undo: DiagonalUndo;
}

/** One explanation: exactly one of its alternatives, which look the same as far as was looked. */
export interface DiagonalExplanation {
  /** How many mistakes it takes; 0 when no mistake explains any of what differs. */
  readonly mistakes: number;
  /** Things seen that it leaves unexplained. */
  readonly unexplained: number;
  /** Share of all explanations listed, from 0 to 1. */
  readonly likelihood: number;
  /** Most likely first. */
  readonly alternatives: readonly DiagonalAlternative[];
  /** Where to look to tell the alternatives apart; null when nothing does, or there is only one. */
  readonly question: DiagonalQuestion | null;
}

export interface DiagonalDiagnosis {
  /** Whether nothing that was seen differs from the pattern. */
  readonly ok: boolean;
  /** Things seen that differ from the pattern. */
  readonly differing: number;
  /** Most likely first; empty when nothing differs. */
  readonly explanations: readonly DiagonalExplanation[];
  /**
   * Whether all single mistakes were tried, and pairs as far as they go one by one. A search that
   * ran into its limit may have missed some.
   */
  readonly complete: boolean;
}

const MISTAKES = 2;
const EXPLANATIONS = 8;

/**
 * Lists the fewest mistakes that explain what a maker sees of a diagonal piece, most likely
 * first. Every explanation has been knotted anew and looks as was seen, apart from what it says
 * it leaves unexplained.
 *
 * @throws InputError when what was seen does not fit the pattern
 */
export function diagnoseDiagonal(
  pattern: DiagonalPattern,
  seen: DiagonalSeen,
  options: DiagonalDiagnoseOptions = {},
): DiagonalDiagnosis {
  const comparison = new Comparison(pattern, seen);
  if (comparison.rows * comparison.across > DIAGONAL_DIAGNOSE_LIMITS.knots) {
    throw new InputError(
      'too-many-rows-seen',
      `The rows seen hold ${comparison.rows * comparison.across} knots.`,
      {},
      `At most ${DIAGONAL_DIAGNOSE_LIMITS.knots} can be looked into at once; stop a little below the first row that looks wrong.`,
    );
  }
  const result = searchDiagonal(pattern, comparison, {
    mistakes: Math.min(options.mistakes ?? MISTAKES, DIAGONAL_DIAGNOSE_LIMITS.mistakes),
    work: DIAGONAL_DIAGNOSE_LIMITS.tried,
  });
  if (result === null) return { ok: true, differing: 0, explanations: [], complete: true };
  const judge = new Judge(pattern, comparison);
  const explanations = judge.explanations(result.found, options.explanations ?? EXPLANATIONS);
  return { ok: false, differing: judge.differing, explanations, complete: result.complete };
}

/** Weighs what was found, and puts together what looks alike. */
class Judge {
  readonly differing: number;
  private readonly sound: Piece;

  constructor(
    private readonly pattern: DiagonalPattern,
    private readonly comparison: Comparison,
  ) {
    this.sound = soundPiece(pattern);
    this.differing = this.lookOf([]).differing;
  }

  explanations(found: readonly Found[], most: number): DiagonalExplanation[] {
    const groups = new Map<string, { found: Found; weight: number }[]>();
    for (const one of found) {
      // What explains everything looks alike wherever was looked, by that alone.
      const key =
        one.unexplained === 0
          ? `all ${one.mistakes.length}`
          : `${one.mistakes.length} ${this.lookOf(one.mistakes).seen}`;
      const group = groups.get(key) ?? [];
      group.push({ found: one, weight: this.weightOf(one.mistakes) });
      groups.set(key, group);
    }
    const listed = [...groups.values()]
      .map((group) => ({
        group: group.sort(heavierFirst),
        mistakes: group[0]?.found.mistakes.length ?? 0,
        unexplained: group[0]?.found.unexplained ?? 0,
        weight: group.reduce((sum, { weight }) => sum + weight, 0),
      }))
      .sort(
        (one, other) =>
          one.unexplained + 2 * one.mistakes - other.unexplained - 2 * other.mistakes ||
          other.weight - one.weight,
      )
      .slice(0, most);
    const sum = listed.reduce(
      (total, { weight, unexplained }) => total + fading(weight, unexplained),
      0,
    );
    return listed.map(({ group, mistakes, unexplained, weight }) => ({
      mistakes,
      unexplained,
      likelihood: fading(weight, unexplained) / sum,
      alternatives:
        mistakes === 0
          ? []
          : group.map((one) => ({
              mistakes: one.found.mistakes,
              likelihood: one.weight / weight,
              undo: this.undoOf(one.found.mistakes),
            })),
      question: tellApart(
        this.comparison,
        this.pattern,
        group.map((one) => one.found.mistakes),
        group.map((one) => one.weight / weight),
      ),
    }));
  }

  private pieceOf(mistakes: readonly DiagonalMistake[]): Piece {
    return mistakes.reduce(withMistake, this.sound);
  }

  private undoOf(mistakes: readonly DiagonalMistake[]): DiagonalUndo {
    return diagonalUndo(this.pieceOf(mistakes), mistakes, this.comparison.rows);
  }

  private weightOf(mistakes: readonly DiagonalMistake[]): number {
    const rowsMoved = mistakes
      .filter((mistake) => !isPlaced(mistake))
      .reduce(withMistake, this.sound);
    return mistakes.reduce(
      (weight, mistake) => (weight * diagonalWeightOf(mistake, rowsMoved)) / DIAGONAL_WEIGHT_OF_ALL,
      1,
    );
  }

  /** How a piece looks where it was looked at. */
  private lookOf(mistakes: readonly DiagonalMistake[]): { seen: string; differing: number } {
    const { comparison } = this;
    const piece = this.pieceOf(mistakes);
    const { cells, rows, order } = knotPiece(piece, comparison.rows);
    const { across, strings } = comparison;
    let seen = '';
    let differing = 0;
    for (let row = 0; row < comparison.rows; row++) {
      for (let place = 0; place < across; place++) {
        const cell = row < rows ? (cells[row * across + place] as number) : 255;
        const colour = cell === 255 ? 255 : (comparison.alike[cell] as number);
        const knot = row < rows ? (piece.rows[row]?.knots[place] as number) : 255;
        const differs =
          comparison.colourDiffers(row, place, colour) + comparison.lookDiffers(row, place, knot);
        differing += differs;
        if (differs > 0) seen += `${row} ${place} ${colour} ${knot}; `;
      }
    }
    for (let slot = 0; slot < strings; slot++) {
      const string = order[rows * strings + slot] as number;
      const colour = comparison.alike[piece.start[string] as number] as number;
      const differs = comparison.hangingDiffers(slot, colour);
      differing += differs;
      if (differs > 0) seen += `${slot} ${colour}; `;
    }
    return { seen, differing };
  }
}

/** What each thing left unexplained takes away: a rough measure. */
function fading(weight: number, unexplained: number): number {
  return weight * 0.01 ** Math.min(unexplained, 20);
}

function heavierFirst(
  one: { found: Found; weight: number },
  other: { found: Found; weight: number },
): number {
  if (one.weight !== other.weight) return other.weight - one.weight;
  const keyOf = ({ found }: { found: Found }): string =>
    found.mistakes.map(diagonalMistakeKey).join('; ');
  return keyOf(one) < keyOf(other) ? -1 : 1;
}
