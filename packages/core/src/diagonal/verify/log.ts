import { FindingList, fromOne } from '../../verify/finding-list.js';
import type { Grade } from '../../verify/findings.js';
import { firstSlotOf, type Lattice } from '../lattice.js';
import type { DiagonalFinding, DiagonalFindingCode } from './findings.js';

type Spot = {
  row: DiagonalFinding['row'];
  place: DiagonalFinding['place'];
  slot: DiagonalFinding['slot'];
};

/** The findings of a diagonal piece: each at a place of the lattice, or about a string in a slot. */
export class DiagonalLog extends FindingList<DiagonalFindingCode, Spot> {
  constructor(private readonly lattice: Lattice) {
    super({ row: null, place: null, slot: null });
  }

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
    const where = { row: fromOne(row), place: fromOne(place), slot: fromOne(slot) };
    this.list(grade, code, where, message);
  }
}
