import {
  type DiagonalAlternative,
  type DiagonalExplanation,
  type DiagonalMistake,
  DiagonalMistakeWords,
  type DiagonalPattern,
  diagnoseDiagonal,
  diagonalConsequences,
} from '@halfhitch/core';
import type { LookRequest, Told, ToldAlternative, ToldExplanation } from './messages.js';

/** Alternatives that are spelled out. */
const SPELLED_OUT = 4;

/** What explains that a piece looks as was seen, in words. */
export function explain({ pattern, seen }: LookRequest): Told {
  const { differing, explanations, complete } = diagnoseDiagonal(pattern, seen);
  const words = new DiagonalMistakeWords(pattern);
  return {
    what: 'told',
    differing,
    complete,
    explanations: explanations
      .filter(({ mistakes }) => mistakes > 0)
      .map((one) => told(pattern, seen.rows, words, one)),
  };
}

function told(
  pattern: DiagonalPattern,
  rows: number,
  words: DiagonalMistakeWords,
  { likelihood, alternatives, unexplained, question }: DiagonalExplanation,
): ToldExplanation {
  const [likeliest] = alternatives;
  const mistakes = likeliest?.mistakes ?? [];
  const consequences = diagonalConsequences(pattern, mistakes, rows);
  return {
    likelihood,
    alternatives: alternatives.slice(0, SPELLED_OUT).map((one) => alternative(words, one)),
    more: Math.max(0, alternatives.length - SPELLED_OUT),
    unexplained,
    question: question === null ? '' : words.question(question),
    effect: words.effect(consequences),
    ways: consequences.ways.map((way) =>
      way.way === 'undo'
        ? [...words.undo(way.undo, mistakes), words.goOn(mistakes)]
        : [words.way(way, mistakes)],
    ),
  };
}

function alternative(
  words: DiagonalMistakeWords,
  { mistakes, likelihood }: DiagonalAlternative,
): ToldAlternative {
  return {
    what: mistakes.map((mistake) => words.what(mistake, mistakes)).join(' '),
    likelihood,
    place: mistakes.map(placeOf).find((place) => place !== null) ?? null,
  };
}

function placeOf(mistake: DiagonalMistake): ToldAlternative['place'] {
  if ('place' in mistake) return { row: mistake.row, column: mistake.place };
  return 'row' in mistake ? { row: mistake.row, column: 0 } : null;
}
