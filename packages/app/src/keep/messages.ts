import type { Chart, DiagonalPattern } from '@halfhitch/core';
import type { Written } from '../print/written.js';
import type { Project } from '../project/project.js';
import type { KnotChoice } from '../work/messages.js';
import type { NumberedAnswer } from '../work/waiting-answers.js';
import type { NumberedAsk } from '../work/worker-desk.js';
import type { CarriedProgress } from './project-document.js';

export type KeepRequest =
  | { readonly ask: 'png'; readonly chart: Chart }
  | { readonly ask: 'svg'; readonly chart: Chart; readonly choice: KnotChoice }
  | { readonly ask: 'diagonal-svg'; readonly pattern: DiagonalPattern }
  | { readonly ask: 'model'; readonly chart: Chart; readonly choice: KnotChoice }
  | {
      readonly ask: 'project';
      readonly project: Project;
      readonly progress: CarriedProgress | null;
    }
  /** What print sheets say in words; rows from 0, the end not included. */
  | {
      readonly ask: 'written';
      readonly chart: Chart;
      readonly choice: KnotChoice;
      readonly rows: { readonly first: number; readonly end: number };
    }
  /** A project's document, read from a file. */
  | { readonly ask: 'read-project'; readonly bytes: Uint8Array; readonly fileName: string }
  /** The chart's document inside a picture or page of ours, as it stands there. */
  | { readonly ask: 'read-embedded'; readonly bytes: Uint8Array; readonly fileName: string };

export interface KeepAnswers {
  png: Uint8Array<ArrayBuffer>;
  svg: string;
  'diagonal-svg': string;
  model: Uint8Array<ArrayBuffer>;
  project: string;
  written: Written;
  'read-project': {
    readonly project: Project;
    readonly progress: CarriedProgress | null;
    readonly notices: readonly string[];
  };
  'read-embedded': string;
}

export type KeepAsk = NumberedAsk<KeepRequest>;
export type KeepAnswer = NumberedAnswer<KeepAnswers[keyof KeepAnswers]>;
