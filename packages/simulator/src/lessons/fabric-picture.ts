import {
  directionOf,
  drawFabric,
  fabricGeometry,
  type Plan,
  type Verification,
  verifyPlan,
} from '@halfhitch/core';
import type { FabricShow } from './lesson.js';
import type { Trial } from './trial.js';
import type { Work } from './work.js';

/** Rows and columns round the place that is taught; more would be too small to see. */
const ROWS_AROUND = 3;
const COLUMNS_AROUND = 7;

const NO_KNOT = 255;

interface Window {
  readonly row: number;
  readonly rows: number;
  readonly column: number;
  readonly columns: number;
}

let pictures = 0;

/** The piece as it is drawn, round one knot. */
export function drawnFabric(
  work: Work,
  at: { row: number; column: number },
  caption = work.say('lesson.drawn'),
): FabricShow {
  const verification = verifyPlan(work.plan, work.chart);
  return fabricShow(work.plan, verification, at, caption, []);
}

/** The piece as it becomes, with what differs in dashed frames. */
export function trialFabric(
  trial: Trial,
  at: { row: number; column: number },
  caption: string,
): FabricShow {
  const marks = trial.verification.findings
    .filter(({ grade, row, column }) => grade !== 'note' && row !== null && column !== null)
    .map(({ row, column }) => ({ row: (row ?? 1) - 1, column: (column ?? 1) - 1 }));
  return fabricShow(trial.plan, trial.verification, at, caption, marks);
}

function fabricShow(
  plan: Plan,
  verification: Verification,
  at: { readonly row: number; readonly column: number },
  caption: string,
  marks: readonly { readonly row: number; readonly column: number }[],
): FabricShow {
  const window = windowOf(verification, at);
  const part = cropped(plan, verification, window);
  const markup = drawFabric({ ...part, title: caption, idPrefix: `hh-lesson-${pictures++}-` });
  const geometry = fabricGeometry(window.rows, window.columns);
  const frames = new Set<string>();
  for (const { row, column } of marks) {
    const cell = { row: row - window.row, column: column - window.column };
    if (cell.row < 0 || cell.row >= window.rows) continue;
    if (cell.column < 0 || cell.column >= window.columns) continue;
    const { x, y, width, height } = geometry.boxOf(cell);
    const box = `x="${x - 2}" y="${y - 2}" width="${width + 4}" height="${height + 4}" rx="5" fill="none"`;
    // A light line under the dashes, so that they show on any colour.
    frames.add(
      `<rect ${box} stroke="#ffffff" stroke-width="4.5"/><rect ${box} stroke="#8a1010" stroke-width="2.5" stroke-dasharray="6 4"/>`,
    );
  }
  return {
    what: 'fabric',
    caption,
    markup: markup.replace('</svg>', `${[...frames].join('')}</svg>`),
  };
}

function windowOf(
  { rows, columns }: Verification,
  at: { readonly row: number; readonly column: number },
): Window {
  const row = Math.max(0, at.row - ROWS_AROUND);
  const column = Math.max(0, at.column - COLUMNS_AROUND);
  return {
    row,
    rows: Math.min(rows, at.row + ROWS_AROUND + 1) - row,
    column,
    columns: Math.min(columns, at.column + COLUMNS_AROUND + 1) - column,
  };
}

function cropped(
  plan: Plan,
  whole: Verification,
  window: Window,
): { readonly plan: Plan; readonly verification: Verification } {
  const { rows, columns } = window;
  const tying = new Uint16Array(rows * columns);
  const kinds = new Uint8Array(rows * columns);
  for (let row = 0; row < rows; row++) {
    const from = (row + window.row) * whole.columns + window.column;
    tying.set(whole.tying.subarray(from, from + columns), row * columns);
    kinds.set(whole.kinds.subarray(from, from + columns), row * columns);
  }
  return {
    plan: {
      ...plan,
      rows,
      columns,
      start: directionOf(plan.start, window.row) === 'right' ? 'left' : 'right',
      hung: plan.hung.slice(window.column, window.column + columns),
    },
    verification: {
      ...whole,
      rows,
      columns,
      tying,
      kinds,
      knots: kinds.reduce((sum, kind) => sum + (kind === NO_KNOT ? 0 : 1), 0),
    },
  };
}
