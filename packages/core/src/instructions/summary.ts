import { printable } from '../printable.js';
import type { Finding } from '../verify/findings.js';
import type { ChangeCounts, Verification } from '../verify/verification.js';
import { count, list } from './wording.js';

/** What running the plan showed, in a few sentences: the verdict and the counts. */
export function* summaryInWords(verification: Verification): Generator<string, void, undefined> {
  yield verification.ok ? 'It knots out as drawn.' : 'It does not knot out as drawn.';
  yield `${count(verification.knots, 'knot')}, ${count(verification.halfHitches, 'half hitch', 'half hitches')}.`;
  yield changesInWords(verification.changes);
  const found = findingsCounted(verification.findings);
  if (found !== '') yield `${found} The list of findings is at the end.`;
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

/** "2 weak places and 1 note." Empty when nothing was found. */
export function findingsCounted(findings: readonly Pick<Finding, 'grade'>[]): string {
  const graded = (grade: Finding['grade']): number =>
    findings.filter((finding) => finding.grade === grade).length;
  const [wrong, weak, notes] = [graded('wrong'), graded('weak'), graded('note')];
  const told: string[] = [];
  if (wrong > 0) told.push(count(wrong, 'wrong place'));
  if (weak > 0) told.push(count(weak, 'weak place'));
  if (notes > 0) told.push(count(notes, 'note'));
  return told.length === 0 ? '' : `${list(told)}.`;
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
