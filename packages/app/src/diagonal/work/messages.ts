import type {
  DiagonalFinding,
  DiagonalPattern,
  DiagonalReading,
  DiagonalRowInstructions,
  DiagonalRowReading,
  Section,
  ThreadString,
} from '@halfhitch/core';
import type { NumberedAnswer } from '../../work/waiting-answers.js';
import type { NumberedAsk } from '../../work/worker-desk.js';
import type { StringShare } from './shares.js';

/** A diagonal pattern, planned and verified: what the page shows of it. */
export interface DiagonalPiece {
  /** Of the project it was planned for. */
  readonly id: string;
  readonly pattern: DiagonalPattern;
  /** What the reader of the file wants known. */
  readonly notices: readonly string[];
  /** What comes of it on paper: the picture, and which string is where. */
  readonly reading: DiagonalReading;
  readonly strings: readonly ThreadString[];
  /** Whether its steps, run by the verifier, show what the pattern is said to show. */
  readonly ok: boolean;
  readonly knots: number;
  readonly halfHitches: number;
  readonly findings: readonly DiagonalFinding[];
  /** Findings there are; more than are listed where there are very many. */
  readonly findingCount: number;
  readonly shares: readonly StringShare[];
  /** What happens when it is knotted again and again, in whole sentences. */
  readonly repeat: readonly string[];
}

/** What print sheets say in words. */
export interface DiagonalWritten {
  readonly ok: boolean;
  readonly opening: readonly Section[];
  readonly closing: Section;
  readonly rows: readonly DiagonalRowInstructions[];
}

/** A row to be read and tied. */
export interface DiagonalRowSheet {
  readonly reading: DiagonalRowReading;
  readonly instructions: DiagonalRowInstructions;
  /** For each knot in turn, its steps in words. */
  readonly steps: readonly (readonly string[])[];
}

export type DiagonalRequest =
  /** What is asked for afterwards is of the pattern that is proven here. */
  | {
      readonly ask: 'prove';
      readonly pattern: DiagonalPattern;
      readonly notices: readonly string[];
    }
  | { readonly ask: 'row'; readonly row: number }
  /** What is written of any pattern; rows from 0, the end not included. */
  | {
      readonly ask: 'written';
      readonly pattern: DiagonalPattern;
      readonly rows: { readonly first: number; readonly end: number };
    }
  /** All of the instructions, as a page or as plain text. */
  | {
      readonly ask: 'instructions';
      readonly pattern: DiagonalPattern;
      readonly as: 'html' | 'text';
    }
  /** The steps as a plan document. */
  | { readonly ask: 'plan-document'; readonly pattern: DiagonalPattern };

export interface DiagonalAnswers {
  prove: Omit<DiagonalPiece, 'id'>;
  row: DiagonalRowSheet;
  written: DiagonalWritten;
  instructions: string;
  'plan-document': string;
}

export type DiagonalAsk = NumberedAsk<DiagonalRequest>;
export type DiagonalAnswer = NumberedAnswer<DiagonalAnswers[keyof DiagonalAnswers]>;
