import type { Grade } from './findings.js';

/** Findings listed of one code; the rest are only counted. */
const LISTED_PER_CODE = 200;

const MORE = 'more-findings';

/** A finding as it is collected: what all have, and where it is in this kind of piece. */
export type Listed<Code extends string, Where extends object> = Where & {
  grade: Grade;
  code: Code;
  message: string;
};

/** Collects findings, so many of each code; a piece can differ in millions of places. */
export class FindingList<Code extends string, Where extends object> {
  private readonly entries: Listed<Code, Where>[] = [];
  private readonly counts = new Map<Code, number>();
  private wrongs = 0;

  /** @param nowhere the place of what is said about the whole piece */
  constructor(private readonly nowhere: Where) {}

  /** The message is made only if it is listed; null when it is not. */
  protected list(
    grade: Grade,
    code: Code,
    where: Where,
    message: () => string,
  ): Listed<Code, Where> | null {
    const count = (this.counts.get(code) ?? 0) + 1;
    this.counts.set(code, count);
    if (grade === 'wrong') this.wrongs++;
    if (count > LISTED_PER_CODE) return null;
    const entry = { grade, code, ...where, message: message() };
    this.entries.push(entry);
    return entry;
  }

  /** Makes a finding that seemed weak a wrong one, now that what follows from it is known. */
  worsen(entry: Listed<Code, Where>, code: Code, message: string): void {
    if (entry.grade !== 'wrong') this.wrongs++;
    Object.assign(entry, { grade: 'wrong', code, message });
  }

  get wrong(): number {
    return this.wrongs;
  }

  finish(): Listed<Code | typeof MORE, Where>[] {
    const findings: Listed<Code | typeof MORE, Where>[] = this.entries.map((entry) => ({
      ...entry,
    }));
    for (const [code, count] of this.counts) {
      if (count <= LISTED_PER_CODE) continue;
      findings.push({
        grade: 'note',
        code: MORE,
        ...this.nowhere,
        message: `Only the first ${LISTED_PER_CODE} of ${count} findings "${code}" are listed.`,
      });
    }
    return findings;
  }
}

/** A number as people count, or null for one that is not there (-1). */
export function fromOne(number: number): number | null {
  return number < 0 ? null : number + 1;
}
