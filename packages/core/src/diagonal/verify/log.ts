import type { Grade } from '../../verify/findings.js';
import { LISTED_PER_CODE } from '../../verify/log.js';
import { firstSlotOf, type Lattice } from '../lattice.js';
import type { DiagonalFinding, DiagonalFindingCode } from './findings.js';

/** Collects findings, so many of each code; a piece can differ in a million places. */
export class DiagonalLog {
  private readonly entries: DiagonalFinding[] = [];
  private readonly counts = new Map<DiagonalFindingCode, number>();
  private wrongs = 0;

  constructor(private readonly lattice: Lattice) {}

  /** Rows and places from 0, or -1 where none applies. The message is made only if listed. */
  atPlace(
    grade: Grade,
    code: DiagonalFindingCode,
    row: number,
    place: number,
    message: () => string,
  ): void {
    const slot = place < 0 ? -1 : firstSlotOf(this.lattice, row) + 2 * place;
    this.add(grade, code, row, place, slot, message);
  }

  /** The same about one string, which hangs in a slot. */
  add(
    grade: Grade,
    code: DiagonalFindingCode,
    row: number,
    place: number,
    slot: number,
    message: () => string,
  ): void {
    const count = (this.counts.get(code) ?? 0) + 1;
    this.counts.set(code, count);
    if (grade === 'wrong') this.wrongs++;
    if (count > LISTED_PER_CODE) return;
    const fromOne = (number: number): number | null => (number < 0 ? null : number + 1);
    this.entries.push({
      grade,
      code,
      row: fromOne(row),
      place: fromOne(place),
      slot: fromOne(slot),
      message: message(),
    });
  }

  get wrong(): number {
    return this.wrongs;
  }

  finish(): DiagonalFinding[] {
    const findings = [...this.entries];
    for (const [code, count] of this.counts) {
      if (count <= LISTED_PER_CODE) continue;
      findings.push({
        grade: 'note',
        code: 'more-findings',
        row: null,
        place: null,
        slot: null,
        message: `Only the first ${LISTED_PER_CODE} of ${count} findings "${code}" are listed.`,
      });
    }
    return findings;
  }
}
