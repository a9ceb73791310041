import { StepListBuilder } from '../model/steplist.js';
import type { Plan } from '../plan/plan.js';
import { checkMistakes } from './check-mistake.js';
import { Maker } from './maker.js';
import { type Mistake, mistakeKey } from './mistake.js';
import { nothingSeen, type Seen } from './seen.js';
import { rowsTied, sourceOf } from './sequence.js';
import { emptyView, type RowView, viewRow } from './view.js';
import type { TiedRow } from './watch.js';
import { Written } from './written.js';

/** What a piece becomes through its maker's mistakes. */
export interface MistakenPiece {
  readonly mistakes: readonly Mistake[];
  /**
   * What was really done, by steps that the state machine can do one after another. A single half
   * hitch is not among them: it holds nothing, and the lead goes on past that string.
   */
  readonly plan: Plan;
  /** Everything that can be seen of the piece when it is done. */
  readonly seen: Seen;
  /** The row of the instructions that each row of the piece follows, from 0. */
  readonly sources: readonly number[];
}

export interface MistakenOptions {
  /** Rows knotted so far; default: all of them. */
  readonly rows?: number;
}

/**
 * Knots a plan as a maker does who makes these mistakes and goes on by the written rows without
 * noticing. docs/mistakes.md says how such a maker behaves.
 *
 * @param plan a sound plan of at most PLAN_LIMITS steps
 * @throws InputError when the plan is not sound, or a mistake does not fit it
 */
export function makeMistakes(
  plan: Plan,
  mistakes: readonly Mistake[],
  options: MistakenOptions = {},
): MistakenPiece {
  const written = new Written(plan);
  const made = withoutDoubles(mistakes);
  checkMistakes(written, made);
  const rows = Math.min(rowsTied(written.rows, made), options.rows ?? Number.POSITIVE_INFINITY);
  const record = new StepListBuilder(plan.strings, plan.steps.length + 64);
  const maker = new Maker(written, record);
  const tied: TiedRow[] = [];
  const sources: number[] = [];
  for (let row = 0; row < rows; row++) {
    const source = sourceOf(row, made);
    sources.push(source);
    tied.push(maker.tie(row, source, made));
  }
  return {
    mistakes: made,
    plan: { ...plan, rows, steps: record.finish() },
    seen: seenOf(written, tied),
    sources,
  };
}

function withoutDoubles(mistakes: readonly Mistake[]): Mistake[] {
  const keys = new Set<string>();
  return mistakes.filter((mistake) => {
    // Two rows can be left out at one place.
    if (mistake.kind === 'missing-row') return true;
    const key = mistakeKey(mistake);
    return !keys.has(key) && keys.add(key);
  });
}

export function seenOf(written: Written, tied: readonly TiedRow[]): Seen {
  const { columns } = written;
  const seen = nothingSeen(tied.length, columns, written.colours);
  const view = emptyView(columns);
  for (let row = 0; row < tied.length; row++) {
    viewRow(written, row, tied[row - 1], tied[row] as TiedRow, tied[row + 1], view);
    put(seen, row, view);
  }
  return seen;
}

function put(seen: Seen, row: number, view: RowView): void {
  seen.cells.set(view.cells, row * seen.columns);
  seen.looks.set(view.looks, row * seen.columns);
  seen.backs.set(view.backs, row * seen.columns);
  seen.knots[row] = view.knots;
  seen.edges.set(view.edges, 2 * row);
  seen.sticks.set(view.sticks, 2 * row);
}
