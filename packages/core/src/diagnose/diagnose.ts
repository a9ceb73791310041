import { InputError } from '../errors.js';
import type { Mistake } from '../mistakes/mistake.js';
import { kindAt } from '../mistakes/script.js';
import type { Seen } from '../mistakes/seen.js';
import { sourceOf } from '../mistakes/sequence.js';
import { Written } from '../mistakes/written.js';
import { startSide } from '../model/knot.js';
import type { Plan } from '../plan/plan.js';
import { Comparison } from './comparison.js';
import type { Alternative, Diagnosis, DiagnosisPart, Undo } from './diagnosis.js';
import { settleParts } from './joint.js';
import { Workshop } from './piece.js';
import { type Found, search } from './search.js';
import { earlier, undoOf } from './undo.js';
import { UNEXPLAINED, WEIGHT_OF_ALL, weightOf } from './weights.js';

/** Stated limits of what can be diagnosed. */
export const DIAGNOSE_LIMITS = {
  /** Knots of the rows seen: a piece 100 knots wide and 1,200 rows long, say. */
  knots: 120_000,
  /** Mistakes in one explanation. */
  mistakes: 6,
  /**
   * Knots tied in pieces tried, so that what fits no explanation does not take for ever; wide
   * pieces use them up faster. A piece 40 knots wide and 60 rows long stays below it.
   */
  tried: 8_000_000,
} as const;

export interface DiagnoseOptions {
  /** Most mistakes in one explanation, up to 6. Default: 4. */
  readonly mistakes?: number;
  /** Most explanations listed. Default: 8. */
  readonly explanations?: number;
}

const MISTAKES = 4;
const EXPLANATIONS = 8;
const BREADTH = 24;

/**
 * Lists the fewest mistakes that explain what a maker sees of a piece, most likely first; nothing
 * when it looks as the plan says. Every explanation is knotted by the state machine and looks as
 * was seen, apart from what it says it leaves unexplained; one without parts says that no mistake
 * explains any of it.
 *
 * @param plan a sound plan
 * @throws InputError when the plan is not sound or what was seen does not fit it
 */
export function diagnose(plan: Plan, seen: Seen, options: DiagnoseOptions = {}): Diagnosis[] {
  check(plan, seen);
  const written = new Written(plan);
  const workshop = new Workshop(written, seen.rows);
  const comparison = new Comparison(written, seen);
  const most = Math.min(options.mistakes ?? MISTAKES, DIAGNOSE_LIMITS.mistakes);
  const found = search(written, workshop, comparison, {
    most,
    breadth: BREADTH,
    work: DIAGNOSE_LIMITS.tried,
  }).filter(({ parts }) => parts.length > 0);
  const judge = new Judge(written, workshop, comparison);
  const weighed = found.map((one) => judge.weigh(one));
  const fewest = (one: Weighed): number => one.unexplained + 2 * one.mistakes;
  weighed.sort((one, other) => fewest(one) - fewest(other) || other.weight - one.weight);
  const listed = weighed.slice(0, options.explanations ?? EXPLANATIONS);
  const sum = listed.reduce((total, { weight }) => total + weight, 0);
  return listed.map(({ weight, ...rest }) => ({
    ...rest,
    likelihood: sum > 0 ? weight / sum : 1 / listed.length,
  }));
}

function check(plan: Plan, seen: Seen): void {
  if (seen.columns !== plan.columns) {
    throw new InputError(
      'other-width',
      `The rows seen are ${seen.columns} knots wide, but the plan is ${plan.columns} wide.`,
      {},
      'Write one character for each base string, with ? where you did not look.',
    );
  }
  if (seen.rows * seen.columns > DIAGNOSE_LIMITS.knots) {
    throw new InputError(
      'too-many-rows-seen',
      `The rows seen hold ${seen.rows * seen.columns} knots.`,
      {},
      `At most ${DIAGNOSE_LIMITS.knots} can be looked into at once; stop a little below the first row that looks wrong.`,
    );
  }
}

interface Weighed extends Omit<Diagnosis, 'likelihood'> {
  readonly weight: number;
}

/** Puts explanations into the form in which they are told. */
class Judge {
  constructor(
    private readonly written: Written,
    private readonly workshop: Workshop,
    private readonly comparison: Comparison,
  ) {}

  weigh(found: Found): Weighed {
    const { written, workshop } = this;
    const settled = settleParts(workshop, this.comparison, found);
    const parts: DiagnosisPart[] = [];
    let weight = UNEXPLAINED ** found.tally.total;
    let undo: Undo | null = null;
    for (const part of settled) {
      const alternatives = part.alternatives.map((mistakes) => ({
        mistakes,
        weight: mistakes.reduce((product, mistake) => product * this.weightOf(mistake), 1),
        undo: this.undo(found, mistakes),
      }));
      const sum = alternatives.reduce((total, one) => total + one.weight, 0);
      alternatives.sort((one, other) => other.weight - one.weight);
      weight *= sum;
      for (const one of alternatives)
        undo = undo === null ? one.undo : earlier(written, undo, one.undo);
      parts.push({
        alternatives: alternatives.map(
          (one): Alternative => ({
            mistakes: one.mistakes,
            likelihood: one.weight / sum,
            undo: one.undo,
          }),
        ),
      });
    }
    return {
      parts,
      mistakes: found.piece.mistakes.length,
      unexplained: found.tally.total,
      undo,
      weight,
    };
  }

  private undo(found: Found, mistakes: readonly Mistake[]): Undo {
    const undos = mistakes.map((mistake) => undoOf(this.written, found.piece.tied, mistake));
    return undos.reduce((one, other) => earlier(this.written, one, other));
  }

  private weightOf(mistake: Mistake): number {
    if (mistake.kind !== 'wrong-kind') return weightOf(mistake, null) / WEIGHT_OF_ALL;
    const source = sourceOf(mistake.row, []);
    const { columns, kind, rows } = this.written;
    const asked = kind[Math.min(source, rows - 1) * columns + mistake.column] as number;
    return weightOf(mistake, startSide(kindAt(asked))) / WEIGHT_OF_ALL;
  }
}
