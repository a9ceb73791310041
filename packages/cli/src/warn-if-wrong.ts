import { diagonalFindingInWords, findingInWords } from '@halfhitch/core';
import { ExitCode } from './exit-code.js';
import { inputName } from './files/read-input.js';
import { say } from './say.js';
import type { DiagonalWork, Work } from './work.js';

/** Findings told where the output is something else. */
const TOLD = 5;

/** For commands with another output: what is wrong goes to standard error, and the code says so. */
export function warnIfWrong(file: string, work: Work | DiagonalWork): ExitCode {
  if (work.verification.ok) return ExitCode.fine;
  const wrong = wrongInWords(work);
  say(`${inputName(file)}: it does not knot out as drawn.`);
  for (const finding of wrong.slice(0, TOLD)) say(finding);
  if (wrong.length > TOLD) say('There is more; "halfhitch check" lists it.');
  return ExitCode.differs;
}

function wrongInWords(work: Work | DiagonalWork): string[] {
  const isWrong = ({ grade }: { readonly grade: string }): boolean => grade === 'wrong';
  return work.kind === 'alpha'
    ? work.verification.findings.filter(isWrong).map(findingInWords)
    : work.verification.findings.filter(isWrong).map(diagonalFindingInWords);
}
