import { ANY_COLOUR } from '../../diagonal/picture.js';
import type { Clock } from '../clock.js';
import { hangLoose } from '../loose.js';
import type { Problem } from '../problem.js';
import type { SatSolverMaker } from '../sat/solver.js';
import { MOST_AT_ONCE, type Task, wholeTask } from '../task.js';
import { wrongByCounting } from './counting.js';
import { partOf, UNKNOWN, type WireEnds, wireEnds } from './part.js';
import { type SoftTask, searchPart, softTask } from './part-search.js';
import { KnotFinder } from './windows.js';

/** Rows of the windows in which a first pattern is laid from top to bottom. */
const FIRST_ROWS = 8;
/** Longest time for one window, in s. */
const WINDOW_SECONDS = 1.5;

export interface Nearest {
  /** Colour of each wire; null where not even one with every knot wrong was found. */
  readonly colours: Uint8Array | null;
  readonly wrong: number;
  /** Proven: there are this many wrong knots in every pattern, or more. */
  readonly least: number;
}

/**
 * Looks for the colours with the fewest wrong knots, from two sides in turn. The proof counts up:
 * it knows of ever more knots that must be wrong, and ends when it finds colours with so many. The
 * search counts down: it lays colours from top to bottom, and then betters them window by window,
 * each window exactly, with ever greater windows. Where the two meet, no pattern is nearer.
 */
export async function findNearest(
  problem: Problem,
  maker: SatSolverMaker,
  clock: Clock,
  least: number,
): Promise<Nearest> {
  const search = new NearestSearch(problem, maker, clock);
  return search.run(Math.max(least, wrongByCounting(problem)));
}

class NearestSearch {
  readonly #problem: Problem;
  readonly #maker: SatSolverMaker;
  readonly #clock: Clock;
  readonly #task: Task;
  readonly #ends: WireEnds;
  readonly #finder: KnotFinder;
  readonly #chance = chances(20_251_125);
  #colours: Uint8Array | null = null;
  #wrong = Number.POSITIVE_INFINITY;
  #least = 0;

  constructor(problem: Problem, maker: SatSolverMaker, clock: Clock) {
    this.#problem = problem;
    this.#maker = maker;
    this.#clock = clock;
    this.#task = wholeTask(problem);
    this.#ends = wireEnds(problem.net);
    this.#finder = new KnotFinder(problem);
  }

  get #done(): boolean {
    return this.#wrong <= this.#least || this.#clock.over;
  }

  async run(least: number): Promise<Nearest> {
    this.#knownLeast(least);
    const proof = this.#problem.net.knots > MOST_AT_ONCE ? null : softTask(this.#task, this.#maker);
    try {
      // Small pictures are done at once; of others the first pattern tells how far there is to go.
      let turn = 1;
      await this.#prove(proof, turn);
      if (!this.#done) await this.#lay(proof);
      const bettering = this.#better();
      const bounding = this.#boundByBands();
      while (!this.#done) {
        for (const steps of [bettering, bounding]) {
          const until = Date.now() + turn * 1_000;
          while (!this.#done && Date.now() < until) {
            if ((await steps.next()).done === true) break;
          }
        }
        await this.#prove(proof, turn);
        turn *= 1.5;
      }
    } finally {
      proof?.encoding.solver.dispose();
    }
    return { colours: this.#colours, wrong: this.#wrong, least: this.#least };
  }

  #knownLeast(least: number): void {
    if (Number.isFinite(least)) this.#least = Math.max(this.#least, least);
    this.#tell();
  }

  #found(colours: Uint8Array): void {
    const wrong = wrongIn(this.#task, colours);
    if (wrong >= this.#wrong) return;
    this.#wrong = wrong;
    this.#colours = colours;
    this.#tell();
  }

  #tell(): void {
    this.#clock.found(Number.isFinite(this.#wrong) ? this.#wrong : null, this.#least);
    this.#clock.tell('nearing', null);
  }

  async #prove(proof: SoftTask | null, seconds: number): Promise<void> {
    if (proof === null || this.#done) return;
    const { encoding, fewest } = proof;
    const told = () => this.#knownLeast(fewest.least);
    const reached = await fewest.run(this.#clock.next(seconds), this.#wrong, told);
    this.#knownLeast(fewest.least);
    if (reached) this.#found(encoding.colours());
  }

  /**
   * What must be wrong in one band of rows, whatever the rest, must be wrong besides what must be
   * so in another: a bound for pieces too large to be searched as a whole. A band at each step.
   */
  async *#boundByBands(): AsyncGenerator<void, void, undefined> {
    const { picture, net } = this.#problem;
    const nothing = new Uint8Array(net.wires).fill(UNKNOWN);
    const task = { ...this.#task, limits: [] };
    for (let height = FIRST_ROWS; height < picture.rows; height *= 2) {
      // Cut in two ways, so that what one cuts apart the other holds together.
      for (const offset of [0, height / 2]) {
        let least = 0;
        for (let row = offset - height; row < picture.rows; row += height) {
          const rows: [number, number] = [Math.max(0, row), Math.max(0, row + height)];
          const knots = this.#finder.inside({ rows, slots: [0, picture.strings] });
          if (knots.length === 0) continue;
          const soft = softTask(partOf(task, this.#ends, nothing, knots).task, this.#maker);
          if (soft === null) continue;
          const seconds = (WINDOW_SECONDS * height) / FIRST_ROWS;
          await soft.fewest.run(this.#clock.next(seconds), Number.POSITIVE_INFINITY);
          soft.encoding.solver.dispose();
          least += soft.fewest.least;
          yield;
        }
        this.#knownLeast(least);
      }
    }
  }

  /** A first pattern: rows are laid in windows that overlap by half. */
  async #lay(proof: SoftTask | null): Promise<void> {
    const { picture, net } = this.#problem;
    const colours = new Uint8Array(net.wires).fill(UNKNOWN);
    let height = FIRST_ROWS;
    for (let row = 0; row < picture.rows; ) {
      const rows: [number, number] = [row, Math.min(row + height, picture.rows)];
      const knots = this.#finder.inside({ rows, slots: [0, picture.strings] });
      const part = partOf(this.#task, this.#ends, colours, knots);
      const time = this.#clock.next(WINDOW_SECONDS);
      const last = height <= 2 || this.#clock.over;
      const found = await searchPart(part.task, this.#maker, time, Number.POSITIVE_INFINITY, last);
      if (found.colours === null) {
        if (height <= 2) break;
        height = Math.ceil(height / 2);
        continue;
      }
      for (const [number, wire] of part.wires.entries()) {
        colours[wire] = found.colours[number] as number;
      }
      row += rows[1] === picture.rows ? height : Math.max(1, height >> 1);
      height = FIRST_ROWS;
    }
    if (hangLoose(this.#problem, colours)) this.#found(colours);
    // The ends of a closed repeat may not have met: any colours that do, then.
    else if (
      proof !== null &&
      proof.encoding.solver.solve([], Date.now() + 5_000) === 'satisfiable'
    ) {
      this.#found(proof.encoding.colours());
    }
  }

  /** Betters the pattern found, a window at each step, without end. */
  async *#better(): AsyncGenerator<void, void, undefined> {
    const { picture } = this.#problem;
    const { rows: all, strings } = picture;
    for (let size = 8; ; size = Math.ceil(size * 1.4)) {
      const rows = Math.min(size, all);
      const slots = Math.min(size, strings);
      const shapes: [number, number][] = [[rows, slots]];
      if (size > 8) shapes.push([all, Math.max(3, slots >> 2)], [Math.max(2, rows >> 2), strings]);
      for (const [height, width] of shapes) {
        for (let bettered = true; bettered; ) {
          bettered = false;
          const colours = this.#colours;
          if (colours === null) return;
          for (const knot of this.#shuffled(wrongKnots(this.#task, colours))) {
            if (await this.#betterAbout(knot, height, width)) bettered = true;
            yield;
          }
        }
      }
    }
  }

  async #betterAbout(knot: number, rows: number, slots: number): Promise<boolean> {
    const colours = this.#colours as Uint8Array;
    if (!isWrong(this.#task, colours, knot)) return false;
    const window = this.#finder.about(knot, rows, slots, this.#chance);
    const knots = this.#finder.inside(window);
    if (knots.length > MOST_AT_ONCE) return false;
    const part = partOf(this.#task, this.#ends, colours, knots);
    const before = knots.filter((one) => isWrong(this.#task, colours, one)).length;
    const time = this.#clock.next(WINDOW_SECONDS);
    const found = await searchPart(part.task, this.#maker, time, before, false);
    if (found.colours === null) {
      if (found.best && knots.length === this.#task.net.knots) this.#knownLeast(before);
      return false;
    }
    const next = colours.slice();
    for (const [number, wire] of part.wires.entries()) next[wire] = found.colours[number] as number;
    const bettered = wrongIn(this.#task, next) < this.#wrong;
    this.#found(next);
    return bettered;
  }

  #shuffled(list: readonly number[]): number[] {
    const result = [...list];
    for (let at = result.length - 1; at > 0; at--) {
      const other = Math.floor(this.#chance() * (at + 1));
      const one = result[at] as number;
      result[at] = result[other] as number;
      result[other] = one;
    }
    return result;
  }
}

/** The same numbers from 0 to 1 in every run (a linear congruential generator). */
function chances(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

function isWrong({ net, asked }: Task, colours: Uint8Array, knot: number): boolean {
  const wanted = asked[knot] as number;
  return (
    wanted !== ANY_COLOUR &&
    colours[net.aboveLeft[knot] as number] !== wanted &&
    colours[net.aboveRight[knot] as number] !== wanted
  );
}

function wrongKnots(task: Task, colours: Uint8Array): number[] {
  const wrong: number[] = [];
  for (let knot = 0; knot < task.net.knots; knot++) {
    if (isWrong(task, colours, knot)) wrong.push(knot);
  }
  return wrong;
}

function wrongIn(task: Task, colours: Uint8Array): number {
  return wrongKnots(task, colours).length;
}
