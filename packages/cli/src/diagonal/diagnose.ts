import {
  type DiagonalAlternative,
  type DiagonalDiagnosis,
  type DiagonalExplanation,
  type DiagonalMistake,
  DiagonalMistakeWords,
  type DiagonalPattern,
  type DiagonalQuestion,
  type DiagonalUndo,
  type DiagonalWayBack,
  diagnoseDiagonal,
  diagonalConsequences,
  diagonalDiagnosisText,
  InputError,
  KNOT_KINDS,
  patternOfDiagonalPlan,
  printable,
  readDiagonalPlan,
  readDiagonalSeen,
  readPattern,
} from '@halfhitch/core';
import { ExitCode } from '../exit-code.js';
import { documentFormat } from '../files/document-format.js';
import { inFile, inputName, readChartBytes } from '../files/read-input.js';
import { writeOutput } from '../files/write-output.js';

export interface DiagnoseDiagonalOptions {
  readonly seen: string;
  readonly json?: boolean;
}

/** Says what a maker did who follows a diagonal pattern, or its plan, and sees something else. */
export async function diagnoseDiagonalPiece(
  file: string,
  text: string,
  options: DiagnoseDiagonalOptions,
): Promise<ExitCode> {
  const bytes = await readChartBytes(options.seen);
  const pattern = inFile(file, () => patternIn(text));
  const seen = inFile(options.seen, () => readDiagonalSeen(bytes, ''));
  const found = inFile(options.seen, () => diagnoseDiagonal(pattern, seen));
  await writeOutput(
    '-',
    options.json === true
      ? [asJson(pattern, seen.rows, found)]
      : asText(file, pattern, seen.rows, found),
  );
  return found.ok ? ExitCode.fine : ExitCode.differs;
}

function patternIn(text: string): DiagonalPattern {
  if (documentFormat(text) === 'halfhitch-diagonal-plan') {
    return patternOfDiagonalPlan(readDiagonalPlan(text));
  }
  const reading = readPattern(new TextEncoder().encode(text), '');
  if (reading.kind === 'diagonal') return reading.pattern;
  throw new InputError(
    'no-plan',
    'This is a chart, not a plan.',
    {},
    'Give a plan document, as "plan --format json" writes it, or a diagonal pattern.',
  );
}

function* asText(
  file: string,
  pattern: DiagonalPattern,
  rows: number,
  found: DiagonalDiagnosis,
): Generator<string> {
  yield `${printable(inputName(file))}\n`;
  for (const line of diagonalDiagnosisText(pattern, rows, found)) yield `${line}\n`;
}

/** Alternatives that are listed; of more, the likeliest. */
const MOST_ALTERNATIVES = 50;

/** One object on one line; the order of its keys is part of the stable interface. */
function asJson(pattern: DiagonalPattern, rows: number, found: DiagonalDiagnosis): string {
  const words = new DiagonalMistakeWords(pattern);
  const answer = {
    ok: found.ok,
    rows,
    strings: pattern.strings,
    differing: found.differing,
    complete: found.complete,
    explanations: found.explanations.map((explanation) =>
      explanationAsJson(pattern, words, rows, explanation),
    ),
  };
  return `${JSON.stringify(answer)}\n`;
}

function explanationAsJson(
  pattern: DiagonalPattern,
  words: DiagonalMistakeWords,
  rows: number,
  { mistakes, unexplained, likelihood, alternatives, question }: DiagonalExplanation,
) {
  return {
    mistakes,
    unexplained,
    likelihood: rounded(likelihood),
    alike: alternatives.length,
    question: question === null ? null : questionAsJson(pattern, words, question),
    alternatives: alternatives
      .slice(0, MOST_ALTERNATIVES)
      .map((one) => alternativeAsJson(pattern, words, rows, one)),
  };
}

function questionAsJson(
  pattern: DiagonalPattern,
  words: DiagonalMistakeWords,
  question: DiagonalQuestion,
) {
  const colour = (seen: number): string | null => pattern.colours[seen]?.hex ?? null;
  const look = (seen: number): string | null => KNOT_KINDS[seen] ?? (seen === 4 ? 'half' : null);
  return {
    of: question.of,
    row: question.of === 'hanging' ? null : question.row + 1,
    place: question.of === 'hanging' ? null : question.place + 1,
    slot: question.of === 'hanging' ? question.slot + 1 : null,
    answers: question.answers.map(({ seen, alternatives }) => ({
      seen: question.of === 'look' ? look(seen) : colour(seen),
      alternatives: alternatives.map((at) => at + 1),
    })),
    message: words.question(question),
  };
}

function alternativeAsJson(
  pattern: DiagonalPattern,
  words: DiagonalMistakeWords,
  rows: number,
  { mistakes, likelihood }: DiagonalAlternative,
) {
  const consequences = diagonalConsequences(pattern, mistakes, rows);
  return {
    likelihood: rounded(likelihood),
    mistakes: mistakes.map((mistake) => mistakeAsJson(pattern, words, mistake, mistakes)),
    differing: consequences.differing.length,
    orderBack: consequences.orderBack,
    effect: words.effect(consequences),
    ways: consequences.ways.map((way) => wayAsJson(words, way, mistakes)),
  };
}

function mistakeAsJson(
  pattern: DiagonalPattern,
  words: DiagonalMistakeWords,
  mistake: DiagonalMistake,
  all: readonly DiagonalMistake[],
) {
  const off = mistake.kind === 'one-slot-off' ? mistake : null;
  return {
    kind: mistake.kind,
    row: 'row' in mistake ? mistake.row + 1 : null,
    place: 'place' in mistake ? mistake.place + 1 : null,
    tied: 'tied' in mistake ? mistake.tied : null,
    towards: off?.towards ?? null,
    span: off?.span ?? null,
    slot: 'slot' in mistake ? mistake.slot + 1 : null,
    other: mistake.kind === 'swapped-strings' ? mistake.other + 1 : null,
    colour: mistake.kind === 'wrong-colour' ? (pattern.colours[mistake.colour]?.hex ?? null) : null,
    message: words.what(mistake, all),
  };
}

function wayAsJson(
  words: DiagonalMistakeWords,
  way: DiagonalWayBack,
  mistakes: readonly DiagonalMistake[],
) {
  return {
    way: way.way,
    row: way.way === 'undo' ? way.undo.row + 1 : 'row' in way ? way.row + 1 : null,
    place: way.way === 'undo' ? oneMore(way.undo.place) : way.way === 'mend' ? way.place + 1 : null,
    tied: way.way === 'mend' ? way.tied : null,
    slots: way.way === 'exchange' ? way.slots.map((slot) => slot + 1) : null,
    knots: way.way === 'undo' ? knotsAsJson(way.undo) : null,
    differing: way.way === 'undo' ? 0 : way.differing,
    message:
      way.way === 'undo'
        ? `${words.way(way, mistakes)} ${words.goOn(mistakes)}`
        : words.way(way, mistakes),
  };
}

function oneMore(place: number | null): number | null {
  return place === null ? null : place + 1;
}

function knotsAsJson({ knots }: DiagonalUndo) {
  return knots.map(({ row, place }) => ({ row: row + 1, place: place + 1 }));
}

function rounded(share: number): number {
  return Math.round(share * 10_000) / 10_000;
}
