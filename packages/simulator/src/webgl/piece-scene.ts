import type { Level } from '@halfhitch/geometry/fabric';
import { BufferAttribute, BufferGeometry, Color, Mesh } from 'three';
import type { Chunks, ChunkView, PieceStrand } from '../piece/chunks.js';
import { Tube } from '../thread/tube.js';
import { LitScene } from './lit-scene.js';
import { ThreadMaterial } from './thread-material.js';

/** Vertices round a thread, by level of detail. */
const AROUND: Readonly<Record<Level, number>> = { 0: 10, 1: 8, 2: 6, 3: 3 };

/** Vertices round a thread that hangs: these are laid anew with every frame. */
const AROUND_HANGING = 8;

/** What is seen of a piece beside the knots that are tied; all in knots. */
export interface PieceTime {
  readonly now: number;
  /** Knots shown before they are tied. */
  readonly ghost: number;
  /** Knots over which the way of the lead is marked. */
  readonly trail: number;
  /** The only string whose way is marked, by its place among the strings; -1 for any. */
  readonly only: number;
}

type ChunkMesh = Mesh<BufferGeometry, ThreadMaterial>;

/** Draws some chunks of a piece, each as one mesh, as far as they are knotted. */
export class PieceScene extends LitScene {
  private readonly meshes = new Map<string, ChunkMesh>();
  private readonly material = new ThreadMaterial(true);
  private chunks: Chunks | null = null;
  private radius = 0.5;
  /** What hangs below the work, and at what time. */
  private hung: { readonly mesh: ChunkMesh; readonly as: string } | null = null;

  /**
   * Shows chunks from `first` to `last`; others are given back.
   *
   * @param most chunks that may be built anew by this call
   * @returns whether all of them are there
   */
  show(chunks: Chunks, view: ChunkView, time: PieceTime, most: number): boolean {
    if (chunks !== this.chunks) this.clearChunks();
    this.chunks = chunks;
    // Shadows would fall from threads that are not knotted yet.
    this.key.castShadow = false;
    let built = 0;
    let whole = true;
    // What hangs is cut from the chunks that are there: those still to be built must not be built for it.
    let reached = view.first - 1;
    const wanted = new Set<string>();
    for (let chunk = view.first; chunk <= view.last; chunk++) {
      const key = `${chunk}/${view.level}`;
      wanted.add(key);
      if (this.meshes.has(key)) {
        if (whole) reached = chunk;
        continue;
      }
      if (built === most) {
        whole = false;
        continue;
      }
      const strands = chunks.strands(chunk, view.level);
      this.radius = chunks.fullness * (strands[0]?.radius ?? 0.5);
      const mesh = new Mesh(
        geometryOf(strands, AROUND[view.level], chunks.fullness),
        this.material,
      );
      this.meshes.set(key, mesh);
      this.scene.add(mesh);
      built++;
      if (whole) reached = chunk;
    }
    // What stands in for chunks still to be built stays until they are.
    if (whole) for (const key of this.meshes.keys()) if (!wanted.has(key)) this.drop(key);
    this.hang(chunks, time.now, { ...view, last: reached });
    this.material.showUpTo(time, this.radius, this.ground);
    return whole;
  }

  /** Lays what hangs below the work anew, where that has changed. */
  private hang(chunks: Chunks, now: number, view: ChunkView): void {
    const as = `${now}/${view.first}/${view.last}/${view.level}`;
    if (this.hung?.as === as) return;
    this.unhang();
    const strands = chunks.hanging(now, view);
    if (strands.length === 0) return;
    const mesh = new Mesh(geometryOf(strands, AROUND_HANGING, chunks.hungFullness), this.material);
    this.scene.add(mesh);
    this.hung = { mesh, as };
  }

  private unhang(): void {
    if (this.hung === null) return;
    this.scene.remove(this.hung.mesh);
    this.hung.mesh.geometry.dispose();
    this.hung = null;
  }

  /** Triangles of the chunks that are there. */
  get triangles(): number {
    let many = 0;
    for (const { geometry } of this.meshes.values()) many += (geometry.index?.count ?? 0) / 3;
    return many + (this.hung?.mesh.geometry.index?.count ?? 0) / 3;
  }

  protected override clear(): void {
    this.clearChunks();
    this.material.dispose();
  }

  private clearChunks(): void {
    this.unhang();
    for (const key of [...this.meshes.keys()]) this.drop(key);
  }

  private drop(key: string): void {
    const mesh = this.meshes.get(key);
    if (mesh === undefined) return;
    this.scene.remove(mesh);
    mesh.geometry.dispose();
    this.meshes.delete(key);
  }
}

/** The skins of all strands in one set of buffers. */
function geometryOf(
  strands: readonly PieceStrand[],
  around: number,
  fullness: number,
): BufferGeometry {
  const tube = new Tube(around);
  const perRing = around + 1;
  let vertices = 0;
  let indices = 0;
  for (const { when } of strands) {
    const rings = when.length + 2 * Tube.CAPS;
    vertices += rings * perRing;
    indices += (rings - 1) * around * 6;
  }
  const position = new Float32Array(3 * vertices);
  const normal = new Float32Array(3 * vertices);
  const tangent = new Float32Array(3 * vertices);
  const colours = new Uint8Array(3 * vertices);
  const along = new Float32Array(2 * vertices);
  const shade = new Float32Array(vertices);
  const times = new Float32Array(vertices);
  const strings = new Float32Array(vertices);
  const index = new Uint32Array(indices);
  const colour = new Color();
  let v = 0;
  let n = 0;
  for (const strand of strands) {
    tube.lay(strand.points, fullness * strand.radius);
    const many = tube.vertexCount;
    position.set(tube.position.subarray(0, 3 * many), 3 * v);
    normal.set(tube.normal.subarray(0, 3 * many), 3 * v);
    tangent.set(tube.tangent.subarray(0, 3 * many), 3 * v);
    along.set(tube.along.subarray(0, 2 * many), 2 * v);
    // A string that hangs straight is several strands one below the other; its twist goes on.
    const higher = strand.points[1] as number;
    for (let i = 2 * v; i < 2 * (v + many); i += 2) along[i] = (along[i] as number) - higher;
    for (let i = 0; i < tube.indexCount; i++) index[n + i] = (tube.index[i] as number) + v;
    colour.set(strand.colour);
    const [red, green, blue] = [colour.r, colour.g, colour.b].map((c) => Math.round(255 * c));
    for (let i = 0; i < many; i++) {
      const ring = Math.floor(i / perRing) - Tube.CAPS;
      const point = Math.max(0, Math.min(strand.when.length - 1, ring));
      const at = v + i;
      colours[3 * at] = red as number;
      colours[3 * at + 1] = green as number;
      colours[3 * at + 2] = blue as number;
      times[at] = strand.when[point] as number;
      strings[at] = strand.string;
      // What lies deeper and looks away from both faces gets less light.
      const depth = Math.abs(position[3 * at + 2] as number) / (2 * strand.radius);
      const facing = Math.abs(normal[3 * at + 2] as number);
      shade[at] = Math.min(1, 0.42 + 0.34 * depth + 0.36 * facing);
    }
    v += many;
    n += tube.indexCount;
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.setAttribute('normal', new BufferAttribute(normal, 3));
  geometry.setAttribute('threadTangent', new BufferAttribute(tangent, 3));
  geometry.setAttribute('threadAlong', new BufferAttribute(along, 2));
  geometry.setAttribute('threadShade', new BufferAttribute(shade, 1));
  geometry.setAttribute('threadWhen', new BufferAttribute(times, 1));
  geometry.setAttribute('threadString', new BufferAttribute(strings, 1));
  geometry.setAttribute('color', new BufferAttribute(colours, 3, true));
  geometry.setIndex(new BufferAttribute(index, 1));
  geometry.computeBoundingSphere();
  return geometry;
}
