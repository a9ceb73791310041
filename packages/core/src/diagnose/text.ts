import { count } from '../instructions/wording.js';
import type { Mistake } from '../mistakes/mistake.js';
import type { Plan } from '../plan/plan.js';
import type { Alternative, Diagnosis } from './diagnosis.js';
import { MistakeWords } from './words.js';

/** Ways that are spelled out of those that look alike. */
const SPELLED_OUT = 4;

/** Explanations as lines of text, for reading and for screen readers. */
export function* diagnosisText(plan: Plan, diagnoses: readonly Diagnosis[]): Generator<string> {
  const words = new MistakeWords(plan);
  if (diagnoses.length === 0) {
    yield 'Nothing differs from the plan in what was seen.';
    return;
  }
  const [first] = diagnoses as [Diagnosis, ...Diagnosis[]];
  if (first.parts.length === 0) {
    yield `What was seen differs from the plan in ${count(first.unexplained, 'thing')}, and no mistake was found that explains any of it. Look again at the first row that differs, and at the row above it.`;
    return;
  }
  yield `What was seen differs from the plan. ${
    diagnoses.length === 1
      ? 'One explanation was found'
      : `${diagnoses.length} explanations were found, the most likely first`
  }; ${first.mistakes === 1 ? 'it takes one mistake' : `the first takes ${first.mistakes} mistakes`}.`;
  for (const [place, diagnosis] of diagnoses.entries()) {
    yield '';
    yield `Explanation ${place + 1} (${percent(diagnosis.likelihood)} of those listed)`;
    yield* explanation(words, diagnosis);
  }
}

function* explanation(words: MistakeWords, diagnosis: Diagnosis): Generator<string> {
  const all = diagnosis.parts.flatMap(({ alternatives }) => alternatives[0]?.mistakes ?? []);
  for (const { alternatives } of diagnosis.parts) {
    const told = alternatives.slice(0, SPELLED_OUT);
    const lead = alternatives.length > 1 ? 'Either: ' : '';
    for (const [place, alternative] of told.entries()) {
      yield `  ${place === 0 ? lead : 'or: '}${whatOf(words, alternative, all)}`;
    }
    const more = alternatives.length - told.length;
    if (more > 0)
      yield `  or one of ${count(more, 'other way', 'other ways')} that would look the same.`;
  }
  if (diagnosis.unexplained > 0) {
    yield `  It leaves ${count(diagnosis.unexplained, 'thing')} unexplained.`;
  }
  const undo = diagnosis.undo === null ? [] : words.undo(diagnosis.undo);
  for (const sentence of undo) yield `  ${sentence}`;
  const [part] = diagnosis.parts;
  const likeliest = part?.alternatives[0];
  const mistake = likeliest?.mistakes[0];
  if (mistake === undefined || diagnosis.undo === null) return;
  const there =
    likeliest?.undo.row === diagnosis.undo.row && likeliest.undo.column === diagnosis.undo.column;
  yield `  ${there ? words.goOn(mistake, all) : words.goOnFrom(diagnosis.undo, all)}`;
}

function whatOf(words: MistakeWords, one: Alternative, all: readonly Mistake[]): string {
  return one.mistakes.map((mistake) => words.what(mistake, all)).join(' ');
}

function percent(share: number): string {
  return share > 0.995 ? 'all' : `${Math.max(1, Math.round(100 * share))} %`;
}
