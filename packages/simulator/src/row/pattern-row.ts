import { changesPlaces, mirrorKnot } from '@halfhitch/core';
import type { Words } from '../messages/words.js';
import type { LatticeKnotting, LatticeOrder } from '../piece/lattice-order.js';
import type { ThreadLine } from '../thread/thread-line.js';
import type { RowPoses, RowShown } from './row-shown.js';
import { halfInWords, leadName, type RowKnotWords } from './row-words.js';

let made: typeof import('./lattice-lines.js') | undefined;

/** Half hitches of a knot. */
const HALVES = 2;

/** A row of a diagonal pattern, on the rows tied before it. */
export class PatternRow implements RowShown {
  readonly moves: readonly number[];

  constructor(
    private readonly order: LatticeOrder,
    readonly row: number,
  ) {
    this.moves = new Array<number>(order.knotsOf(row)).fill(HALVES);
  }

  isHalf(): boolean {
    return true;
  }

  words(order: number, mirror: boolean, words: Words): RowKnotWords {
    const number = this.order.before(this.row, 0) + order;
    const knot = this.order.knot(number) as LatticeKnotting;
    const kind = mirror ? mirrorKnot(knot.kind) : knot.kind;
    const values = { lead: leadName(knot.tying, words), held: leadName(knot.held, words) };
    const half = (which: 0 | 1): string => halfInWords(which, kind, values, words);
    const ends = words(changesPlaces(kind) ? 'lattice.changed' : 'lattice.back');
    const before = order === 0 ? this.idling(mirror, words) : [];
    return {
      heading: latticeHeading(this.order, number, mirror, words),
      moves: [[...before, half(0)].join(' '), `${half(1)} ${ends}`],
    };
  }

  pictureName(_mirror: boolean, words: Words): string {
    return words('lattice.row', { row: this.row + 1 });
  }

  named(line: ThreadLine, words: Words): ThreadLine {
    const plain: ThreadLine = { ...line, part: 'other', label: null };
    if (line.part !== 'tying' && line.part !== 'held') return plain;
    const string = this.order.strings.find(({ id }) => id === line.string);
    return string === undefined ? plain : { ...plain, name: leadName(string, words) };
  }

  get poses(): RowPoses | null {
    const draw = made?.latticeLines;
    return draw === undefined
      ? null
      : (order, t, mirror) => draw(this.order, this.row, order, t, mirror);
  }

  async loadPoses(): Promise<void> {
    made ??= await import('./lattice-lines.js');
  }

  /** What is said of strings at the edges that have no neighbour. */
  private idling(mirror: boolean, words: Words): string[] {
    const { left, right } = this.order.idling(this.row);
    const [onLeft, onRight] = mirror ? [right, left] : [left, right];
    return [
      ...(onLeft === null ? [] : [words('lattice.idlesLeft', { string: leadName(onLeft, words) })]),
      ...(onRight === null
        ? []
        : [words('lattice.idlesRight', { string: leadName(onRight, words) })]),
    ];
  }
}

/** "Row 2, knot 1 of 3, slots 2 and 3: forward, S2 (chalk) tied on S4 (lake blue)". */
export function latticeHeading(
  order: LatticeOrder,
  number: number,
  mirror: boolean,
  words: Words,
): string {
  const knot = order.knot(number) as LatticeKnotting;
  const { strings } = order.pattern;
  const [left, right] = mirror
    ? [strings - knot.slot - 1, strings - knot.slot]
    : [knot.slot + 1, knot.slot + 2];
  return words('lattice.heading', {
    row: knot.row + 1,
    knot: knot.order + 1,
    knots: order.knotsOf(knot.row),
    left,
    right,
    kind: words(`kind.${mirror ? mirrorKnot(knot.kind) : knot.kind}`),
    tying: leadName(knot.tying, words),
    held: leadName(knot.held, words),
  });
}
