import { firstSlotOf, knotsAcross, knotsInRow } from '../lattice.js';
import type { DiagonalPattern } from '../pattern.js';
import { leastCommonMultiple, periodRound, primeFactors } from '../permutation.js';
import { NO_STRING_HERE } from '../simulate.js';

/** What is seen goes on so many rows further down, moved by so many slots to the right. */
export interface ShiftedRepeat {
  readonly rows: number;
  /** Slots to the right; negative to the left. */
  readonly slots: number;
}

/** Larger patterns are not searched for a shift: rows times places in a row. */
const MOST_PLACES_SHIFTED = 30_000;
const MOST_ROWS_SHIFTED = 32;

/**
 * What is seen of a pattern that is repeated without end, told without knotting it: it may take
 * more repeats than could ever be knotted until it begins anew.
 *
 * A place of the lattice shows the colours of the strings that come to tie there, repeat after
 * repeat: those of one cycle of the permutation, in turn. So each place is known by the sequence it
 * shows, and two places far apart can be compared by going on along the cycle.
 */
export class EndlessPicture {
  private readonly across: number;
  private readonly cycleOf: Uint16Array;
  private readonly stepOf: Uint16Array;
  /** The sequence of colours that comes, repeat after repeat, to where a slot's string ties. */
  private readonly sequenceOf: Uint16Array;
  private readonly periodOf: Uint16Array;

  /**
   * @param rowsApart rows from the beginning of a repeat to that of the next, even
   * @param tying string that ties each knot, `rows x knotsAcross`
   */
  constructor(
    private readonly pattern: DiagonalPattern,
    private readonly rowsApart: number,
    private readonly tying: Uint16Array,
    private readonly cycles: readonly (readonly number[])[],
  ) {
    const { strings, start } = pattern;
    this.across = knotsAcross(pattern);
    this.cycleOf = new Uint16Array(strings);
    this.stepOf = new Uint16Array(strings);
    this.sequenceOf = new Uint16Array(strings);
    this.periodOf = new Uint16Array(strings);
    const numbers = new Map<string, number>();
    cycles.forEach((cycle, number) => {
      const period = periodRound(cycle.map((slot) => start[slot] as number));
      cycle.forEach((slot, step) => {
        this.cycleOf[slot] = number;
        this.stepOf[slot] = step;
        this.periodOf[slot] = period;
        // In the next repeat the string that hung one step back on the cycle comes here.
        const colours = Array.from(
          { length: period },
          (_, repeat) => start[this.back(slot, BigInt(repeat))] as number,
        );
        const key = colours.join(' ');
        if (!numbers.has(key)) numbers.set(key, numbers.size);
        this.sequenceOf[slot] = numbers.get(key) as number;
      });
    });
  }

  /** The fewest rows after which all that is seen begins anew. */
  period(): bigint {
    let repeats = 1n;
    for (const string of new Set(this.tying)) {
      if (string === NO_STRING_HERE) continue;
      repeats = leastCommonMultiple(repeats, BigInt(this.periodOf[string] as number));
    }
    let rows = repeats * BigInt(this.rowsApart);
    const primes = new Set([
      ...primeFactors(this.rowsApart),
      ...[...this.periodOf].flatMap(primeFactors),
    ]);
    for (const prime of primes) {
      while (rows % BigInt(prime) === 0n) {
        const fewer = rows / BigInt(prime);
        if (fewer % 2n === 1n || !this.goesOn(fewer, 0)) break;
        rows = fewer;
      }
    }
    return rows;
  }

  /** The shortest repeat that is moved sideways and takes fewer rows than `period`. */
  shifted(period: bigint): ShiftedRepeat | null {
    const { strings } = this.pattern;
    if (this.rowsApart * this.across > MOST_PLACES_SHIFTED) return null;
    const farthest = Math.floor(strings / 2);
    for (let rows = 1; rows <= MOST_ROWS_SHIFTED && BigInt(rows) < period; rows++) {
      for (let slots = 2 - (rows % 2); slots <= farthest; slots += 2) {
        if (this.goesOn(BigInt(rows), slots)) return { rows, slots };
        if (this.goesOn(BigInt(rows), -slots)) return { rows, slots: -slots };
      }
    }
    return null;
  }

  /** Whether every place is seen again so many rows further down and slots further right. */
  private goesOn(rows: bigint, slots: number): boolean {
    const { pattern, rowsApart, across, tying, sequenceOf } = this;
    const apart = BigInt(rowsApart);
    const moreRows = Number(rows % apart);
    const sameRepeat = this.sequencesAfter(rows / apart);
    const nextRepeat = this.sequencesAfter(rows / apart + 1n);
    for (let row = 0; row < rowsApart; row++) {
      const inNext = row + moreRows >= rowsApart;
      const other = row + moreRows - (inNext ? rowsApart : 0);
      const sequences = inNext ? nextRepeat : sameRepeat;
      const move = (firstSlotOf(pattern, row) + slots - firstSlotOf(pattern, other)) / 2;
      const end = Math.min(knotsInRow(pattern, row), knotsInRow(pattern, other) - move);
      const there = other * across + move;
      for (let place = Math.max(0, -move); place < end; place++) {
        // What is beyond the pattern's own rows is bare.
        const string = tying[row * across + place] ?? NO_STRING_HERE;
        const far = tying[there + place] ?? NO_STRING_HERE;
        if (string === NO_STRING_HERE || far === NO_STRING_HERE) {
          if (string !== far) return false;
        } else if (sequenceOf[string] !== sequences[far]) return false;
      }
    }
    return true;
  }

  /** For each slot's string the sequence that it shows from a repeat on. */
  private sequencesAfter(repeats: bigint): Uint16Array {
    return this.sequenceOf.map((_, slot) => this.sequenceOf[this.back(slot, repeats)] as number);
  }

  /** The slot so many steps back on the cycle of a slot. */
  private back(slot: number, steps: bigint): number {
    const cycle = this.cycles[this.cycleOf[slot] as number] as readonly number[];
    const { length } = cycle;
    const by = Number(steps % BigInt(length));
    return cycle[((this.stepOf[slot] as number) - by + length) % length] as number;
  }
}
