import type { ChartColour } from '@halfhitch/core';
import type { Project } from '../project/project.js';

/** What is shown of a project in a list. */
export interface ProjectSummary {
  readonly id: string;
  /** May be empty. */
  readonly name: string;
  readonly kind: Project['kind'];
  readonly rows: number;
  /** Knots in a row of alpha work; strings of a diagonal pattern. */
  readonly across: number;
  /** Knots in all. */
  readonly knots: number;
  readonly colours: readonly ChartColour[];
  /** Milliseconds since 1970. */
  readonly created: number;
  readonly changed: number;
  /** When it was removed; null of those that were not. */
  readonly removed: number | null;
  readonly thumbnail: Thumbnail | null;
  /** Knots tied, of the chart as it was tied. */
  readonly done: number;
  /** Whether the count of knots tied cannot be read, while the project can. */
  readonly doneDamaged: boolean;
}

export interface Thumbnail {
  readonly image: Blob;
  /** The `changed` of the project it was drawn of: it is stale when that is another. */
  readonly of: number;
}

/** A project that cannot be read. It can be exported raw, or erased. */
export interface DamagedProject {
  readonly id: string;
  /** Where so much can be read; may be empty. */
  readonly name: string;
  /** What is wrong, in a sentence. */
  readonly what: string;
}

export interface Listing {
  /** The one changed last first. */
  readonly projects: readonly ProjectSummary[];
  /** Those that can be restored, the one removed last first. */
  readonly removed: readonly ProjectSummary[];
  readonly damaged: readonly DamagedProject[];
}

/** Something has been kept, removed, restored or erased. */
export interface StoreChange {
  /** Of the project. */
  readonly id: string;
  readonly what: 'project' | 'progress';
  /** Whether it was in another window. */
  readonly elsewhere: boolean;
}
