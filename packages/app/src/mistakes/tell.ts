import {
  type Alternative,
  DIAGNOSE_LIMITS,
  type Diagnosis,
  diagnose,
  directionOf,
  type Mistake,
  type MistakeWords,
  type Plan,
  type Undo,
} from '@halfhitch/core';
import type { Sound } from './make.js';
import type { SeenRow, Told, ToldExplanation } from './messages.js';
import { seenOfRows } from './seen-rows.js';

/** Ways that are spelled out of those that look alike. */
const SPELLED_OUT = 4;

/** Finds what explains the rows that were marked, and puts it into words. */
export function explainRows({ plan, written, words }: Sound, rows: readonly SeenRow[]): Told {
  const seen = seenOfRows(rows, plan, written.colours, DIAGNOSE_LIMITS.knots);
  const found = diagnose(plan, seen);
  const [first] = found;
  if (first !== undefined && first.parts.length === 0) {
    return { explanations: [], baffling: first.unexplained };
  }
  return { explanations: found.map((one) => told(plan, words, one)), baffling: 0 };
}

function told(plan: Plan, words: MistakeWords, diagnosis: Diagnosis): ToldExplanation {
  const likeliest = diagnosis.parts.map(({ alternatives }) => alternatives[0]?.mistakes ?? []);
  const all = likeliest.flat();
  const parts = diagnosis.parts.map(({ alternatives }, place) => ({
    alternatives: alternatives.slice(0, SPELLED_OUT).map((one) => {
      // The other parts as they most likely were.
      const mistakes = likeliest.flatMap((other, at) => (at === place ? one.mistakes : other));
      const undos = diagnosis.parts.map(({ alternatives: others }, at) =>
        at === place ? one.undo : (others[0]?.undo ?? one.undo),
      );
      return {
        words: whatOf(words, one, mistakes),
        mistakes,
        undoTo: undos.reduce((first, other) => (isBefore(plan, other, first) ? other : first)),
      };
    }),
    more: Math.max(0, alternatives.length - SPELLED_OUT),
  }));
  const { undo } = diagnosis;
  const best = diagnosis.parts[0]?.alternatives[0];
  const mistake = best?.mistakes[0];
  const there = undo !== null && best?.undo.row === undo.row && best.undo.column === undo.column;
  return {
    likelihood: diagnosis.likelihood,
    parts,
    unexplained: diagnosis.unexplained,
    undo: undo === null ? [] : words.undo(undo),
    goOn:
      undo === null || mistake === undefined
        ? ''
        : there
          ? words.goOn(mistake, all)
          : words.goOnFrom(undo, all),
  };
}

function whatOf(words: MistakeWords, one: Alternative, all: readonly Mistake[]): string {
  return one.mistakes.map((mistake) => words.what(mistake, all)).join(' ');
}

/** Whether one place comes before another in the order of knotting. */
function isBefore(plan: Plan, one: Undo, other: Undo): boolean {
  if (one.row !== other.row) return one.row < other.row;
  return directionOf(plan.start, one.row) === 'right'
    ? one.column < other.column
    : one.column > other.column;
}
