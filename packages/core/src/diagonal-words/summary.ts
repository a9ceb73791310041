import { knotIndex, knotsInRow } from '../diagonal/lattice.js';
import { type DiagonalPattern, NO_KNOT } from '../diagonal/pattern.js';
import { findingsCounted } from '../instructions/summary.js';
import { count, list } from '../instructions/wording.js';
import { KNOT_KINDS } from '../model/knot.js';
import { printable } from '../printable.js';
import { slotsInWords } from './wording.js';

/** What the words need of a finding; rows, places and slots from 1. */
export interface DiagonalFindingToTell {
  readonly grade: 'wrong' | 'weak' | 'note';
  readonly row: number | null;
  /** Slot of the left string. */
  readonly slot: number | null;
  readonly message: string;
}

/** What the words need of a verification. */
export interface DiagonalVerdict {
  readonly ok: boolean;
  readonly knots: number;
  readonly halfHitches: number;
  readonly findings: readonly DiagonalFindingToTell[];
}

/** What running the plan showed, in a few sentences: the verdict and the counts. */
export function* diagonalSummaryInWords(
  verdict: DiagonalVerdict,
  pattern: DiagonalPattern,
): Generator<string, void, undefined> {
  yield verdict.ok ? 'It knots out as drawn.' : 'It does not knot out as drawn.';
  yield `${count(verdict.knots, 'knot')}, ${count(verdict.halfHitches, 'half hitch', 'half hitches')}.`;
  yield kindsInWords(pattern);
  const found = findingsCounted(verdict.findings);
  if (found !== '') yield `${found} The list of findings is at the end.`;
}

/** How many knots of each kind a pattern has, and how often the kind changes along its rows. */
export interface KindCounts {
  /** By kind, in the order of KNOT_KINDS. */
  readonly kinds: readonly number[];
  /** Places in which no knot is tied. */
  readonly bare: number;
  /** Knots of another kind than the one tied before them in their row. */
  readonly changes: number;
}

export function countKinds(pattern: DiagonalPattern): KindCounts {
  const kinds = [0, 0, 0, 0];
  let bare = 0;
  let changes = 0;
  for (let row = 0; row < pattern.rows; row++) {
    let before = NO_KNOT;
    for (let place = 0; place < knotsInRow(pattern, row); place++) {
      const kind = pattern.knots[knotIndex(pattern, row, place)] as number;
      if (kind >= KNOT_KINDS.length) {
        bare++;
        continue;
      }
      kinds[kind] = (kinds[kind] as number) + 1;
      if (before !== NO_KNOT && before !== kind) changes++;
      before = kind;
    }
  }
  return { kinds, bare, changes };
}

/** "24 forward and 8 backward knots; the kind changes 6 times along the rows." */
export function kindsInWords(pattern: DiagonalPattern): string {
  const { kinds, bare, changes } = countKinds(pattern);
  const told = KNOT_KINDS.flatMap((kind, at) =>
    (kinds[at] ?? 0) > 0 ? `${kinds[at]} ${kind}` : [],
  );
  const knots = kinds.reduce((sum, number) => sum + number, 0);
  const places = bare === 0 ? '' : `, ${count(bare, 'place')} without a knot`;
  if (knots === 0) return `No knots${places}.`;
  const along =
    changes === 0
      ? 'within a row the kind never changes'
      : `along the rows the kind changes ${changes === 1 ? 'once' : count(changes, 'time')}`;
  return `${list(told)} ${knots === 1 ? 'knot' : 'knots'}${places}; ${along}.`;
}

/** "Weak, row 3, slots 5-6: ..." */
export function diagonalFindingInWords(finding: DiagonalFindingToTell): string {
  const place = [
    finding.row === null ? '' : `, row ${finding.row}`,
    finding.slot === null ? '' : `, ${slotsInWords(finding.slot - 1)}`,
  ].join('');
  const grade = finding.grade.charAt(0).toUpperCase() + finding.grade.slice(1);
  return `${grade}${place}: ${printable(finding.message)}`;
}
