import { directionOf } from '@halfhitch/core';
import type { Piece } from '../work/messages.js';

/** What of a piece the changes are counted by. */
export type Tied = Pick<Piece, 'rows' | 'columns' | 'choice' | 'tying'>;

/** Counts colour changes between places of a piece, quickly however large it is. */
export class ChangeCount {
  /** Changes before each row, and in all. */
  private readonly before: Uint32Array;

  constructor(private readonly piece: Tied) {
    const { rows, columns } = piece;
    this.before = new Uint32Array(rows + 1);
    for (let row = 0; row < rows; row++) {
      let changes = 0;
      for (let order = 0; order < columns; order++) if (this.changesAt(row, order)) changes++;
      this.before[row + 1] = (this.before[row] ?? 0) + changes;
    }
  }

  /** Changes that come with the knots from one count of knots tied up to another. */
  between(from: number, to: number): number {
    return this.upTo(to) - this.upTo(from);
  }

  private upTo(done: number): number {
    const { rows, columns } = this.piece;
    const row = Math.min(rows, Math.floor(done / columns));
    let changes = this.before[row] ?? 0;
    if (row === rows) return changes;
    for (let order = 0; order < done - row * columns; order++) {
      if (this.changesAt(row, order)) changes++;
    }
    return changes;
  }

  /** Whether another string ties this knot than the one before it; never at the very first. */
  private changesAt(row: number, order: number): boolean {
    if (row === 0 && order === 0) return false;
    const before = order > 0 ? this.stringAt(row, order - 1) : this.stringAt(row - 1, -1);
    return this.stringAt(row, order) !== before;
  }

  /** @param order from 0 in the order of knotting; -1 is the last of the row */
  private stringAt(row: number, order: number): number {
    const { columns, choice, tying } = this.piece;
    const at = order < 0 ? columns - 1 : order;
    const column = directionOf(choice.start, row) === 'right' ? at : columns - 1 - at;
    return tying[row * columns + column] ?? 0xffff;
  }
}
