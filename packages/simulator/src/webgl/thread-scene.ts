import { BufferAttribute, BufferGeometry, DynamicDrawUsage, Mesh, Sphere } from 'three';
import { nearThreads } from '../thread/nearness.js';
import type { Spotlight, ThreadLine } from '../thread/thread-line.js';
import { Tube } from '../thread/tube.js';
import { LitScene } from './lit-scene.js';
import { ThreadMaterial } from './thread-material.js';

export { contextCensus } from './shared-context.js';

const ATTRIBUTES = ['position', 'normal', 'threadTangent', 'threadAlong', 'threadShade'] as const;

interface Strand {
  readonly tube: Tube;
  readonly mesh: Mesh<BufferGeometry, ThreadMaterial>;
  generation: number;
  towards: Float32Array;
  /** Centre-line that the tube was last laid round. */
  laid: Float32Array;
}

/** Draws poses of threads with WebGL onto canvases. Draws only when told to. */
export class ThreadScene extends LitScene {
  private readonly strands = new Map<string, Strand>();

  /** Takes over a pose: strings that are new are added, those gone are removed. */
  pose(lines: readonly ThreadLine[], spotlight: Spotlight | null = null): void {
    const gone = new Set(this.strands.keys());
    const towards: Float32Array[] = [];
    const movedLines = new Set<string>();
    for (const line of lines) {
      gone.delete(line.string);
      const strand = this.strands.get(line.string) ?? this.strand(line.string);
      const moved = !sameLine(strand.laid, line.points);
      if (moved) {
        strand.tube.lay(line.points, line.diameter / 2);
        strand.laid = line.points;
        movedLines.add(line.string);
      }
      if (strand.towards.length !== line.points.length) {
        strand.towards = new Float32Array(line.points.length);
      }
      towards.push(strand.towards);
    }
    nearThreads(lines, towards);
    for (const line of lines) {
      const strand = this.strands.get(line.string) as Strand;
      strand.tube.darken(strand.towards);
      this.fillBuffers(strand, movedLines.has(line.string));
      strand.mesh.material.wear({
        part: line.part,
        colour: line.colour,
        radius: line.diameter / 2,
        ground: this.ground,
        spotlight,
      });
    }
    for (const id of gone) this.remove(id);
  }

  protected override clear(): void {
    for (const id of [...this.strands.keys()]) this.remove(id);
  }

  private strand(id: string): Strand {
    const mesh = new Mesh(new BufferGeometry(), new ThreadMaterial());
    mesh.castShadow = true;
    mesh.receiveShadow = true;
    mesh.frustumCulled = false;
    this.scene.add(mesh);
    const strand: Strand = {
      tube: new Tube(),
      mesh,
      generation: -1,
      towards: new Float32Array(0),
      laid: new Float32Array(0),
    };
    this.strands.set(id, strand);
    return strand;
  }

  private fillBuffers(strand: Strand, moved: boolean): void {
    const { tube, mesh } = strand;
    const { geometry } = mesh;
    if (strand.generation !== tube.generation) {
      // Buffers of a new length need new attributes; the old ones are given back first.
      geometry.dispose();
      const attribute = (array: Float32Array, size: number): BufferAttribute => {
        const made = new BufferAttribute(array, size);
        made.setUsage(DynamicDrawUsage);
        return made;
      };
      geometry.setAttribute('position', attribute(tube.position, 3));
      geometry.setAttribute('normal', attribute(tube.normal, 3));
      geometry.setAttribute('threadTangent', attribute(tube.tangent, 3));
      geometry.setAttribute('threadAlong', attribute(tube.along, 2));
      geometry.setAttribute('threadShade', attribute(tube.shade, 1));
      geometry.setIndex(new BufferAttribute(tube.index, 1));
      geometry.boundingSphere = new Sphere();
      strand.generation = tube.generation;
    }
    geometry.setDrawRange(0, tube.indexCount);
    // Threads that lie still may yet be shaded anew by one that comes near.
    for (const name of moved ? ATTRIBUTES : ATTRIBUTES.slice(-1)) {
      const attribute = geometry.getAttribute(name) as BufferAttribute;
      attribute.clearUpdateRanges();
      attribute.addUpdateRange(0, tube.vertexCount * attribute.itemSize);
      attribute.needsUpdate = true;
    }
  }

  private remove(id: string): void {
    const strand = this.strands.get(id);
    if (strand === undefined) return;
    this.scene.remove(strand.mesh);
    strand.mesh.geometry.dispose();
    strand.mesh.material.dispose();
    this.strands.delete(id);
  }
}

function sameLine(one: Float32Array, other: Float32Array): boolean {
  if (one.length !== other.length) return false;
  for (let i = 0; i < one.length; i++) if (one[i] !== other[i]) return false;
  return true;
}
