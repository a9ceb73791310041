import { ANY_COLOUR } from '../../diagonal/picture.js';
import type { TimeLimit } from '../clock.js';
import { type Core, shrink } from '../cores.js';
import { partOf, UNKNOWN, type WireEnds, wireEnds } from '../nearest/part.js';
import { type SoftTask, softTask } from '../nearest/part-search.js';
import { KnotFinder } from '../nearest/windows.js';
import type { DiagonalConflict } from '../options.js';
import { type Problem, placeOfCell } from '../problem.js';
import type { Literal, SatSolverMaker } from '../sat/solver.js';
import { search } from '../search.js';
import { type Task, wholeTask } from '../task.js';
import { countingConflict } from './counting-conflict.js';
import { conflictInWords, countingInWords } from './words.js';

/** How often a smaller conflict is looked for from another side. */
const TRIES = 6;
/** Longest time for one knot while others may be easier, in ms. */
const EACH = 2_000;
/** Longest time to find a smaller one than by counting, in s. */
const COUNTED = 3;

/** Knots of the net that cannot all show their colours. */
interface Found {
  readonly knots: readonly number[];
  readonly minimal: boolean;
}

/**
 * Wanted knots that cannot all show their colours, as few as are found. Bands of rows are searched,
 * low ones first, for one that cannot be knotted whatever is above and below it; it is made lower
 * row by row and narrower slot by slot; then its knots are left out one by one for as long as the
 * others conflict. What is left is minimal: without any one of them the others can be knotted.
 * Where time allows, it is tried in several orders, and the smallest is taken.
 *
 * Null where time was over before any was found.
 */
export async function findConflict(
  problem: Problem,
  maker: SatSolverMaker,
  time: TimeLimit,
): Promise<DiagonalConflict | null> {
  const counted = countingConflict(problem);
  // A conflict by counting is told at once, unless a smaller one is found before long.
  const within = counted === null ? time : time.next(COUNTED);
  const found = await new ConflictSearch(problem, maker, within).run();
  const placed = (knots: readonly number[]) =>
    [...knots]
      .sort((a, b) => a - b)
      .map((knot) => placeOfCell(problem.picture, problem.net.cells[knot] as number));
  const why = counted === null ? '' : countingInWords(problem, counted.rows);
  if (found !== null && (counted === null || found.knots.length <= counted.knots.length)) {
    const cells = placed(found.knots);
    const { minimal } = found;
    const message = `${conflictInWords(problem, cells, minimal)} ${why}`.trim();
    return { cells, minimal, message };
  }
  if (counted === null) return null;
  return { cells: placed(counted.knots), minimal: false, message: why };
}

class ConflictSearch {
  readonly #problem: Problem;
  readonly #maker: SatSolverMaker;
  readonly #time: TimeLimit;
  readonly #task: Task;
  readonly #ends: WireEnds;
  readonly #finder: KnotFinder;

  constructor(problem: Problem, maker: SatSolverMaker, time: TimeLimit) {
    this.#problem = problem;
    this.#maker = maker;
    this.#time = time;
    this.#task = wholeTask(problem);
    this.#ends = wireEnds(problem.net);
    this.#finder = new KnotFinder(problem);
  }

  async run(): Promise<Found | null> {
    const { rows, strings } = this.#problem.picture;
    for (let height = 4; ; height *= 2) {
      for (let row = 0; row === 0 || row + height / 2 < rows; row += height / 2) {
        if (this.#time.over) return null;
        const band = { rows: [row, row + height], slots: [0, strings] } as const;
        const found = await this.#inPart(this.#finder.inside(band));
        if (found !== null) return found;
      }
      if (height >= rows) return null;
    }
  }

  async #inPart(knots: readonly number[]): Promise<Found | null> {
    const nothing = new Uint8Array(this.#problem.net.wires).fill(UNKNOWN);
    const wanted = knots.filter((knot) => this.#task.asked[knot] !== ANY_COLOUR);
    if (wanted.length === 0) return null;
    const soft = softTask(partOf(this.#task, this.#ends, nothing, knots).task, this.#maker);
    if (soft === null) return null;
    try {
      return await this.#inBand(soft, knots, wanted);
    } finally {
      soft.encoding.solver.dispose();
    }
  }

  async #inBand(
    { encoding }: SoftTask,
    knots: readonly number[],
    wanted: readonly number[],
  ): Promise<Found | null> {
    const { solver, shows } = encoding;
    const literals = new Map(knots.map((knot, at) => [knot, shows[at] as Literal]));
    const named = new Map(knots.map((knot, at) => [shows[at] as Literal, knot]));
    const wishes = (of: readonly number[]) => of.map((knot) => literals.get(knot) as Literal);
    const conflicts = async (of: readonly number[]): Promise<boolean> =>
      (await search(solver, wishes(of), this.#time)) === 'unsatisfiable';

    if (!(await conflicts(wanted))) return null;
    let near = await this.#narrowed(
      wanted,
      conflicts,
      (knot) => this.#finder.rowOf[knot] as number,
    );
    near = await this.#narrowed(near, conflicts, (knot) => this.#finder.slotOf(knot));
    let best: Core = await shrink(solver, wishes(near), this.#time, EACH);
    for (let tries = 1; tries < TRIES && best.minimal && !this.#time.over; tries++) {
      const other = await shrink(solver, reordered(wishes(near), tries), this.#time, EACH);
      if (other.minimal && other.literals.length < best.literals.length) best = other;
    }
    const found = best.literals.map((literal) => named.get(literal) as number);
    return { knots: found, minimal: best.minimal };
  }

  /** The least stretch of places within which knots conflict; a place is a row, or a slot. */
  async #narrowed(
    knots: readonly number[],
    conflicts: (of: readonly number[]) => Promise<boolean>,
    placeOf: (knot: number) => number,
  ): Promise<readonly number[]> {
    const places = knots.map(placeOf);
    const last = Math.max(...places);
    let from = Math.min(...places);
    let width = last - from + 1;
    let best = knots;
    while (width > 1 && from + width - 2 <= last && !this.#time.over) {
      const smaller = knots.filter((_, at) => {
        const place = places[at] as number;
        return place >= from && place < from + width - 1;
      });
      if (smaller.length > 0 && (await conflicts(smaller))) {
        best = smaller;
        width--;
      } else from++;
    }
    return best;
  }
}

/** The same list in another order, told apart by a number. */
function reordered<T>(list: readonly T[], number: number): T[] {
  const from = Math.floor((list.length * number) / TRIES);
  const turned = [...list.slice(from), ...list.slice(0, from)];
  return number % 2 === 0 ? turned : turned.reverse();
}
