import { NO_STRING_HERE } from '../diagonal/simulate.js';
import { type ComparedPiece, NONE_DIFFERS, type Outcome } from './compared-piece.js';
import type { StartMistake } from './mistake.js';

/** Tries strings hung up otherwise: what they tie has another colour, all else stays. */
export class StartTrial {
  private readonly rowChange: Int32Array;
  /** Cells that each string ties, from the top; made when it is first asked for. */
  private tied: readonly (readonly number[])[] | null = null;

  constructor(private readonly on: ComparedPiece) {
    this.rowChange = new Int32Array(on.comparison.rows + 1);
  }

  try(mistake: StartMistake): Outcome | null {
    const { rowChange } = this;
    const { comparison, start } = this.on;
    const { across } = comparison;
    const swapped = mistake.kind === 'swapped-strings';
    const changes: [number, number][] = swapped
      ? [
          [mistake.slot, start[mistake.other] as number],
          [mistake.other, start[mistake.slot] as number],
        ]
      : [[mistake.slot, comparison.alike[mistake.colour] as number]];
    const order = this.on.orderAfter(this.on.knotted.rows - 1);
    let total = this.on.total;
    let kept = true;
    const touched: number[] = [];
    const note = (row: number, change: number): void => {
      if (change === 0) return;
      rowChange[row] = (rowChange[row] as number) + change;
      total += change;
      touched.push(row);
    };
    for (const [string, colour] of changes) {
      const was = this.on.colourOf(string);
      for (const cell of this.cellsOf(string)) {
        const row = Math.floor(cell / across);
        const place = cell - row * across;
        this.on.work++;
        note(
          row,
          comparison.colourDiffers(row, place, colour) - comparison.colourDiffers(row, place, was),
        );
        if (row < this.on.first && (rowChange[row] as number) > 0 && !swapped) {
          kept = false;
          break;
        }
      }
      const slot = order.indexOf(string);
      note(
        comparison.rows,
        comparison.hangingDiffers(slot, colour) - comparison.hangingDiffers(slot, was),
      );
    }
    let first = NONE_DIFFERS;
    for (const row of touched) {
      kept &&= this.on.keeps(row, (this.on.differing[row] as number) + (rowChange[row] as number));
    }
    kept &&= (rowChange[this.on.first] as number) < 0;
    for (let row = this.on.first; kept && first === NONE_DIFFERS && row <= comparison.rows; row++) {
      if ((this.on.differing[row] as number) + (rowChange[row] as number) > 0) first = row;
    }
    for (const row of touched) rowChange[row] = 0;
    return kept ? this.on.outcome(total, first) : null;
  }

  private cellsOf(string: number): readonly number[] {
    if (this.tied === null) {
      const tied: number[][] = Array.from({ length: this.on.comparison.strings }, () => []);
      this.on.knotted.tying.forEach((ties, cell) => {
        if (ties !== NO_STRING_HERE) tied[ties]?.push(cell);
      });
      this.tied = tied;
    }
    return this.tied[string] ?? [];
  }
}
