import { ANY_COLOUR } from '../diagonal/picture.js';
import type { Domains } from './domains.js';
import type { Literal, SatSolver } from './sat/solver.js';
import type { Task } from './task.js';

/** Up to this many literals, "at most one" is said for every pair of them. */
const PAIRS = 6;

/**
 * A task in clauses. "Wire w has colour c" is one variable for each colour the wire can still
 * have after narrowing, or a single one for a wire with two; a wire with one colour needs none.
 *
 * At a knot with wires a, b above and c, d below and any colour x: a wire below has x if one above
 * does, and the other way round; both have it below if both do above, and the other way round. So
 * the two below have the colours of the two above, in either order.
 */
export class Encoding {
  readonly solver: SatSolver;
  readonly #domains: Domains;
  readonly #colours: number;
  /** Literal of each colour of each wire; `this.never` where it cannot have it. */
  readonly #literals: Int32Array;
  readonly always: Literal;
  /** For each knot of the net: holds if the knot shows its colour; 0 where it may show any. */
  readonly shows: Int32Array;

  /**
   * @param soft whether knots show their colours only where `shows` is asked for; else they must
   */
  constructor(task: Task, domains: Domains, solver: SatSolver, soft: boolean) {
    this.solver = solver;
    this.#domains = domains;
    this.#colours = task.colours;
    this.always = solver.newVariable();
    solver.add([this.always]);
    this.#literals = new Int32Array(task.net.wires * this.#colours);
    this.shows = new Int32Array(task.net.knots);
    this.#wires(task);
    this.#knots(task, soft);
    this.#limits(task);
  }

  literal(wire: number, colour: number): Literal {
    return this.#literals[wire * this.#colours + colour] as number;
  }

  /** After 'satisfiable': the colour of each wire, by its number in the palette. */
  colours(): Uint8Array {
    const colours = this.#colours;
    const wires = this.#literals.length / colours;
    const result = new Uint8Array(wires);
    for (let wire = 0; wire < wires; wire++) {
      for (let colour = 0; colour < colours; colour++) {
        const literal = this.#literals[wire * colours + colour] as number;
        if (literal === -this.always) continue;
        if (literal !== this.always && !this.solver.holds(literal)) continue;
        result[wire] = colour;
        break;
      }
    }
    return result;
  }

  /** Adds a clause; what always or never holds is left out. */
  add(...clause: Literal[]): void {
    if (clause.includes(this.always)) return;
    this.solver.add(clause.filter((literal) => literal !== -this.always));
  }

  #wires({ net }: Task): void {
    const colours = this.#colours;
    for (let wire = 0; wire < net.wires; wire++) {
      const can: number[] = [];
      for (let colour = 0; colour < colours; colour++) {
        this.#literals[wire * colours + colour] = -this.always;
        if (this.#domains.has(wire, colour)) can.push(colour);
      }
      const literals = this.#oneOf(can.length);
      for (const [place, colour] of can.entries()) {
        this.#literals[wire * colours + colour] = literals[place] as number;
      }
    }
  }

  /** Literals of which exactly one holds. */
  #oneOf(count: number): Literal[] {
    if (count === 1) return [this.always];
    const first = this.solver.newVariable();
    if (count === 2) return [first, -first];
    const literals = [first];
    while (literals.length < count) literals.push(this.solver.newVariable());
    this.solver.add(literals);
    this.#atMostOne(literals);
    return literals;
  }

  #atMostOne(literals: readonly Literal[]): void {
    if (literals.length <= PAIRS) {
      for (let i = 1; i < literals.length; i++) {
        for (let j = 0; j < i; j++) {
          this.solver.add([-(literals[i] as number), -(literals[j] as number)]);
        }
      }
      return;
    }
    // In two parts, joined by a variable that says in which of them it may be.
    const half = PAIRS - 1;
    const elsewhere = this.solver.newVariable();
    this.#atMostOne([...literals.slice(0, half), elsewhere]);
    this.#atMostOne([-elsewhere, ...literals.slice(half)]);
  }

  #knots({ net, asked }: Task, soft: boolean): void {
    for (let knot = 0; knot < net.knots; knot++) {
      const a = net.aboveLeft[knot] as number;
      const b = net.aboveRight[knot] as number;
      const c = net.belowLeft[knot] as number;
      const d = net.belowRight[knot] as number;
      for (let colour = 0; colour < this.#colours; colour++) {
        const [la, lb] = [this.literal(a, colour), this.literal(b, colour)];
        const [lc, ld] = [this.literal(c, colour), this.literal(d, colour)];
        this.add(-la, lc, ld);
        this.add(-lb, lc, ld);
        this.add(-lc, la, lb);
        this.add(-ld, la, lb);
        this.add(-la, -lb, lc);
        this.add(-la, -lb, ld);
        this.add(-lc, -ld, la);
        this.add(-lc, -ld, lb);
      }
      const colour = asked[knot] as number;
      if (colour === ANY_COLOUR) continue;
      const shows = soft ? this.solver.newVariable() : this.always;
      this.shows[knot] = shows;
      this.add(-shows, this.literal(a, colour), this.literal(b, colour));
      this.add(-shows, this.literal(c, colour), this.literal(d, colour));
    }
  }

  /** At most so many strings of each colour. */
  #limits({ limits }: Task): void {
    for (const { colour, wires, most } of limits) {
      const strings = Array.from(wires, (wire) => this.literal(wire, colour));
      atMost(this, strings, most);
    }
  }
}

/**
 * At most `limit` of the literals hold: Sinz's sequential counter (CP 2005), in which register j
 * after literal i holds if j of the first i do.
 */
function atMost(encoding: Encoding, literals: readonly Literal[], limit: number): void {
  if (limit >= literals.length) return;
  let counted: Literal[] = [];
  for (const literal of literals) {
    const next: Literal[] = [];
    for (let j = 0; j <= Math.min(counted.length, limit - 1); j++) {
      const register = encoding.solver.newVariable();
      next.push(register);
      const before = counted[j];
      if (before !== undefined) encoding.add(-before, register);
      const lower = j === 0 ? encoding.always : (counted[j - 1] as number);
      encoding.add(-literal, -lower, register);
    }
    const full = limit === 0 ? encoding.always : counted[limit - 1];
    if (full !== undefined) encoding.add(-literal, -full);
    counted = next;
  }
}
