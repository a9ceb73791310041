const CAP_RINGS = 3;

/**
 * The skin of one thread: rings of vertices round a centre-line, in typed arrays that are filled
 * anew for each pose and only replaced when a longer centre-line needs more room.
 *
 * Frames are carried along by double reflection (Wang, Juettler, Zheng and Liu 2008), so the
 * twist of the thread does not jump from pose to pose.
 */
export class Tube {
  /** Rings of each rounded end. */
  static readonly CAPS = CAP_RINGS;
  /** Vertices round the thread; the first is repeated, so that texture can close. */
  readonly around: number;
  position = new Float32Array(0);
  normal = new Float32Array(0);
  tangent = new Float32Array(0);
  /** Length along the thread in mm, and the angle round it in radians. */
  along = new Float32Array(0);
  /** Light that reaches a vertex past the threads near it, from 0 to 1. */
  shade = new Float32Array(0);
  index = new Uint32Array(0);
  /** Rings in use, with those of both rounded ends. */
  rings = 0;
  /** Grows whenever the arrays are replaced by longer ones. */
  generation = 0;
  /** Bounds of the centre-line in mm: least x, y, z, then greatest. */
  readonly bounds = new Float32Array(6);
  private capacity = 0;
  private readonly cosines: Float32Array;
  private readonly sines: Float32Array;

  constructor(around = 16) {
    this.around = around;
    const angles = Array.from({ length: around + 1 }, (_, k) => (k / around) * 2 * Math.PI);
    this.cosines = Float32Array.from(angles, Math.cos);
    this.sines = Float32Array.from(angles, Math.sin);
  }

  get verticesPerRing(): number {
    return this.around + 1;
  }

  get vertexCount(): number {
    return this.rings * this.verticesPerRing;
  }

  get indexCount(): number {
    return this.rings < 2 ? 0 : (this.rings - 1) * this.around * 6;
  }

  /**
   * Lays the skin round a centre-line.
   *
   * @param points x, y, z triplets in mm, at least two different ones
   * @param radius of the thread in mm
   */
  lay(points: Float32Array, radius: number): void {
    const count = Math.floor(points.length / 3);
    if (count < 2) {
      this.rings = 0;
      return;
    }
    this.reserve(count + 2 * CAP_RINGS);
    this.rings = count + 2 * CAP_RINGS;
    const at = (i: number): number => points[i] as number;
    const b = this.bounds;
    b.fill(Number.POSITIVE_INFINITY, 0, 3);
    b.fill(Number.NEGATIVE_INFINITY, 3, 6);

    let tx = 0;
    let ty = 0;
    let tz = 1;
    let nx = 0;
    let ny = 0;
    let nz = 0;
    let length = 0;
    for (let i = 0; i < count; i++) {
      const px = at(3 * i);
      const py = at(3 * i + 1);
      const pz = at(3 * i + 2);
      if (px < (b[0] as number)) b[0] = px;
      if (py < (b[1] as number)) b[1] = py;
      if (pz < (b[2] as number)) b[2] = pz;
      if (px > (b[3] as number)) b[3] = px;
      if (py > (b[4] as number)) b[4] = py;
      if (pz > (b[5] as number)) b[5] = pz;
      const before = Math.max(0, i - 1) * 3;
      const after = Math.min(count - 1, i + 1) * 3;
      let ux = at(after) - at(before);
      let uy = at(after + 1) - at(before + 1);
      let uz = at(after + 2) - at(before + 2);
      const size = Math.hypot(ux, uy, uz);
      if (size > 1e-9) {
        ux /= size;
        uy /= size;
        uz /= size;
      } else {
        ux = tx;
        uy = ty;
        uz = tz;
      }
      if (i === 0) {
        // Any direction across the thread will do, as long as it is the same in every pose.
        const side = Math.abs(uz) < 0.9 ? [0, 0, 1] : [1, 0, 0];
        const along = (side[0] as number) * ux + (side[2] as number) * uz;
        nx = (side[0] as number) - along * ux;
        ny = -along * uy;
        nz = (side[2] as number) - along * uz;
      } else {
        const vx = px - at(3 * i - 3);
        const vy = py - at(3 * i - 2);
        const vz = pz - at(3 * i - 1);
        const c1 = vx * vx + vy * vy + vz * vz;
        length += Math.sqrt(c1);
        if (c1 > 1e-12) {
          const k = (2 / c1) * (vx * nx + vy * ny + vz * nz);
          const lx = nx - k * vx;
          const ly = ny - k * vy;
          const lz = nz - k * vz;
          const m = (2 / c1) * (vx * tx + vy * ty + vz * tz);
          const wx = ux - (tx - m * vx);
          const wy = uy - (ty - m * vy);
          const wz = uz - (tz - m * vz);
          const c2 = wx * wx + wy * wy + wz * wz;
          const q = c2 > 1e-12 ? (2 / c2) * (wx * lx + wy * ly + wz * lz) : 0;
          nx = lx - q * wx;
          ny = ly - q * wy;
          nz = lz - q * wz;
        }
        // Rounding would let the normal lean into the thread over a long line.
        const lean = nx * ux + ny * uy + nz * uz;
        nx -= lean * ux;
        ny -= lean * uy;
        nz -= lean * uz;
      }
      const size2 = Math.hypot(nx, ny, nz) || 1;
      nx /= size2;
      ny /= size2;
      nz /= size2;
      tx = ux;
      ty = uy;
      tz = uz;
      if (i === 0) this.cap(0, -1, px, py, pz, tx, ty, tz, nx, ny, nz, radius, 0);
      this.ring(CAP_RINGS + i, px, py, pz, tx, ty, tz, nx, ny, nz, radius, 0, length);
      if (i === count - 1) {
        this.cap(CAP_RINGS + count, 1, px, py, pz, tx, ty, tz, nx, ny, nz, radius, length);
      }
    }
  }

  /** Rounds an end off: rings that grow smaller towards a point. */
  private cap(
    first: number,
    way: -1 | 1,
    px: number,
    py: number,
    pz: number,
    tx: number,
    ty: number,
    tz: number,
    nx: number,
    ny: number,
    nz: number,
    radius: number,
    length: number,
  ): void {
    for (let k = 0; k < CAP_RINGS; k++) {
      const step = way < 0 ? CAP_RINGS - k : k + 1;
      const angle = (step / CAP_RINGS) * (Math.PI / 2);
      const out = way * radius * 0.7 * Math.sin(angle);
      const r = radius * Math.max(0.001, Math.cos(angle));
      const lean = way * Math.sin(angle);
      this.ring(
        first + k,
        px + tx * out,
        py + ty * out,
        pz + tz * out,
        tx,
        ty,
        tz,
        nx,
        ny,
        nz,
        r,
        lean,
        length + out,
      );
    }
  }

  private ring(
    ring: number,
    px: number,
    py: number,
    pz: number,
    tx: number,
    ty: number,
    tz: number,
    nx: number,
    ny: number,
    nz: number,
    radius: number,
    lean: number,
    length: number,
  ): void {
    const bx = ty * nz - tz * ny;
    const by = tz * nx - tx * nz;
    const bz = tx * ny - ty * nx;
    const upright = Math.sqrt(Math.max(0, 1 - lean * lean));
    let v = ring * this.verticesPerRing;
    for (let k = 0; k <= this.around; k++, v++) {
      const c = this.cosines[k] as number;
      const s = this.sines[k] as number;
      const ox = c * nx + s * bx;
      const oy = c * ny + s * by;
      const oz = c * nz + s * bz;
      this.position[3 * v] = px + radius * ox;
      this.position[3 * v + 1] = py + radius * oy;
      this.position[3 * v + 2] = pz + radius * oz;
      this.normal[3 * v] = ox * upright + tx * lean;
      this.normal[3 * v + 1] = oy * upright + ty * lean;
      this.normal[3 * v + 2] = oz * upright + tz * lean;
      this.tangent[3 * v] = tx;
      this.tangent[3 * v + 1] = ty;
      this.tangent[3 * v + 2] = tz;
      this.along[2 * v] = length;
      this.along[2 * v + 1] = (k / this.around) * 2 * Math.PI;
      this.shade[v] = 1;
    }
  }

  /**
   * Darkens the side of each ring that faces a near thread.
   *
   * @param towards for each point of the centre-line, a vector towards what is near, the longer
   *   the nearer
   */
  darken(towards: Float32Array): void {
    const count = this.rings - 2 * CAP_RINGS;
    const { verticesPerRing, shade, normal } = this;
    for (let ring = 0; ring < this.rings; ring++) {
      const point = 3 * Math.max(0, Math.min(count - 1, ring - CAP_RINGS));
      const x = towards[point] as number;
      const y = towards[point + 1] as number;
      const z = towards[point + 2] as number;
      let v = ring * verticesPerRing;
      for (let k = 0; k < verticesPerRing; k++, v++) {
        const facing =
          (normal[3 * v] as number) * x +
          (normal[3 * v + 1] as number) * y +
          (normal[3 * v + 2] as number) * z;
        shade[v] = 1 - 0.78 * (1 - Math.exp(-Math.max(0, facing)));
      }
    }
  }

  private reserve(rings: number): void {
    if (rings <= this.capacity) return;
    this.capacity = Math.max(rings, Math.ceil(this.capacity * 1.5), 64);
    const vertices = this.capacity * this.verticesPerRing;
    this.position = new Float32Array(vertices * 3);
    this.normal = new Float32Array(vertices * 3);
    this.tangent = new Float32Array(vertices * 3);
    this.along = new Float32Array(vertices * 2);
    this.shade = new Float32Array(vertices).fill(1);
    this.index = new Uint32Array((this.capacity - 1) * this.around * 6);
    this.generation++;
    let i = 0;
    for (let ring = 0; ring + 1 < this.capacity; ring++) {
      for (let k = 0; k < this.around; k++) {
        const a = ring * this.verticesPerRing + k;
        const b = a + this.verticesPerRing;
        this.index[i++] = a;
        this.index[i++] = a + 1;
        this.index[i++] = b;
        this.index[i++] = b;
        this.index[i++] = a + 1;
        this.index[i++] = b + 1;
      }
    }
  }
}
