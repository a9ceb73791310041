import { ANY_COLOUR } from '../../diagonal/picture.js';
import { LEFT_TIES, PLACES_CHANGE } from '../../diagonal/simulate.js';
import type { Clock, TimeLimit } from '../clock.js';
import { Domains } from '../domains.js';
import { Encoding } from '../encode.js';
import { FewestGivenUp } from '../nearest/fewest.js';
import { type Part, partOf, type WireEnds, wireEnds } from '../nearest/part.js';
import { KnotFinder } from '../nearest/windows.js';
import type { Problem } from '../problem.js';
import type { Literal, SatSolverMaker } from '../sat/solver.js';
import { fewestChanges, possibleKinds } from '../settle.js';
import { type Task, wholeTask } from '../task.js';

/** Rows and slots of the windows, one size after the other. */
const WINDOWS = [
  [3, 6],
  [4, 9],
  [6, 12],
] as const;
/** Longest time for one window, in s. */
const WINDOW_SECONDS = 0.5;

/**
 * Colours with which fewer neighbours in a row are knots of different kinds. Window by window the
 * colours and kinds within are chosen anew, with as few changes as can be while all about stays as
 * it is; it ends when no window of the sizes betters, or the time is over. A pattern with fewer
 * changes may still be.
 */
export async function fewerChanges(
  problem: Problem,
  found: Uint8Array,
  maker: SatSolverMaker,
  clock: Clock,
  time: TimeLimit,
): Promise<Uint8Array> {
  const search = new ChangesSearch(problem, found, maker);
  const { rows, strings } = problem.picture;
  for (const [height, width] of WINDOWS) {
    for (let bettered = true; bettered; ) {
      bettered = false;
      for (let row = 0; row < rows; row += Math.ceil(height / 2)) {
        clock.tell('tidying', row / rows);
        for (let slot = 0; slot + 1 < strings; slot += Math.ceil(width / 2)) {
          if (time.over) return search.colours;
          const window = { rows: [row, row + height], slots: [slot, slot + width] } as const;
          if (await search.better(window, time)) bettered = true;
        }
      }
    }
  }
  return search.colours;
}

class ChangesSearch {
  colours: Uint8Array;
  readonly #problem: Problem;
  readonly #maker: SatSolverMaker;
  readonly #task: Task;
  readonly #ends: WireEnds;
  readonly #finder: KnotFinder;
  #kinds: Uint8Array;
  #changes: number;

  constructor(problem: Problem, colours: Uint8Array, maker: SatSolverMaker) {
    this.#problem = problem;
    this.#maker = maker;
    this.colours = colours;
    this.#task = wholeTask(problem);
    this.#ends = wireEnds(problem.net);
    this.#finder = new KnotFinder(problem);
    this.#kinds = this.#kindsOf(colours);
    this.#changes = this.#pairs(0, problem.net.knots).filter((at) => this.#changesAt(at)).length;
  }

  async better(window: Parameters<KnotFinder['inside']>[0], time: TimeLimit): Promise<boolean> {
    const knots = this.#finder.inside(window);
    const inside = new Set(knots);
    const pairs = [...new Set(knots.flatMap((knot) => [knot - 1, knot]))].filter((at) => {
      return this.#isPair(at);
    });
    const before = pairs.filter((at) => this.#changesAt(at)).length;
    if (before === 0) return false;
    const part = partOf(this.#task, this.#ends, this.colours, knots);
    const domains = new Domains(part.task);
    if (!domains.narrowAll()) return false;
    const solver = this.#maker('often');
    try {
      const encoding = new Encoding(part.task, domains, solver, false);
      const [ties, crosses] = this.#kindLiterals(part, encoding);
      const place = new Map(knots.map((knot, at) => [knot, at]));
      const literals = (knot: number): [Literal, Literal] => {
        const at = place.get(knot);
        if (at !== undefined) return [ties[at] as Literal, crosses[at] as Literal];
        const kind = this.#kinds[knot] as number;
        const { always } = encoding;
        return [LEFT_TIES[kind] ? always : -always, PLACES_CHANGE[kind] ? always : -always];
      };
      const wishes = pairs
        .filter((at) => inside.has(at) || inside.has(at + 1))
        .map((at) => same(encoding, literals(at), literals(at + 1)));
      const fewest = new FewestGivenUp(solver, wishes);
      if (!(await fewest.run(time.next(WINDOW_SECONDS), before))) return false;
      return this.#take(part, encoding.colours());
    } finally {
      solver.dispose();
    }
  }

  #take(part: Part, within: Uint8Array): boolean {
    const colours = this.colours.slice();
    for (const [number, wire] of part.wires.entries()) colours[wire] = within[number] as number;
    const kinds = this.#kindsOf(colours);
    const old = this.#kinds;
    this.#kinds = kinds;
    const changes = this.#pairs(0, kinds.length).filter((at) => this.#changesAt(at)).length;
    if (changes >= this.#changes) {
      this.#kinds = old;
      return false;
    }
    this.#changes = changes;
    this.colours = colours;
    return true;
  }

  #kindsOf(colours: Uint8Array): Uint8Array {
    return fewestChanges(this.#problem, possibleKinds(this.#problem, colours));
  }

  /** Whether a knot and the next one are neighbours in a row. */
  #isPair(knot: number): boolean {
    const { rowOf } = this.#finder;
    return knot >= 0 && knot + 1 < rowOf.length && rowOf[knot] === rowOf[knot + 1];
  }

  #pairs(from: number, to: number): number[] {
    const pairs: number[] = [];
    for (let knot = from; knot < to; knot++) if (this.#isPair(knot)) pairs.push(knot);
    return pairs;
  }

  #changesAt(knot: number): boolean {
    return this.#kinds[knot] !== this.#kinds[knot + 1];
  }

  /** For each knot of a part: "the left string ties", and "the places change". */
  #kindLiterals({ task }: Part, encoding: Encoding): [Literal[], Literal[]] {
    const { net, asked } = task;
    const ties: Literal[] = [];
    const crosses: Literal[] = [];
    for (let knot = 0; knot < net.knots; knot++) {
      const a = net.aboveLeft[knot] as number;
      const b = net.aboveRight[knot] as number;
      const c = net.belowLeft[knot] as number;
      const d = net.belowRight[knot] as number;
      const left = encoding.solver.newVariable();
      const cross = encoding.solver.newVariable();
      ties.push(left);
      crosses.push(cross);
      const wanted = asked[knot] as number;
      if (wanted !== ANY_COLOUR) {
        encoding.add(-left, encoding.literal(a, wanted));
        encoding.add(left, encoding.literal(b, wanted));
      }
      for (let colour = 0; colour < task.colours; colour++) {
        encoding.add(-cross, -encoding.literal(a, colour), encoding.literal(d, colour));
        encoding.add(-cross, -encoding.literal(b, colour), encoding.literal(c, colour));
        encoding.add(cross, -encoding.literal(a, colour), encoding.literal(c, colour));
        encoding.add(cross, -encoding.literal(b, colour), encoding.literal(d, colour));
      }
    }
    return [ties, crosses];
  }
}

/** A wish that two knots are of one kind. */
function same(
  encoding: Encoding,
  [ties, crosses]: readonly [Literal, Literal],
  [otherTies, otherCrosses]: readonly [Literal, Literal],
): Literal {
  const wish = encoding.solver.newVariable();
  encoding.add(-wish, -ties, otherTies);
  encoding.add(-wish, ties, -otherTies);
  encoding.add(-wish, -crosses, otherCrosses);
  encoding.add(-wish, crosses, -otherCrosses);
  return wish;
}
