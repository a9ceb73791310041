import { ANY_COLOUR, type DiagonalPicture } from '../diagonal/picture.js';
import { LEFT_TIES, PLACES_CHANGE } from '../diagonal/simulate.js';
import { Clock } from './clock.js';
import { Domains } from './domains.js';
import { Encoding } from './encode.js';
import type { SolveOptions } from './options.js';
import { type Problem, problemOf } from './problem.js';
import { loadCadical } from './sat/cadical.js';
import type { Literal } from './sat/solver.js';
import { search } from './search.js';
import { possibleKinds } from './settle.js';
import { MOST_AT_ONCE, wholeTask } from './task.js';

export type ForcedOptions = Pick<
  SolveOptions,
  'start' | 'repeat' | 'most' | 'seconds' | 'signal' | 'onProgress'
>;

/** What a picture alone says of how it was knotted. */
export interface ForcedKnots {
  /**
   * `read`: what is left out below is proven impossible. `impossible`: no pattern shows the picture.
   * `stopped`: time ran out, or the piece is too long
   * for all of it; what could not be ruled out by then is told as possible.
   */
  readonly status: 'read' | 'impossible' | 'stopped';
  /**
   * Kinds of each knot that some pattern of the picture has, as bits in the order of KNOT_KINDS;
   * 0 where no knot is. When stopped, all that are not proven impossible.
   */
  readonly kinds: Uint8Array;
  /** The colour that each string starts in with every pattern, or ANY_COLOUR. */
  readonly start: Uint8Array;
  /** Knots that are of one kind in every pattern. */
  readonly forced: number;
}

/**
 * Reads a picture the other way round: which kinds its knots can have, and which starting colours
 * its strings, in any of the patterns that show it.
 *
 * @throws InputError for a picture or options that make no sense
 */
export async function forcedKnots(
  wanted: DiagonalPicture,
  options: ForcedOptions = {},
): Promise<ForcedKnots> {
  const clock = new Clock(options);
  const problem = problemOf(wanted, options, true);
  const task = wholeTask(problem);
  const domains = new Domains(task);
  clock.tell('reading');
  if (!domains.narrowAll()) return nothing(problem);
  if (problem.net.knots > MOST_AT_ONCE) return byNarrowing(problem, domains);
  const solver = (await loadCadical())('often');
  try {
    const encoding = new Encoding(task, domains, solver, false);
    const reading = new Reading(problem, domains, encoding);
    for (;;) {
      const open = reading.askForNew();
      const verdict = await search(solver, open === null ? [] : [open], clock);
      clock.tell('reading', reading.share);
      if (verdict === 'satisfiable') reading.see(encoding.colours());
      else if (open === null && verdict === 'unsatisfiable') return nothing(problem);
      else return reading.result(verdict === 'unsatisfiable' ? 'read' : 'stopped');
    }
  } finally {
    solver.dispose();
  }
}

function nothing({ picture }: Problem): ForcedKnots {
  return {
    status: 'impossible',
    kinds: new Uint8Array(picture.cells.length),
    start: new Uint8Array(picture.strings).fill(ANY_COLOUR),
    forced: 0,
  };
}

/** What narrowing alone tells. */
function byNarrowing({ picture, net }: Problem, domains: Domains): ForcedKnots {
  const kinds = new Uint8Array(picture.cells.length);
  let forced = 0;
  for (let knot = 0; knot < net.knots; knot++) {
    const can = domains.kindsOf(knot);
    kinds[net.cells[knot] as number] = can;
    if ((can & (can - 1)) === 0) forced++;
  }
  const start = new Uint8Array(picture.strings).fill(ANY_COLOUR);
  return { status: 'stopped', kinds, start, forced };
}

/** What was seen in patterns so far, and the question for a pattern with something not yet seen. */
class Reading {
  readonly #problem: Problem;
  readonly #domains: Domains;
  readonly #encoding: Encoding;
  readonly #seen: Uint8Array;
  readonly #colours: Set<number>[];
  /** Literals that hold only if a kind not yet seen, or a colour at the start, is there. */
  readonly #asked = new Map<Literal, () => boolean>();
  #begun = false;

  constructor(problem: Problem, domains: Domains, encoding: Encoding) {
    this.#problem = problem;
    this.#domains = domains;
    this.#encoding = encoding;
    this.#seen = new Uint8Array(problem.net.knots);
    this.#colours = Array.from(problem.net.start, () => new Set());
  }

  /** Share of the kinds of all knots that are known to be possible or not. */
  get share(): number | null {
    const { knots } = this.#problem.net;
    return knots === 0 ? null : 1 - this.#asked.size / (4 * knots);
  }

  see(colours: Uint8Array): void {
    const { net } = this.#problem;
    for (const [knot, kinds] of possibleKinds(this.#problem, colours).entries()) {
      this.#seen[knot] = (this.#seen[knot] as number) | kinds;
    }
    for (const [slot, wire] of net.start.entries()) {
      this.#colours[slot]?.add(colours[wire] as number);
    }
    if (!this.#begun) this.#defineAll();
    this.#begun = true;
  }

  /** An assumption that something not yet seen is there; null before anything was seen. */
  askForNew(): Literal | null {
    if (!this.#begun) return null;
    const { solver } = this.#encoding;
    for (const [literal, isSeen] of this.#asked) {
      if (!isSeen()) continue;
      this.#asked.delete(literal);
      solver.prefer(-literal);
    }
    const open = solver.newVariable();
    solver.add([-open, ...this.#asked.keys()]);
    return open;
  }

  result(status: 'read' | 'stopped'): ForcedKnots {
    const { picture, net, palette } = this.#problem;
    const kinds = new Uint8Array(picture.cells.length);
    let forced = 0;
    for (let knot = 0; knot < net.knots; knot++) {
      const seen = status === 'read' ? (this.#seen[knot] as number) : this.#domains.kindsOf(knot);
      kinds[net.cells[knot] as number] = seen;
      if ((seen & (seen - 1)) === 0) forced++;
    }
    const start = Uint8Array.from(this.#colours, (colours) => {
      const [only] = colours;
      if (status !== 'read' || colours.size !== 1 || only === undefined) return ANY_COLOUR;
      return palette[only] as number;
    });
    return { status, kinds, start, forced };
  }

  #defineAll(): void {
    const { net, palette } = this.#problem;
    const { solver } = this.#encoding;
    for (let knot = 0; knot < net.knots; knot++) {
      for (let kind = 0; kind < 4; kind++) {
        const isSeen = () => (((this.#seen[knot] as number) >>> kind) & 1) === 1;
        if (isSeen()) continue;
        const there = solver.newVariable();
        for (const clause of this.#clauses(knot, kind)) this.#encoding.add(-there, ...clause);
        // Tried first: so a pattern brings as much at once that is new as goes together.
        solver.prefer(there);
        this.#asked.set(there, isSeen);
      }
    }
    for (const [slot, wire] of net.start.entries()) {
      for (let colour = 0; colour < palette.length; colour++) {
        const literal = this.#encoding.literal(wire, colour);
        if (Math.abs(literal) === this.#encoding.always) continue;
        const there = solver.newVariable();
        solver.add([-there, literal]);
        this.#asked.set(there, () => this.#colours[slot]?.has(colour) === true);
      }
    }
  }

  /** What holds where a knot is of a kind; the rest follows from the clauses of the knot. */
  #clauses(knot: number, kind: number): Literal[][] {
    const { net, asked, palette } = this.#problem;
    const cross = PLACES_CHANGE[kind] === true;
    const wanted = asked[knot] as number;
    const literal = (wires: Int32Array, colour: number) =>
      this.#encoding.literal(wires[knot] as number, colour);
    if (wanted !== ANY_COLOUR) {
      const left = LEFT_TIES[kind] === true;
      const above = left ? net.aboveLeft : net.aboveRight;
      const below = left === cross ? net.belowRight : net.belowLeft;
      return [[literal(above, wanted)], [literal(below, wanted)]];
    }
    const [belowLeft, belowRight] = cross
      ? [net.belowRight, net.belowLeft]
      : [net.belowLeft, net.belowRight];
    return palette.flatMap((_, colour) => [
      [-literal(net.aboveLeft, colour), literal(belowLeft, colour)],
      [-literal(net.aboveRight, colour), literal(belowRight, colour)],
    ]);
  }
}
