import type { Chart, DiagonalPattern, DiagonalPicture } from '@halfhitch/core';
import type { CutSettings } from '../cut/settings.js';
import type { KnotChoice } from '../work/messages.js';
import { newId } from './new-id.js';

interface ProjectOfAnyKind {
  /** Never given twice; kept when the project is copied to another device. */
  readonly id: string;
  readonly cut: CutSettings;
  /** Milliseconds since 1970. */
  readonly created: number;
  readonly changed: number;
}

/** A piece of alpha work: the drawing, how it is to be knotted, and what to cut for it. */
export interface AlphaProject extends ProjectOfAnyKind {
  readonly kind: 'alpha';
  readonly chart: Chart;
  readonly choice: KnotChoice;
}

/** A diagonal pattern: its knots, the picture that is wanted of them, and what to cut. */
export interface DiagonalProject extends ProjectOfAnyKind {
  readonly kind: 'diagonal';
  readonly pattern: DiagonalPattern;
  /**
   * What is drawn freely and may not be knotted yet, on the lattice and in the colours of the
   * pattern; null where the picture that the knots show is all that is wanted.
   */
  readonly wanted: DiagonalPicture | null;
}

export type Project = AlphaProject | DiagonalProject;

export type AlphaChange = Partial<Pick<AlphaProject, 'chart' | 'choice' | 'cut'>>;
export type DiagonalChange = Partial<Pick<DiagonalProject, 'pattern' | 'wanted' | 'cut'>>;

export function newProject(chart: Chart, cut: CutSettings, now = Date.now()): AlphaProject {
  return {
    kind: 'alpha',
    id: newId(),
    chart,
    choice: { edge: chart.edge ?? 'straight', start: chart.start ?? 'left' },
    cut,
    created: now,
    changed: now,
  };
}

export function newDiagonalProject(
  pattern: DiagonalPattern,
  wanted: DiagonalPicture | null,
  cut: CutSettings,
  now = Date.now(),
): DiagonalProject {
  return { kind: 'diagonal', id: newId(), pattern, wanted, cut, created: now, changed: now };
}

/** The name as it was given; may be empty. */
export function nameOf(project: Project): string {
  return project.kind === 'alpha' ? project.chart.name : project.pattern.name;
}

/** The project under another name. */
export function renamed(project: Project, name: string): Project {
  return project.kind === 'alpha'
    ? { ...project, ...alphaNamed(project, name) }
    : { ...project, ...diagonalNamed(project, name) };
}

function alphaNamed({ chart }: AlphaProject, name: string): AlphaChange {
  return { chart: { ...chart, name } };
}

export function diagonalNamed({ pattern, wanted }: DiagonalProject, name: string): DiagonalChange {
  return {
    pattern: { ...pattern, name },
    wanted: wanted === null ? null : { ...wanted, name },
  };
}

/** What the project is called on the screen. */
export function titleOf(project: Project): string {
  return nameOf(project) || untitled(project.kind);
}

export function untitled(kind: Project['kind']): string {
  return kind === 'alpha' ? 'A chart without a name' : 'A pattern without a name';
}

/** Whether two projects are knotted alike: the same drawing, in the same way. */
export function knottedAlike(one: Project, other: Project): boolean {
  if (one.kind === 'diagonal') return other.kind === 'diagonal' && one.pattern === other.pattern;
  return other.kind === 'alpha' && one.chart === other.chart && one.choice === other.choice;
}
