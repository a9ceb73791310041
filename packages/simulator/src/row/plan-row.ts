import type { KnotReading } from '@halfhitch/core';
import type { Words } from '../messages/words.js';
import type { ThreadLine } from '../thread/thread-line.js';
import { movesOf, phasesAt, type RowToPlay } from './row-scene.js';
import type { RowPoses, RowShown } from './row-shown.js';
import { leadName, type RowKnotWords, rowKnotWords } from './row-words.js';

let made: typeof import('./row-lines.js') | undefined;

/** A row of an alpha piece, on the row tied before it. */
export class PlanRow implements RowShown {
  readonly moves: readonly number[];

  constructor(readonly play: RowToPlay) {
    this.moves = movesOf(play);
  }

  get row(): number {
    return this.play.reading.row;
  }

  isHalf(order: number, move: number): boolean {
    const phase = phasesAt(this.play, order)[move];
    return phase === 'first-half' || phase === 'second-half';
  }

  words(order: number, mirror: boolean, words: Words): RowKnotWords {
    const { knots } = this.play.reading;
    const phases = phasesAt(this.play, order);
    return rowKnotWords(knots[order] as KnotReading, phases, knots.length, mirror, words);
  }

  pictureName(mirror: boolean, words: Words): string {
    const { row, direction } = this.play.reading;
    const leftwards = (direction === 'right') === mirror;
    return words(leftwards ? 'row.leftwards' : 'row.rightwards', { row: row + 1 });
  }

  named(line: ThreadLine, words: Words): ThreadLine {
    const { hung, strings } = this.play.reading.before;
    const string = strings.find(({ id }) => id === line.string);
    const plain: ThreadLine = { ...line, part: 'other', label: null };
    if (line.part === 'held') {
      return { ...plain, name: words('name.base', { number: hung.indexOf(line.string) + 1 }) };
    }
    if (string === undefined || string.role !== 'lead' || line.part === 'resting') return plain;
    return { ...plain, name: leadName(string, words) };
  }

  get poses(): RowPoses | null {
    const draw = made?.rowLines;
    return draw === undefined ? null : (order, t, mirror) => draw(this.play, order, t, mirror);
  }

  async loadPoses(): Promise<void> {
    made ??= await import('./row-lines.js');
  }
}
