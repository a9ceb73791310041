import type { DiagonalPattern, DiagonalSeen } from '@halfhitch/core';

export interface LookRequest {
  readonly pattern: DiagonalPattern;
  readonly seen: DiagonalSeen;
}

/** One way in which what was seen can have come about. */
export interface ToldAlternative {
  readonly what: string;
  /** Share of the alternatives of its explanation, from 0 to 1. */
  readonly likelihood: number;
  /** The knot to look at; null where it is no one knot. */
  readonly place: { readonly row: number; readonly column: number } | null;
}

export interface ToldExplanation {
  /** Share of all explanations listed, from 0 to 1. */
  readonly likelihood: number;
  /** The likeliest first. */
  readonly alternatives: readonly ToldAlternative[];
  /** Others that would look the same. */
  readonly more: number;
  readonly unexplained: number;
  /** Where to look to tell the alternatives apart; empty where nothing does. */
  readonly question: string;
  /** What the likeliest does from there on. */
  readonly effect: string;
  /** Ways to go on, each in sentences. */
  readonly ways: readonly (readonly string[])[];
}

export type Told =
  | {
      readonly what: 'told';
      /** Things seen that differ from the pattern. */
      readonly differing: number;
      readonly complete: boolean;
      readonly explanations: readonly ToldExplanation[];
    }
  | { readonly what: 'problem'; readonly message: string };
