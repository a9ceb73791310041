import { ANY_COLOUR } from '../diagonal/picture.js';
import { LEFT_TIES, PLACES_CHANGE } from '../diagonal/simulate.js';
import type { Task } from './task.js';
import type { Net } from './weave.js';

/**
 * The colours that each wire can still have, as bits: colours 0-31 in `low`, 32-63 in `high`.
 * Narrowing looks at one knot at a time: a colour that a wire cannot have in any of the knot's four
 * ways is struck out, until nothing changes. What is struck out is impossible; what is left need
 * not be possible.
 */
export class Domains {
  readonly low: Uint32Array;
  readonly high: Uint32Array;
  readonly #net: Net;
  readonly #asked: Uint8Array;
  readonly #above: Int32Array;
  readonly #below: Int32Array;

  readonly #queue: Int32Array;
  readonly #queued: Uint8Array;
  #head = 0;
  #waiting = 0;
  /** The knot that no colours are left for, or -1. */
  emptied = -1;

  constructor({ net, asked, fixed, colours }: Omit<Task, 'limits'>) {
    this.#net = net;
    this.#asked = asked;
    this.low = new Uint32Array(net.wires).fill(bits(colours));
    this.high = new Uint32Array(net.wires).fill(bits(colours - 32));
    this.#above = new Int32Array(net.wires).fill(-1);
    this.#below = new Int32Array(net.wires).fill(-1);
    for (let knot = 0; knot < net.knots; knot++) {
      this.#below[net.aboveLeft[knot] as number] = knot;
      this.#below[net.aboveRight[knot] as number] = knot;
      this.#above[net.belowLeft[knot] as number] = knot;
      this.#above[net.belowRight[knot] as number] = knot;
    }
    this.#queue = new Int32Array(Math.max(net.knots, 1));
    this.#queued = new Uint8Array(net.knots);
    for (let wire = 0; wire < net.wires; wire++) {
      const colour = fixed[wire] as number;
      if (colour !== ANY_COLOUR) this.keep(wire, colour);
    }
  }

  /** Strikes out all colours of a wire but one; `narrow` then carries it on. */
  keep(wire: number, colour: number): void {
    const lowBit = colour < 32 ? 1 << colour : 0;
    const highBit = colour < 32 ? 0 : 1 << (colour - 32);
    this.#set(wire, (this.low[wire] as number) & lowBit, (this.high[wire] as number) & highBit);
  }

  has(wire: number, colour: number): boolean {
    return colour < 32
      ? (((this.low[wire] as number) >>> colour) & 1) === 1
      : (((this.high[wire] as number) >>> (colour - 32)) & 1) === 1;
  }

  /** Kinds that a knot can have as far as its four wires tell, as bits in the order of KNOT_KINDS. */
  kindsOf(knot: number): number {
    const { aboveLeft, aboveRight, belowLeft, belowRight } = this.#net;
    const wanted = this.#asked[knot] as number;
    let kinds = 0;
    for (let kind = 0; kind < 4; kind++) {
      const [left, right] = PLACES_CHANGE[kind] ? [belowRight, belowLeft] : [belowLeft, belowRight];
      const [ties, tied, held, holds] = LEFT_TIES[kind]
        ? [aboveLeft, left, aboveRight, right]
        : [aboveRight, right, aboveLeft, left];
      const one = [ties[knot], tied[knot]] as [number, number];
      const other = [held[knot], holds[knot]] as [number, number];
      const shows =
        wanted === ANY_COLOUR
          ? this.#share(...one)
          : this.has(one[0], wanted) && this.has(one[1], wanted);
      if (shows && this.#share(...other)) kinds |= 1 << kind;
    }
    return kinds;
  }

  /** Whether two wires can have the same colour. */
  #share(one: number, other: number): boolean {
    const low = (this.low[one] as number) & (this.low[other] as number);
    return (low | ((this.high[one] as number) & (this.high[other] as number))) !== 0;
  }

  /** Looks at every knot, and at those about it again whenever something changes. */
  narrowAll(): boolean {
    for (let knot = 0; knot < this.#net.knots; knot++) this.#ask(knot);
    return this.narrow();
  }

  /** False where a wire is left without a colour: there is no pattern. */
  narrow(): boolean {
    const size = this.#queue.length;
    while (this.#waiting > 0 && this.emptied < 0) {
      const knot = this.#queue[this.#head] as number;
      this.#head = this.#head + 1 === size ? 0 : this.#head + 1;
      this.#waiting--;
      this.#queued[knot] = 0;
      if (!this.#revise(knot)) this.emptied = knot;
    }
    return this.emptied < 0;
  }

  #ask(knot: number): void {
    if (knot < 0 || this.#queued[knot] === 1) return;
    this.#queued[knot] = 1;
    const size = this.#queue.length;
    const at = this.#head + this.#waiting;
    this.#queue[at >= size ? at - size : at] = knot;
    this.#waiting++;
  }

  #set(wire: number, low: number, high: number): void {
    if (low >>> 0 === this.low[wire] && high >>> 0 === this.high[wire]) return;
    this.low[wire] = low;
    this.high[wire] = high;
    this.#ask(this.#above[wire] as number);
    this.#ask(this.#below[wire] as number);
  }

  #revise(knot: number): boolean {
    const { low, high } = this;
    const a = this.#net.aboveLeft[knot] as number;
    const b = this.#net.aboveRight[knot] as number;
    const c = this.#net.belowLeft[knot] as number;
    const d = this.#net.belowRight[knot] as number;
    const [al, ah, bl, bh] = [low[a], high[a], low[b], high[b]] as [number, number, number, number];
    const [cl, ch, dl, dh] = [low[c], high[c], low[d], high[d]] as [number, number, number, number];
    const colour = this.#asked[knot] as number;
    let [na, nah, nb, nbh, nc, nch, nd, ndh] = [0, 0, 0, 0, 0, 0, 0, 0];
    if (colour === ANY_COLOUR) {
      // Kept in order: left to left and right to right.
      const [kl, kh, ml, mh] = [al & cl, ah & ch, bl & dl, bh & dh];
      if ((kl | kh) !== 0 && (ml | mh) !== 0) {
        na = kl;
        nah = kh;
        nb = ml;
        nbh = mh;
        nc = kl;
        nch = kh;
        nd = ml;
        ndh = mh;
      }
      const [xl, xh, yl, yh] = [al & dl, ah & dh, bl & cl, bh & ch];
      if ((xl | xh) !== 0 && (yl | yh) !== 0) {
        na |= xl;
        nah |= xh;
        nd |= xl;
        ndh |= xh;
        nb |= yl;
        nbh |= yh;
        nc |= yl;
        nch |= yh;
      }
    } else {
      const wl = colour < 32 ? 1 << colour : 0;
      const wh = colour < 32 ? 0 : 1 << (colour - 32);
      const inA = ((al & wl) | (ah & wh)) !== 0;
      const inB = ((bl & wl) | (bh & wh)) !== 0;
      const inC = ((cl & wl) | (ch & wh)) !== 0;
      const inD = ((dl & wl) | (dh & wh)) !== 0;
      // The shown colour goes in by one wire and out by another; the two wires left are equal.
      if (inA && inC && ((bl & dl) | (bh & dh)) !== 0) {
        na |= wl;
        nah |= wh;
        nc |= wl;
        nch |= wh;
        nb |= bl & dl;
        nbh |= bh & dh;
        nd |= bl & dl;
        ndh |= bh & dh;
      }
      if (inA && inD && ((bl & cl) | (bh & ch)) !== 0) {
        na |= wl;
        nah |= wh;
        nd |= wl;
        ndh |= wh;
        nb |= bl & cl;
        nbh |= bh & ch;
        nc |= bl & cl;
        nch |= bh & ch;
      }
      if (inB && inD && ((al & cl) | (ah & ch)) !== 0) {
        nb |= wl;
        nbh |= wh;
        nd |= wl;
        ndh |= wh;
        na |= al & cl;
        nah |= ah & ch;
        nc |= al & cl;
        nch |= ah & ch;
      }
      if (inB && inC && ((al & dl) | (ah & dh)) !== 0) {
        nb |= wl;
        nbh |= wh;
        nc |= wl;
        nch |= wh;
        na |= al & dl;
        nah |= ah & dh;
        nd |= al & dl;
        ndh |= ah & dh;
      }
    }
    if ((na | nah) === 0) return false;
    this.#set(a, na, nah);
    this.#set(b, nb, nbh);
    // Where a wire begins and ends at the same knot, what was struck out above stays struck out.
    this.#set(c, nc & (low[c] as number), nch & (high[c] as number));
    this.#set(d, nd & (low[d] as number), ndh & (high[d] as number));
    return (
      ((low[c] as number) | (high[c] as number)) !== 0 &&
      ((low[d] as number) | (high[d] as number)) !== 0
    );
  }
}

function bits(count: number): number {
  if (count <= 0) return 0;
  return count >= 32 ? 0xffffffff : 2 ** count - 1;
}
