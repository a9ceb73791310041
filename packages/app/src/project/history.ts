import type { Chart } from '@halfhitch/core';
import type { Project } from './project.js';

/** A change that can be taken back. */
export interface Step {
  /** What was done, for the button that takes it back: "Draw a line". */
  readonly what: string;
  /** Gives the project as it is on the other side of the step. */
  readonly cross: (project: Project) => Project;
}

/** Where few cells differ, they alone are kept, so that undoing has no limit worth naming. */
export function stepBetween(from: Project, to: Project, what: string): Step {
  const sparse = changedCells(from.chart, to.chart);
  if (sparse === null) return { what, cross: () => from };
  const { cells: _, ...outline } = from.chart;
  return {
    what,
    cross: (project) => {
      const cells = project.chart.cells.slice();
      sparse.at.forEach((index, i) => {
        cells[index] = sparse.was[i] as number;
      });
      return { ...from, chart: { ...outline, cells } };
    },
  };
}

interface SparseCells {
  readonly at: Uint32Array;
  readonly was: Uint8Array;
}

/** The cells that differ; null where keeping the whole chart costs no more. */
function changedCells(from: Chart, to: Chart): SparseCells | null {
  if (from.cells === to.cells || from.rows !== to.rows || from.columns !== to.columns) return null;
  // Five bytes for a cell that is kept by itself, one for a cell of a whole chart.
  const most = Math.floor(from.cells.length / 5);
  const at: number[] = [];
  for (let index = 0; index < from.cells.length; index++) {
    if (from.cells[index] === to.cells[index]) continue;
    if (at.length === most) return null;
    at.push(index);
  }
  return {
    at: Uint32Array.from(at),
    was: Uint8Array.from(at, (index) => from.cells[index] as number),
  };
}

/** What was done to a project, to be undone and done again. */
export class History {
  private readonly done: Step[] = [];
  private readonly undone: Step[] = [];

  get undoing(): string | null {
    return this.done.at(-1)?.what ?? null;
  }

  get redoing(): string | null {
    return this.undone.at(-1)?.what ?? null;
  }

  add(from: Project, to: Project, what: string): void {
    this.done.push(stepBetween(from, to, what));
    this.undone.length = 0;
  }

  undo(project: Project): Project {
    return History.cross(this.done, this.undone, project);
  }

  redo(project: Project): Project {
    return History.cross(this.undone, this.done, project);
  }

  private static cross(from: Step[], to: Step[], project: Project): Project {
    const step = from.pop();
    if (step === undefined) return project;
    const other = step.cross(project);
    to.push(stepBetween(project, other, step.what));
    return other;
  }
}
