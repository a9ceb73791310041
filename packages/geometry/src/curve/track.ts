import { guidedBy, smoothAt, smoothLength } from './smooth.js';

/** A point or direction in the frame of `frame.ts`: x right, y down the page, z to the viewer. */
export type Vec3 = readonly [number, number, number];

interface Line {
  readonly kind: 'line';
  readonly length: number;
  readonly at: Vec3;
  readonly heading: Vec3;
}

interface Arc {
  readonly kind: 'arc';
  readonly length: number;
  readonly at: Vec3;
  readonly heading: Vec3;
  readonly toward: Vec3;
  readonly radius: number;
}

interface Run {
  readonly kind: 'run';
  readonly length: number;
  /** xyz triplets at equal steps of arc length, with a guiding point more at each end. */
  readonly guided: Float64Array;
}

type Piece = Line | Arc | Run;

const along = (at: Vec3, heading: Vec3, s: number): Vec3 => [
  at[0] + heading[0] * s,
  at[1] + heading[1] * s,
  at[2] + heading[2] * s,
];

function onArc(arc: Arc, s: number): Vec3 {
  const a = s / arc.radius;
  const p = Math.sin(a) * arc.radius;
  const q = (1 - Math.cos(a)) * arc.radius;
  return [
    arc.at[0] + arc.heading[0] * p + arc.toward[0] * q,
    arc.at[1] + arc.heading[1] * p + arc.toward[1] * q,
    arc.at[2] + arc.heading[2] * p + arc.toward[2] * q,
  ];
}

/**
 * A centre-line laid out like a walk: go straight, turn on a circle, follow given points. Every
 * piece knows its exact length, so a thread laid along a track can be paid out without stretching.
 */
export class Track {
  private readonly pieces: Piece[] = [];
  private total = 0;
  private at: Vec3;
  private heading: Vec3;

  constructor(at: Vec3, heading: Vec3) {
    this.at = at;
    this.heading = heading;
  }

  /** Arc length so far. */
  get length(): number {
    return this.total;
  }

  get end(): Vec3 {
    return this.at;
  }

  line(length: number): this {
    if (length <= 0) return this;
    this.add({ kind: 'line', length, at: this.at, heading: this.heading });
    this.at = along(this.at, this.heading, length);
    return this;
  }

  /** Turn towards a unit direction at right angles to the heading, by `angle` radians. */
  turn(toward: Vec3, radius: number, angle = Math.PI / 2): this {
    if (angle <= 0) return this;
    const arc: Arc = {
      kind: 'arc',
      length: radius * angle,
      at: this.at,
      heading: this.heading,
      toward,
      radius,
    };
    this.add(arc);
    this.at = onArc(arc, arc.length);
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    this.heading = [
      arc.heading[0] * c + toward[0] * s,
      arc.heading[1] * c + toward[1] * s,
      arc.heading[2] * c + toward[2] * s,
    ];
    return this;
  }

  /** Follow a smooth curve through points at equal steps, then leave in the given direction. */
  follow(points: Float64Array, heading: Vec3): this {
    const guided = guidedBy(points, heading);
    this.add({ kind: 'run', length: smoothLength(guided), guided });
    const last = points.length - 3;
    this.at = [points[last]!, points[last + 1]!, points[last + 2]!];
    this.heading = heading;
    return this;
  }

  /**
   * `count` points at equal steps of arc length from the start to `upTo` (the whole track if not
   * given), written to `out` as xyz triplets.
   */
  sample(count: number, upTo = this.total, out = new Float64Array(count * 3)): Float64Array {
    const step = upTo / (count - 1);
    let piece = 0;
    let before = 0;
    for (let k = 0; k < count; k++) {
      const s = Math.min(k * step, this.total);
      while (piece < this.pieces.length - 1 && s > before + this.pieces[piece]!.length) {
        before += this.pieces[piece]!.length;
        piece++;
      }
      writePoint(this.pieces[piece]!, s - before, out, k * 3);
    }
    return out;
  }

  private add(piece: Piece): void {
    this.pieces.push(piece);
    this.total += piece.length;
  }
}

function writePoint(piece: Piece, s: number, out: Float64Array, at: number): void {
  if (piece.kind === 'run') {
    const last = piece.guided.length / 3 - 3;
    const f = Math.min(Math.max((s / piece.length) * last, 0), last);
    const i = Math.min(Math.floor(f), last - 1);
    for (let c = 0; c < 3; c++) out[at + c] = smoothAt(piece.guided, i, f - i, c);
    return;
  }
  const p = piece.kind === 'line' ? along(piece.at, piece.heading, s) : onArc(piece, s);
  out[at] = p[0];
  out[at + 1] = p[1];
  out[at + 2] = p[2];
}
