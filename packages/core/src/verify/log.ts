import type { Finding, FindingCode, Grade } from './findings.js';

/** Findings listed of one code; the rest are only counted. */
export const LISTED_PER_CODE = 200;

interface Entry {
  grade: Grade;
  code: FindingCode;
  row: number | null;
  column: number | null;
  message: string;
}

/** Collects findings, so many of each code; a chart can differ in millions of cells. */
export class FindingLog {
  private readonly entries: Entry[] = [];
  private readonly counts = new Map<FindingCode, number>();
  private wrongs = 0;

  /** Rows and columns from 0, or -1 where none applies. The message is made only if listed. */
  add(
    grade: Grade,
    code: FindingCode,
    row: number,
    column: number,
    message: () => string,
  ): Entry | null {
    const count = (this.counts.get(code) ?? 0) + 1;
    this.counts.set(code, count);
    if (grade === 'wrong') this.wrongs++;
    if (count > LISTED_PER_CODE) return null;
    const entry: Entry = {
      grade,
      code,
      row: row < 0 ? null : row + 1,
      column: column < 0 ? null : column + 1,
      message: message(),
    };
    this.entries.push(entry);
    return entry;
  }

  /** Makes a finding that seemed weak a wrong one, now that what follows from it is known. */
  worsen(entry: Entry, code: FindingCode, message: string): void {
    if (entry.grade !== 'wrong') this.wrongs++;
    entry.grade = 'wrong';
    entry.code = code;
    entry.message = message;
  }

  get wrong(): number {
    return this.wrongs;
  }

  finish(): Finding[] {
    const findings: Finding[] = this.entries.map((entry) => ({ ...entry }));
    for (const [code, count] of this.counts) {
      if (count <= LISTED_PER_CODE) continue;
      findings.push({
        grade: 'note',
        code: 'more-findings',
        row: null,
        column: null,
        message: `Only the first ${LISTED_PER_CODE} of ${count} findings "${code}" are listed.`,
      });
    }
    return findings;
  }
}

export type LoggedFinding = Entry;
