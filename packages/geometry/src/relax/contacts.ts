/** Points of all strands of a relaxation, flat. */
export interface Beads {
  readonly count: number;
  readonly position: Float64Array;
  /** Diameter of the strand each bead belongs to. */
  readonly diameter: Float64Array;
  /** Strand number of each bead. */
  readonly strand: Int32Array;
  /** Index within the strand, and the strand's number of beads; closed strands wrap. */
  readonly index: Int32Array;
  readonly length: Int32Array;
  readonly closed: Uint8Array;
}

/**
 * Arc length, in diameters, within which a strand's bend and not its contact keeps it apart. Half a
 * turn on the tightest bend is pi/2; beyond it only parts that come back on themselves are near.
 */
const OWN_BEND = 1.8;

/**
 * Pairs of beads that may touch soon: all within their contact distance plus a margin. Rebuilt when
 * a bead has moved half the margin.
 */
export class ContactList {
  private pairs = new Int32Array(0);
  private size = 0;
  private readonly last: Float64Array;
  private readonly margin: number;

  private readonly fixed: Uint8Array;

  /** `fixed` marks beads that do not move; two of them are no pair. */
  constructor(margin: number, fixed: Uint8Array) {
    this.margin = margin;
    this.fixed = fixed;
    this.last = new Float64Array(fixed.length * 3).fill(Infinity);
  }

  /** Renews the list if beads have moved far enough. `spacing` is the distance of beads. */
  refresh(beads: Beads, spacing: Float64Array): void {
    const { position } = beads;
    const limit = (this.margin / 2) ** 2;
    for (let i = 0; i < position.length; i += 3) {
      const dx = position[i]! - this.last[i]!;
      const dy = position[i + 1]! - this.last[i + 1]!;
      const dz = position[i + 2]! - this.last[i + 2]!;
      if (!(dx * dx + dy * dy + dz * dz < limit)) {
        this.rebuild(beads, spacing);
        return;
      }
    }
  }

  private rebuild(beads: Beads, spacing: Float64Array): void {
    const { count, position, diameter, strand, index, length, closed } = beads;
    const found: number[] = [];
    for (let i = 0; i < count; i++) {
      for (let j = i + 1; j < count; j++) {
        if (this.fixed[i] && this.fixed[j]) continue;
        if (strand[i] === strand[j]) {
          let apart = index[j]! - index[i]!;
          if (closed[i]) apart = Math.min(apart, length[i]! - apart);
          if (apart * spacing[strand[i]!]! < OWN_BEND * diameter[i]!) continue;
        }
        const reach = (diameter[i]! + diameter[j]!) / 2 + this.margin;
        const dx = position[i * 3]! - position[j * 3]!;
        if (dx > reach || dx < -reach) continue;
        const dy = position[i * 3 + 1]! - position[j * 3 + 1]!;
        const dz = position[i * 3 + 2]! - position[j * 3 + 2]!;
        if (dx * dx + dy * dy + dz * dz < reach * reach) found.push(i, j);
      }
    }
    this.pairs = Int32Array.from(found);
    this.size = found.length;
    this.last.set(position);
  }

  /** Moves overlapping beads apart; returns the deepest overlap found, as a length. */
  separate(beads: Beads): number {
    const { position, diameter } = beads;
    const { pairs, fixed } = this;
    let deepest = 0;
    for (let k = 0; k < this.size; k += 2) {
      const i = pairs[k]!;
      const j = pairs[k + 1]!;
      const a = i * 3;
      const b = j * 3;
      const dx = position[b]! - position[a]!;
      const dy = position[b + 1]! - position[a + 1]!;
      const dz = position[b + 2]! - position[a + 2]!;
      const reach = (diameter[i]! + diameter[j]!) / 2;
      const d2 = dx * dx + dy * dy + dz * dz;
      if (d2 >= reach * reach) continue;
      const d = Math.sqrt(d2);
      const overlap = reach - d;
      if (overlap > deepest) deepest = overlap;
      const wi = fixed[i] ? 0 : 1;
      const wj = fixed[j] ? 0 : 1;
      if (wi + wj === 0) continue;
      const push = overlap / (d * (wi + wj));
      position[a] = position[a]! - dx * push * wi;
      position[a + 1] = position[a + 1]! - dy * push * wi;
      position[a + 2] = position[a + 2]! - dz * push * wi;
      position[b] = position[b]! + dx * push * wj;
      position[b + 1] = position[b + 1]! + dy * push * wj;
      position[b + 2] = position[b + 2]! + dz * push * wj;
    }
    return deepest;
  }
}
