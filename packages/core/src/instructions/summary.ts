import type { Finding } from '../verify/findings.js';
import type { ChangeCounts, Verification } from '../verify/verification.js';
import { count, list, printable } from './wording.js';

/** What running the plan showed, in a few sentences: the verdict, the counts, the findings. */
export function* summaryInWords(verification: Verification): Generator<string, void, undefined> {
  yield verification.ok
    ? 'It knots out as drawn.'
    : 'It does not knot out as drawn: see the findings.';
  yield `${count(verification.knots, 'knot')}, ${count(verification.halfHitches, 'half hitch', 'half hitches')}.`;
  yield changesInWords(verification.changes);
  for (const finding of verification.findings) yield findingInWords(finding);
}

export function changesInWords(changes: ChangeCounts): string {
  const total = changes.withinRow + changes.afterFirstKnot + changes.lastKnot + changes.turn;
  const first = `${count(changes.start, 'colour')} in use`;
  if (total === 0) return `No colour changes; ${first}.`;
  const named: [number, string][] = [
    [changes.withinRow, 'within a row'],
    [changes.afterFirstKnot, 'after the first knot of a row'],
    [changes.lastKnot, 'at the last knot of a row'],
    [changes.turn, 'at a turn'],
  ];
  const told = named
    .filter(([number]) => number > 0)
    .map(([number, where]) => `${number} ${where}`);
  return `${count(total, 'colour change')}: ${list(told)}; ${first}.`;
}

/** "Weak, row 3, column 5: ..." */
export function findingInWords(finding: Finding): string {
  const place = [
    finding.row === null ? '' : `, row ${finding.row}`,
    finding.column === null ? '' : `, column ${finding.column}`,
  ].join('');
  const grade = finding.grade.charAt(0).toUpperCase() + finding.grade.slice(1);
  return `${grade}${place}: ${printable(finding.message)}`;
}
