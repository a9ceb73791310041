import { FindingList, fromOne, type Listed } from './finding-list.js';
import type { Finding, FindingCode, Grade } from './findings.js';

type Cell = { row: Finding['row']; column: Finding['column'] };

export type LoggedFinding = Listed<FindingCode, Cell>;

/** The findings of a piece drawn as a chart: each at a row and a column. */
export class FindingLog extends FindingList<FindingCode, Cell> {
  constructor() {
    super({ row: null, column: null });
  }

  /** Rows and columns from 0, or -1 where none applies. The message is made only if listed. */
  add(
    grade: Grade,
    code: FindingCode,
    row: number,
    column: number,
    message: () => string,
  ): LoggedFinding | null {
    return this.list(grade, code, { row: fromOne(row), column: fromOne(column) }, message);
  }
}
