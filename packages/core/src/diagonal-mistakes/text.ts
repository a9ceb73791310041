import type { DiagonalPattern } from '../diagonal/pattern.js';
import { count } from '../instructions/wording.js';
import { diagonalConsequences } from './consequences.js';
import type { DiagonalAlternative, DiagonalDiagnosis, DiagonalExplanation } from './diagnose.js';
import { DiagonalMistakeWords } from './words.js';

/** Alternatives that are spelled out. */
const SPELLED_OUT = 6;

/**
 * Explanations as lines of text, for reading and for screen readers.
 *
 * @param rows rows knotted so far
 */
export function* diagonalDiagnosisText(
  pattern: DiagonalPattern,
  rows: number,
  diagnosis: DiagonalDiagnosis,
): Generator<string, void, undefined> {
  const words = new DiagonalMistakeWords(pattern);
  const { ok, differing, explanations, complete } = diagnosis;
  if (ok) {
    yield 'Nothing differs from the pattern in what was seen.';
    return;
  }
  const told = explanations.filter(({ mistakes }) => mistakes > 0);
  const [first] = told;
  if (first === undefined) {
    yield `What was seen differs from the pattern in ${count(differing, 'thing')}, and no mistake was found that explains any of it. Look again at the first row that differs, and at the row above it.`;
    return;
  }
  yield `What was seen differs from the pattern in ${count(differing, 'thing')}. ${
    told.length === 1
      ? 'One explanation was found'
      : `${told.length} explanations were found, the most likely first`
  }; ${first.mistakes === 1 ? 'it takes one mistake' : `the first takes ${first.mistakes} mistakes`}.`;
  if (!complete) yield 'The search was ended before everything was tried, so others are possible.';
  for (const [place, explanation] of told.entries()) {
    yield '';
    if (told.length > 1) {
      yield `Explanation ${place + 1} (${percent(explanation.likelihood)} of those listed)`;
    }
    yield* explanationText(words, pattern, rows, explanation);
  }
}

function* explanationText(
  words: DiagonalMistakeWords,
  pattern: DiagonalPattern,
  rows: number,
  { alternatives, unexplained, question }: DiagonalExplanation,
): Generator<string, void, undefined> {
  const several = alternatives.length > 1;
  if (several) {
    yield `One of these ${alternatives.length} happened; they cannot be told apart by what was seen so far:`;
  }
  for (const [at, one] of alternatives.slice(0, SPELLED_OUT).entries()) {
    const share = several ? ` (${percent(one.likelihood)})` : '';
    yield `  ${at + 1}. ${whatOf(words, one)}${share}`;
  }
  const more = alternatives.length - SPELLED_OUT;
  if (more > 0) yield `  and ${count(more, 'more of this kind', 'more of these kinds')}.`;
  if (unexplained > 0) yield `  It leaves ${count(unexplained, 'thing')} unexplained.`;
  if (question !== null) yield `  ${words.question(question)}`;
  const [likeliest] = alternatives;
  if (likeliest === undefined) return;
  yield several ? '  If it is the first:' : '  What it does, and how to go on:';
  for (const line of afterwards(words, pattern, rows, likeliest)) yield `    ${line}`;
}

/** What a mistake does from there on, and the ways to go on. */
function* afterwards(
  words: DiagonalMistakeWords,
  pattern: DiagonalPattern,
  rows: number,
  { mistakes }: DiagonalAlternative,
): Generator<string, void, undefined> {
  const consequences = diagonalConsequences(pattern, mistakes, rows);
  yield words.effect(consequences);
  for (const way of consequences.ways) {
    if (way.way !== 'undo') {
      yield words.way(way, mistakes);
      continue;
    }
    yield* words.undo(way.undo, mistakes);
    yield words.goOn(mistakes);
  }
}

function whatOf(words: DiagonalMistakeWords, { mistakes }: DiagonalAlternative): string {
  return mistakes.map((mistake) => words.what(mistake, mistakes)).join(' ');
}

function percent(share: number): string {
  return share > 0.995 ? 'all' : `${Math.max(1, Math.round(100 * share))} %`;
}
