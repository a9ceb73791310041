import { type Beads, ContactList } from './contacts.js';

/** A thread to be tightened. */
export interface RopeStrand {
  /** xyz triplets; a closed strand's last point is joined to its first. */
  readonly points: ArrayLike<number>;
  readonly closed: boolean;
  readonly diameter: number;
  /** Beads held still at the first and the last end of an open strand; 2 hold its direction too. */
  readonly held?: readonly [number, number] | 'all';
  /** How hard it is pulled, beside others. Default 1. */
  readonly pull?: number;
}

export interface RopeOptions {
  /** Radius of a straight rigid string along x = z = 0 that strands keep clear of; none if absent. */
  readonly coreRadius?: number;
  /** Least radius of a bend, in diameters. Default 0.5, at which the inside of a bend closes. */
  readonly bend?: number;
  /** How often bends next to held ends are put right in a sweep. Default 3. */
  readonly endRounds?: number;
  /** No bead goes above this height (a lesser y): there is finished work. */
  readonly ceiling?: number;
}

/** How far beads look for contacts beyond touching, in units of length. */
const MARGIN = 0.12;

/** How much of a too sharp bend is put right in one sweep. */
const UNBEND = 0.75;
const END_BEADS = 12;
const END_ROUNDS = 3;

/** How far a bead goes towards even spacing in one step. */
const EVEN = 0.5;

/**
 * Threads under tension that cannot pass through each other. Each step moves every bead towards the
 * middle of its neighbours (the direction that shortens the thread most, which also keeps beads
 * evenly spaced), then restores the bending limit and pushes apart what overlaps. Steps are a small
 * fraction of a diameter, so nothing can jump through anything.
 */
export class Rope {
  readonly beads: Beads;
  private readonly fixed: Uint8Array;
  private readonly contacts: ContactList;
  private readonly coreRadius: number;
  private readonly bend: number;
  private readonly endRounds: number;
  private readonly ceiling: number;
  private readonly starts: number[] = [];
  private readonly spacing: Float64Array;
  private readonly scratch: Float64Array;
  private readonly still: readonly boolean[];
  private readonly pulls: readonly number[];

  constructor(strands: readonly RopeStrand[], options: RopeOptions = {}) {
    const count = strands.reduce((sum, s) => sum + s.points.length / 3, 0);
    const beads = {
      count,
      position: new Float64Array(count * 3),
      diameter: new Float64Array(count),
      strand: new Int32Array(count),
      index: new Int32Array(count),
      length: new Int32Array(count),
      closed: new Uint8Array(count),
    };
    this.fixed = new Uint8Array(count);
    let at = 0;
    strands.forEach((s, k) => {
      const n = s.points.length / 3;
      this.starts.push(at);
      for (let i = 0; i < n; i++) {
        const b = at + i;
        for (let c = 0; c < 3; c++) beads.position[b * 3 + c] = s.points[i * 3 + c]!;
        beads.diameter[b] = s.diameter;
        beads.strand[b] = k;
        beads.index[b] = i;
        beads.length[b] = n;
        beads.closed[b] = s.closed ? 1 : 0;
        const [first, last] = s.held === 'all' ? [n, 0] : (s.held ?? [2, 2]);
        this.fixed[b] = !s.closed && (i < first || i >= n - last) ? 1 : 0;
      }
      at += n;
    });
    this.starts.push(at);
    this.beads = beads;
    this.coreRadius = options.coreRadius ?? 0;
    this.bend = options.bend ?? 0.5;
    this.endRounds = options.endRounds ?? END_ROUNDS;
    this.ceiling = options.ceiling ?? -Infinity;
    this.contacts = new ContactList(MARGIN, this.fixed);
    this.spacing = new Float64Array(strands.length);
    this.pulls = strands.map((s) => s.pull ?? 1);
    this.still = strands.map((s) => s.held === 'all');
    this.scratch = new Float64Array(count * 3);
  }

  /** Points of one strand. */
  pointsOf(strand: number): Float64Array {
    return this.beads.position.slice(this.starts[strand]! * 3, this.starts[strand + 1]! * 3);
  }

  /** Moves the held beads at the end of an open strand by an offset. */
  moveEnd(strand: number, dx: number, dy: number, dz: number): void {
    const { position } = this.beads;
    const end = this.starts[strand + 1]!;
    for (let b = end - 1; b >= this.starts[strand]! && this.fixed[b]; b--) {
      position[b * 3] = position[b * 3]! + dx;
      position[b * 3 + 1] = position[b * 3 + 1]! + dy;
      position[b * 3 + 2] = position[b * 3 + 2]! + dz;
    }
  }

  /** Moves the first strand's free beads along the core, those near held ends less. */
  slide(dy: number): void {
    const { position, index, length, closed } = this.beads;
    for (let b = 0; b < this.starts[1]!; b++) {
      if (this.fixed[b]) continue;
      const fromEnd = Math.min(index[b]!, length[b]! - 1 - index[b]!);
      const share = closed[b] ? 1 : Math.min(fromEnd / 8, 1);
      position[b * 3 + 1] = position[b * 3 + 1]! + dy * share;
    }
  }

  /** Moves beads at the middle of the first strand left, a little, if they are right of `x`. */
  keepMiddle(x: number): void {
    const { position } = this.beads;
    const middle = (this.starts[1]! - this.starts[0]!) >> 1;
    for (let b = middle - 2; b <= middle + 2; b++) {
      const over = position[b * 3]! - x;
      if (over > 0) position[b * 3] = position[b * 3]! - Math.min(over, 0.003);
    }
  }

  /** Mean height of the first strand's beads that touch the core; undefined when none does. */
  heightOnCore(): number | undefined {
    const { position, diameter } = this.beads;
    let sum = 0;
    let touching = 0;
    for (let b = 0; b < this.starts[1]!; b++) {
      const r = Math.hypot(position[b * 3]!, position[b * 3 + 2]!);
      if (r > this.coreRadius + diameter[b]! * 0.6) continue;
      sum += position[b * 3 + 1]!;
      touching++;
    }
    return touching > 0 ? sum / touching : undefined;
  }

  lengthOf(strand: number): number {
    const { position, closed } = this.beads;
    const start = this.starts[strand]!;
    const end = this.starts[strand + 1]!;
    let sum = 0;
    for (let b = start; b < end; b++) {
      const next = b + 1 < end ? b + 1 : start;
      if (next === start && !closed[b]) break;
      sum += Math.hypot(
        position[next * 3]! - position[b * 3]!,
        position[next * 3 + 1]! - position[b * 3 + 1]!,
        position[next * 3 + 2]! - position[b * 3 + 2]!,
      );
    }
    return sum;
  }

  /**
   * One step.
   *
   * @param pull 0 to 1: how much of the way to the middle of its neighbours a bead goes
   * @param sweeps how often contacts and bends are put right
   * @returns the deepest overlap before the last sweep
   */
  step(pull: number, sweeps = 1): number {
    for (let k = 0; k < this.spacing.length; k++) {
      if (this.still[k]) continue;
      const beads = this.starts[k + 1]! - this.starts[k]!;
      this.spacing[k] = this.lengthOf(k) / beads;
    }
    this.tighten(pull);
    this.contacts.refresh(this.beads, this.spacing);
    let deepest = 0;
    for (let s = 0; s < sweeps; s++) {
      this.unbend();
      deepest = this.contacts.separate(this.beads);
      deepest = Math.max(deepest, this.clearCore());
      this.keepBelow();
    }
    return deepest;
  }

  private tighten(whole: number): void {
    const { count, position, strand } = this.beads;
    const { scratch } = this;
    scratch.set(position);
    for (let b = 0; b < count; b++) {
      if (this.fixed[b]) continue;
      const [p, n] = this.neighbours(b);
      if (p < 0 || n < 0) continue;
      const tx = position[n * 3]! - position[p * 3]!;
      const ty = position[n * 3 + 1]! - position[p * 3 + 1]!;
      const tz = position[n * 3 + 2]! - position[p * 3 + 2]!;
      const vx = (position[p * 3]! + position[n * 3]!) / 2 - position[b * 3]!;
      const vy = (position[p * 3 + 1]! + position[n * 3 + 1]!) / 2 - position[b * 3 + 1]!;
      const vz = (position[p * 3 + 2]! + position[n * 3 + 2]!) / 2 - position[b * 3 + 2]!;
      const pull = whole * this.pulls[strand[b]!]!;
      // Along the thread beads are evened out at full rate, however gently it is pulled.
      const along = ((EVEN - pull) * (vx * tx + vy * ty + vz * tz)) / (tx * tx + ty * ty + tz * tz);
      scratch[b * 3] = position[b * 3]! + pull * vx + along * tx;
      scratch[b * 3 + 1] = position[b * 3 + 1]! + pull * vy + along * ty;
      scratch[b * 3 + 2] = position[b * 3 + 2]! + pull * vz + along * tz;
    }
    position.set(scratch);
  }

  /** Keeps the radius of every bend at least the limit. */
  private unbend(): void {
    const { count, closed, strand } = this.beads;
    for (let b = 0; b < count; b++) if (!this.still[strand[b]!]) this.unbendAt(b);
    // Next to a held end only one side can give way, which takes more rounds.
    for (let k = 0; k + 1 < this.starts.length; k++) {
      const end = this.starts[k + 1]!;
      if (closed[end - 1] || this.still[k]) continue;
      for (let round = 0; round < this.endRounds; round++) {
        for (let b = end - 1; b > end - END_BEADS && b > this.starts[k]!; b--) this.unbendAt(b);
        const start = this.starts[k]!;
        if (!this.fixed[start + 1]) continue;
        for (let b = start; b < start + END_BEADS && b < end; b++) this.unbendAt(b);
      }
    }
  }

  private unbendAt(b: number): void {
    const { position, diameter } = this.beads;
    const [p, n] = this.neighbours(b);
    if (p < 0 || n < 0) return;
    // Three points h apart on a circle of radius r: the middle one is h^2 / 2r off the chord.
    const ox = (position[p * 3]! + position[n * 3]!) / 2 - position[b * 3]!;
    const oy = (position[p * 3 + 1]! + position[n * 3 + 1]!) / 2 - position[b * 3 + 1]!;
    const oz = (position[p * 3 + 2]! + position[n * 3 + 2]!) / 2 - position[b * 3 + 2]!;
    const hx = (position[n * 3]! - position[p * 3]!) / 2;
    const hy = (position[n * 3 + 1]! - position[p * 3 + 1]!) / 2;
    const hz = (position[n * 3 + 2]! - position[p * 3 + 2]!) / 2;
    const off2 = ox * ox + oy * oy + oz * oz;
    const most = (off2 + hx * hx + hy * hy + hz * hz) / (2 * this.bend * diameter[b]!);
    if (off2 <= most * most) return;
    const wb = this.fixed[b] ? 0 : 1;
    const wp = this.fixed[p] ? 0 : 1;
    const wn = this.fixed[n] ? 0 : 1;
    const weight = wb + (wp + wn) / 4;
    if (weight === 0) return;
    const off = Math.sqrt(off2);
    const share = (UNBEND * (off - most)) / (off * weight);
    this.shift(b, ox, oy, oz, share * wb);
    this.shift(p, ox, oy, oz, (-share * wp) / 2);
    this.shift(n, ox, oy, oz, (-share * wn) / 2);
  }

  private shift(b: number, x: number, y: number, z: number, by: number): void {
    const { position } = this.beads;
    position[b * 3] = position[b * 3]! + x * by;
    position[b * 3 + 1] = position[b * 3 + 1]! + y * by;
    position[b * 3 + 2] = position[b * 3 + 2]! + z * by;
  }

  private keepBelow(): void {
    const { count, position } = this.beads;
    if (this.ceiling === -Infinity) return;
    for (let b = 0; b < count; b++) {
      if (!this.fixed[b] && position[b * 3 + 1]! < this.ceiling) {
        position[b * 3 + 1] = this.ceiling;
      }
    }
  }

  private clearCore(): number {
    if (this.coreRadius === 0) return 0;
    const { count, position, diameter } = this.beads;
    let deepest = 0;
    for (let b = 0; b < count; b++) {
      if (this.fixed[b]) continue;
      const x = position[b * 3]!;
      const z = position[b * 3 + 2]!;
      const reach = this.coreRadius + diameter[b]! / 2;
      const r = Math.hypot(x, z);
      if (r >= reach || r === 0) continue;
      deepest = Math.max(deepest, reach - r);
      position[b * 3] = (x * reach) / r;
      position[b * 3 + 2] = (z * reach) / r;
    }
    return deepest;
  }

  private neighbours(b: number): readonly [number, number] {
    const { strand, index, length, closed } = this.beads;
    const start = this.starts[strand[b]!]!;
    const n = length[b]!;
    const i = index[b]!;
    if (closed[b]) return [start + ((i + n - 1) % n), start + ((i + 1) % n)];
    return [i > 0 ? b - 1 : -1, i < n - 1 ? b + 1 : -1];
  }
}
