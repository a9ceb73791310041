import type { Chart } from '../chart/chart.js';
import { LONG_FLOAT } from '../verify/verify.js';
import { countOf } from './count.js';
import { type Effort, effortOf, type KnottingChoice, type ProvenEffort } from './effort.js';
import type { Idea } from './idea.js';
import { EASIER_DEFAULTS, type EasierOptions } from './options.js';
import { isWorthwhile } from './rank.js';
import { Stints } from './stints.js';
import { type CellEdit, type Gain, rowsOf, type Suggestion, withCells } from './suggestion.js';
import { rowsTouched } from './window.js';

/** Proves ideas, as many as the work allows. */
export class Prover {
  readonly stints: Stints;
  private left: number;
  private readonly used: Uint32Array;

  constructor(
    private readonly chart: Chart,
    private readonly choice: KnottingChoice,
    private readonly options: EasierOptions,
    private readonly whole: ProvenEffort,
  ) {
    this.stints = new Stints(chart, choice.start);
    this.left = options.work ?? EASIER_DEFAULTS.work;
    this.used = new Uint32Array(chart.colours.length);
    for (const colour of chart.cells) this.used[colour] = (this.used[colour] as number) + 1;
  }

  get isSpent(): boolean {
    return this.left <= 0;
  }

  /** The suggestion with what it is found to gain; null when it is not worth it, or harms. */
  prove({ kind, edits, choice, ofShape }: Idea): Suggestion | null {
    const { chart, options } = this;
    const rows =
      edits.length === 0 ? { first: 0, end: chart.rows } : rowsTouched(chart, this.stints, edits);
    const isWhole = rows.end - rows.first === chart.rows;
    const part = isWhole ? chart : rowsOf(chart, rows.first, rows.end);
    const changed = withCells(
      part,
      edits.map((edit) => ({ ...edit, row: edit.row - rows.first })),
    );
    if (!this.seemsWorthwhile(part, changed, choice)) return null;
    const before = isWhole ? this.whole : effortOf(part, this.choice, options);
    const after = effortOf(changed, choice, options);
    this.left -= part.cells.length * (isWhole ? 1 : 2);
    if (!before.ok || !after.ok || after.weak > before.weak) return null;
    const gain = { ...difference(before.effort, after.effort), leads: this.leadsSaved(edits) };
    return isWorthwhile(gain) ? { kind, cells: edits, choice, ofShape, gain, rows } : null;
  }

  /** Counting is quick, and spares planning what is no good. */
  private seemsWorthwhile(part: Chart, changed: Chart, choice: KnottingChoice): boolean {
    const longFloat = this.options.longFloat ?? LONG_FLOAT;
    const before = countOf(part, this.choice.start, longFloat);
    const after = countOf(changed, choice.start, longFloat);
    return isWorthwhile({
      changes: before.changes - after.changes,
      edgeChanges: before.edgeChanges - after.edgeChanges,
      floatKnots: before.floatKnots - after.floatKnots,
      longFloats: before.longFloats - after.longFloats,
    });
  }

  /** Colours that are used nowhere any more, less those that were not. */
  private leadsSaved(edits: readonly CellEdit[]): number {
    const used = this.used.slice();
    for (const { from, to } of edits) {
      used[from] = (used[from] as number) - 1;
      used[to] = (used[to] as number) + 1;
    }
    const leads = (counts: Uint32Array): number => counts.filter((count) => count > 0).length;
    return leads(this.used) - leads(used);
  }
}

function difference(before: Effort, after: Effort): Gain {
  return {
    changes: before.changes - after.changes,
    edgeChanges: before.edgeChanges - after.edgeChanges,
    leads: before.leads - after.leads,
    floats: before.floats - after.floats,
    // Sums of roots differ in their last digits by what was summed.
    floatKnots: Math.round((before.floatKnots - after.floatKnots) * 1e6) / 1e6,
    longFloats: before.longFloats - after.longFloats,
    seconds: before.seconds - after.seconds,
  };
}
