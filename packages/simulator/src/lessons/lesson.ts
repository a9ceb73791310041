import type { DiagonalPattern, KnotKind, RowReading } from '@halfhitch/core';

/** One knot, played. */
export interface KnotShow {
  readonly what: 'knot';
  readonly kind: KnotKind;
  readonly tyingColour: string;
  readonly heldColour: string;
  readonly tyingName: string;
  readonly heldName: string;
  /** Played from its end, as it is undone. */
  readonly backward: boolean;
  /** Whether it is finished at first, for its result to be seen. */
  readonly done: boolean;
}

/** A row, from one of its knots on. */
export interface RowShow {
  readonly what: 'row';
  readonly reading: RowReading;
  readonly previous: RowReading | null;
  /** In the order of knotting, from 0. */
  readonly knot: number;
  /** Whether that knot is finished at first, for its result to be seen. */
  readonly done: boolean;
  /** Whether it is only a picture of how things are before that knot, with no word of what comes. */
  readonly still: boolean;
  readonly caption: string;
}

/** A row of a diagonal pattern, from one of its knots on. */
export interface LatticeShow extends Pick<RowShow, 'knot' | 'done' | 'still' | 'caption'> {
  readonly what: 'lattice';
  readonly pattern: DiagonalPattern;
  /** From 0. */
  readonly row: number;
}

/** A whole diagonal pattern, in which the way of one string is marked. */
export interface PieceShow {
  readonly what: 'piece';
  readonly pattern: DiagonalPattern;
  /** Id of the string. */
  readonly trailOf: string;
  readonly caption: string;
}

/** The knotted result as a picture of thread: SVG markup made by running steps. */
export interface FabricShow {
  readonly what: 'fabric';
  readonly caption: string;
  readonly markup: string;
}

export type Show = KnotShow | RowShow | LatticeShow | PieceShow | FabricShow;

/** What comes of a choice. */
export interface Answer {
  readonly right: boolean;
  readonly text: readonly string[];
  /** What checking the steps found; empty when nothing is amiss. */
  readonly findings: readonly string[];
  readonly shows: readonly Show[];
}

export interface Choice {
  readonly text: string;
  readonly right: boolean;
  /** Works out, by running steps, what comes of it. */
  readonly answer: () => Answer;
}

export interface Question {
  readonly prompt: string;
  readonly choices: readonly Choice[];
}

export interface LessonPage {
  readonly text: readonly string[];
  readonly shows: readonly Show[];
  readonly question: Question | null;
}

export interface Lesson {
  readonly name: string;
  readonly title: string;
  /** Language of all its words. */
  readonly language: string;
  readonly pages: readonly LessonPage[];
}
