import type { AlphaProject, DiagonalProject, Project } from './project.js';

/** A change that can be taken back. */
export interface Step {
  /** What was done, for the button that takes it back: "Draw a line". */
  readonly what: string;
  /** Gives the project as it is on the other side of the step. */
  readonly cross: (project: Project) => Project;
}

/** Where few cells differ, they alone are kept, so that undoing has no limit worth naming. */
function stepBetween(from: Project, to: Project, what: string): Step {
  if (from.kind === 'alpha' && to.kind === 'alpha') return alphaStep(from, to, what);
  if (from.kind === 'diagonal' && to.kind === 'diagonal') return diagonalStep(from, to, what);
  return { what, cross: () => from };
}

function alphaStep(from: AlphaProject, to: AlphaProject, what: string): Step {
  const { cells, ...outline } = from.chart;
  const back = bytesBack(cells, to.chart.cells);
  return {
    what,
    cross: (project) =>
      project.kind === 'alpha'
        ? { ...from, chart: { ...outline, cells: back(project.chart.cells) } }
        : project,
  };
}

function diagonalStep(from: DiagonalProject, to: DiagonalProject, what: string): Step {
  const { knots, ...outline } = from.pattern;
  const back = bytesBack(knots, to.pattern.knots);
  const drawnBack = pictureBack(from.wanted, to.wanted);
  return {
    what,
    cross: (project) =>
      project.kind === 'diagonal'
        ? {
            ...from,
            pattern: { ...outline, knots: back(project.pattern.knots) },
            wanted: drawnBack(project.wanted),
          }
        : project,
  };
}

type Wanted = DiagonalProject['wanted'];

function pictureBack(was: Wanted, is: Wanted): (now: Wanted) => Wanted {
  if (was === null || is === null) return () => was;
  const { cells, ...outline } = was;
  const back = bytesBack(cells, is.cells);
  return (now) => (now === null ? was : { ...outline, cells: back(now.cells) });
}

/**
 * Gives bytes as they were from as they are. Of those that differ in few places only these are
 * kept: five bytes each, and one for each byte of the whole.
 */
function bytesBack(was: Uint8Array, is: Uint8Array): (now: Uint8Array) => Uint8Array {
  if (was === is) return (now) => now;
  const sparse = was.length === is.length ? differing(was, is) : null;
  if (sparse === null) return () => was;
  const { at, before } = sparse;
  return (now) => {
    const bytes = now.slice();
    at.forEach((index, i) => {
      bytes[index] = before[i] as number;
    });
    return bytes;
  };
}

/** Null where keeping all of them costs no more. */
function differing(
  was: Uint8Array,
  is: Uint8Array,
): { readonly at: Uint32Array; readonly before: Uint8Array } | null {
  const most = Math.floor(was.length / 5);
  const at: number[] = [];
  for (let index = 0; index < was.length; index++) {
    if (was[index] === is[index]) continue;
    if (at.length === most) return null;
    at.push(index);
  }
  return {
    at: Uint32Array.from(at),
    before: Uint8Array.from(at, (index) => was[index] as number),
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
