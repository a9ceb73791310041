import {
  closingDiagonalSection,
  type DiagonalPattern,
  type DiagonalPlan,
  DiagonalPlanReader,
  diagonalInstructionsHtml,
  diagonalInstructionsText,
  diagonalStepInWords,
  instructDiagonalRow,
  openingDiagonalSections,
  planDiagonal,
  printDiagonalPlan,
  repeatInWords,
  repeatOf,
  simulateDiagonal,
  verifyDiagonal,
} from '@halfhitch/core';
import { wrongInWords } from '../../work/worker-words.js';
import type {
  DiagonalAnswer,
  DiagonalAnswers,
  DiagonalAsk,
  DiagonalRequest,
  DiagonalRowSheet,
  DiagonalWritten,
} from './messages.js';
import { sharesOf } from './shares.js';

/** The page lists no more findings than a person would read. */
const MOST_FINDINGS = 500;

// Replaced only by a pattern that could be planned: what was open stays as it is.
let work: { readonly plan: DiagonalPlan; readonly reader: DiagonalPlanReader } | null = null;

function prove(pattern: DiagonalPattern, notices: readonly string[]): DiagonalAnswers['prove'] {
  const plan = planDiagonal(pattern);
  work = { plan, reader: new DiagonalPlanReader(plan) };
  const reading = simulateDiagonal(pattern);
  const { ok, knots, halfHitches, findings } = verifyDiagonal(plan, reading.picture, { pattern });
  return {
    pattern,
    notices,
    reading,
    strings: plan.strings,
    ok,
    knots,
    halfHitches,
    findings: findings.slice(0, MOST_FINDINGS),
    findingCount: findings.length,
    shares: sharesOf(reading),
    repeat: repeatInWords(repeatOf(pattern)),
  };
}

function sheetOf(row: number): DiagonalRowSheet {
  if (work === null) throw new Error('No pattern is open.');
  const { plan, reader } = work;
  const reading = reader.row(row);
  return {
    reading,
    instructions: instructDiagonalRow(reading, plan),
    steps: reading.knots.map(({ steps: { first, end } }) =>
      Array.from({ length: end - first }, (_, i) => diagonalStepInWords(plan, first + i)),
    ),
  };
}

function written(
  pattern: DiagonalPattern,
  rows: { readonly first: number; readonly end: number },
): DiagonalWritten {
  const plan = planDiagonal(pattern);
  const { ok } = verifyDiagonal(plan, simulateDiagonal(pattern).picture, { pattern });
  const reader = new DiagonalPlanReader(plan);
  return {
    ok,
    opening: openingDiagonalSections(plan),
    closing: closingDiagonalSection(plan),
    rows: Array.from({ length: rows.end - rows.first }, (_, i) =>
      instructDiagonalRow(reader.row(rows.first + i), plan),
    ),
  };
}

function instructions(pattern: DiagonalPattern, as: 'html' | 'text'): string {
  const plan = planDiagonal(pattern);
  const verdict = verifyDiagonal(plan, simulateDiagonal(pattern).picture, { pattern });
  return as === 'html'
    ? [...diagonalInstructionsHtml(plan, pattern, verdict)].join('')
    : `${[...diagonalInstructionsText(plan, pattern, verdict)].join('\n')}\n`;
}

function answer(request: DiagonalRequest): DiagonalAnswers[keyof DiagonalAnswers] {
  switch (request.ask) {
    case 'prove':
      return prove(request.pattern, request.notices);
    case 'written':
      return written(request.pattern, request.rows);
    case 'instructions':
      return instructions(request.pattern, request.as);
    case 'plan-document':
      return [...printDiagonalPlan(planDiagonal(request.pattern))].join('');
    case 'row':
      return sheetOf(request.row);
  }
}

addEventListener('message', ({ data }: MessageEvent<DiagonalAsk>) => {
  let reply: DiagonalAnswer;
  try {
    reply = { id: data.id, ok: true, value: answer(data.request) };
  } catch (error) {
    reply = { id: data.id, ok: false, message: wrongInWords(error, 'pattern') };
  }
  postMessage(reply);
});
