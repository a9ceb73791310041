import type { Chart } from '@halfhitch/core';
import type { CutSettings } from '../cut/settings.js';
import type { KnotChoice } from '../work/messages.js';
import { newId } from './new-id.js';

/** A piece of work: the drawing, how it is to be knotted, and what to cut for it. */
export interface Project {
  /** Never given twice; kept when the project is copied to another device. */
  readonly id: string;
  readonly chart: Chart;
  readonly choice: KnotChoice;
  readonly cut: CutSettings;
  /** Milliseconds since 1970. */
  readonly created: number;
  readonly changed: number;
}

export type ProjectChange = Partial<Pick<Project, 'chart' | 'choice' | 'cut'>>;

export function newProject(chart: Chart, cut: CutSettings, now = Date.now()): Project {
  return {
    id: newId(),
    chart,
    choice: { edge: chart.edge ?? 'straight', start: chart.start ?? 'left' },
    cut,
    created: now,
    changed: now,
  };
}

/** What the project is called on the screen. */
export function titleOf({ chart }: Pick<Project, 'chart'>): string {
  return chart.name === '' ? 'A chart without a name' : chart.name;
}
