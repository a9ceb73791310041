import { knotsAcross } from '../diagonal/lattice.js';
import { type DiagonalPattern, NO_KNOT } from '../diagonal/pattern.js';
import { BARE } from '../diagonal/picture.js';
import { type DiagonalPlan, hangingStrings } from '../diagonal/plan.js';
import type { DiagonalDrawn } from '../diagonal-picture/drawn.js';
import { Fault } from '../model/fault.js';
import { halvesOf, KNOT_KINDS, type KnotKind, startSide } from '../model/knot.js';
import { Machine } from '../model/machine.js';
import { Op, StepListBuilder } from '../model/steplist.js';
import { safeColour } from '../picture/markup.js';
import { checkDiagonalMistakes } from './check.js';
import type { DiagonalMistake } from './mistake.js';
import { HALF, type Piece, type PieceRow, pieceOf } from './piece.js';
import { DiagonalLook, type DiagonalSeen } from './seen.js';

/** What a diagonal piece becomes through its maker's mistakes. */
export interface MistakenDiagonal {
  readonly mistakes: readonly DiagonalMistake[];
  /**
   * What was really done, by steps that the state machine can do one after another. A single half
   * hitch is not among them: it holds nothing, and its string is laid to where the knot asks.
   */
  readonly plan: DiagonalPlan;
  /** Everything that can be seen of the piece. */
  readonly seen: DiagonalSeen;
  /** The row of the pattern that each row of the piece follows, from 0. */
  readonly sources: readonly number[];
  /** The piece for `drawDiagonal`. */
  readonly drawn: DiagonalDrawn;
}

export interface MistakenDiagonalOptions {
  /** Rows knotted so far. Default: all of them. */
  readonly rows?: number;
}

/**
 * Knots a pattern as a maker does who makes these mistakes and goes on by the written rows
 * without noticing. docs/mistakes.md says how such a maker behaves.
 *
 * @throws InputError when a mistake does not fit the pattern
 */
export function makeDiagonalMistakes(
  pattern: DiagonalPattern,
  mistakes: readonly DiagonalMistake[],
  options: MistakenDiagonalOptions = {},
): MistakenDiagonal {
  checkDiagonalMistakes(pattern, mistakes);
  const piece = pieceOf(pattern, mistakes);
  const rows = Math.min(piece.rows.length, options.rows ?? Number.POSITIVE_INFINITY);
  const tied = new Maker(piece, rows).tie();
  return { mistakes, sources: piece.rows.slice(0, rows).map(({ source }) => source), ...tied };
}

/** As makeDiagonalMistakes, for one. */
export function makeDiagonalMistake(
  pattern: DiagonalPattern,
  mistake: DiagonalMistake,
  options: MistakenDiagonalOptions = {},
): MistakenDiagonal {
  return makeDiagonalMistakes(pattern, [mistake], options);
}

const HALF_OP = { forward: Op.halfForward, backward: Op.halfBackward } as const;

/** A maker at work, by steps of the state machine; what is seen is read off the steps. */
class Maker {
  private readonly machine: Machine;
  private readonly steps: StepListBuilder;
  private readonly strings;
  private readonly across: number;
  private readonly cells: Uint8Array;
  private readonly looks: Uint8Array;
  private readonly order: Uint16Array;
  private readonly tying: number[][] = [];

  constructor(
    private readonly piece: Piece,
    private readonly rows: number,
  ) {
    this.strings = hangingStrings({ ...piece.pattern, start: piece.start });
    const hung = this.strings.map(({ id }) => id);
    this.machine = new Machine(this.strings, hung);
    this.steps = new StepListBuilder(this.strings);
    this.across = knotsAcross(piece.pattern);
    this.cells = new Uint8Array(rows * this.across).fill(BARE);
    this.looks = new Uint8Array(rows * this.across).fill(DiagonalLook.none);
    this.order = new Uint16Array((rows + 1) * this.strings.length);
  }

  tie(): Pick<MistakenDiagonal, 'plan' | 'seen' | 'drawn'> {
    const { piece, rows } = this;
    for (let row = 0; row < rows; row++) {
      if (row > 0) this.step(Op.turn);
      this.hangs(row);
      this.row(row, piece.rows[row] as PieceRow);
    }
    this.hangs(rows);
    return { plan: this.plan(), seen: this.seen(), drawn: this.drawn() };
  }

  private hangs(row: number): void {
    const { front, frontLength } = this.machine;
    this.order.set(front.subarray(0, frontLength), row * this.strings.length);
  }

  private row(row: number, { slots, knots }: PieceRow): void {
    const ties: number[] = [];
    this.tying.push(ties);
    for (let place = 0; place < this.across; place++) {
      const knot = knots[place] as number;
      if (knot === NO_KNOT) continue;
      const kind = KNOT_KINDS[knot % HALF] as KnotKind;
      const { front } = this.machine;
      const slot = slots[place] as number;
      const pair = [front[slot], front[slot + 1]] as [number, number];
      const [tying, held] = startSide(kind) === 'left' ? pair : [pair[1], pair[0]];
      ties[place] = tying;
      const cell = row * this.across + place;
      this.cells[cell] = this.piece.start[tying] as number;
      this.looks[cell] = knot >= HALF ? DiagonalLook.half : knot;
      const [first, second] = halvesOf(kind);
      if (knot < HALF) {
        this.step(HALF_OP[first], tying, held);
        this.step(HALF_OP[second], tying, held);
      } else if (first === second) {
        this.step(Op.parkBehind, tying);
        this.step(Op.takeUp, tying, startSide(kind) === 'left' ? slot + 1 : slot);
      }
    }
  }

  private step(op: Op, a = 0, b = 0): void {
    const fault = this.machine.run(op, a, b);
    if (fault !== Fault.none) {
      throw new Error(`The maker took a step that cannot be done: ${fault}.`);
    }
    this.steps.code(op, a, b);
  }

  private plan(): DiagonalPlan {
    const { name, strings, first } = this.piece.pattern;
    return {
      name,
      lattice: { strings, rows: this.rows, first },
      strings: this.strings,
      hung: this.strings.map(({ id }) => id),
      steps: this.steps.finish(),
    };
  }

  private seen(): DiagonalSeen {
    const { name, strings, first, colours } = this.piece.pattern;
    const { rows, cells, looks } = this;
    const hanging = Uint8Array.from(
      this.order.subarray(rows * strings),
      (string) => this.piece.start[string] as number,
    );
    return { name, strings, rows, first, colours, cells, looks, hanging };
  }

  private drawn(): DiagonalDrawn {
    const { piece, rows, order, tying, strings } = this;
    const { name, first } = piece.pattern;
    const colours = strings.map(({ colour }) => safeColour(colour));
    return {
      name,
      strings: strings.length,
      rows,
      first,
      order,
      colourOf: (string) => colours[string] ?? '#808080',
      *knotsOf(row) {
        const { slots, knots } = piece.rows[row] as PieceRow;
        for (let place = 0; place < knots.length; place++) {
          const kind = KNOT_KINDS[(knots[place] as number) % HALF];
          const ties = tying[row]?.[place];
          if (knots[place] === NO_KNOT || kind === undefined || ties === undefined) continue;
          const half = (knots[place] as number) >= HALF;
          yield { place, slot: slots[place] as number, kind, half, tying: ties };
        }
      },
    };
  }
}
