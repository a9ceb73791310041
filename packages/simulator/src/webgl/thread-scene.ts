import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  DynamicDrawUsage,
  Fog,
  HemisphereLight,
  Mesh,
  PerspectiveCamera,
  PlaneGeometry,
  Scene,
  ShadowMaterial,
  Sphere,
} from 'three';
import { type Camera, cameraAxes, cameraPosition, FIELD_OF_VIEW } from '../thread/camera.js';
import { nearThreads } from '../thread/nearness.js';
import type { Spotlight, ThreadLine } from '../thread/thread-line.js';
import { Tube } from '../thread/tube.js';
import { type ContextUser, joinContext, leaveContext, sharedRenderer } from './shared-context.js';
import { ThreadMaterial } from './thread-material.js';

export { contextCensus } from './shared-context.js';

/** Pixels across the shadow picture: soft enough at this size, and cheap on a phone. */
const SHADOW_PIXELS = 1024;

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
export class ThreadScene {
  private readonly scene = new Scene();
  private readonly camera = new PerspectiveCamera();
  private readonly key = new DirectionalLight('#fffaf0', 2.5);
  private readonly fill = new DirectionalLight('#dfe9f5', 0.45);
  private readonly sky = new HemisphereLight('#ffffff', '#8d949c', 1.35);
  private readonly wall = new Mesh(new PlaneGeometry(1, 1), new ShadowMaterial());
  private readonly fog = new Fog('#ffffff', 1, 100);
  private readonly strands = new Map<string, Strand>();
  private readonly ground = new Color();
  private readonly user: ContextUser;
  private disposed = false;

  /** @throws Error when the browser gives no WebGL 2 context */
  constructor(user: ContextUser) {
    this.user = user;
    joinContext(user);
    this.key.castShadow = true;
    this.key.shadow.mapSize.set(SHADOW_PIXELS, SHADOW_PIXELS);
    this.key.shadow.radius = 5;
    this.wall.receiveShadow = true;
    (this.wall.material as ShadowMaterial).opacity = 0.13;
    this.scene.fog = this.fog;
    this.scene.add(
      this.key,
      this.key.target,
      this.fill,
      this.fill.target,
      this.sky,
      this.wall,
      this.camera,
    );
  }

  /** Colour behind the threads, into which far ones fade; any CSS colour that three reads. */
  setGround(colour: string): void {
    this.ground.set(colour);
    this.fog.color.copy(this.ground);
  }

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

  /** Lets the browser make the programs ready beside other work; drawing sooner would wait. */
  async ready(): Promise<void> {
    const renderer = sharedRenderer();
    // Without the extension there is no asking, and three would complain on the console.
    if (renderer?.extensions.has('KHR_parallel_shader_compile')) {
      await renderer.compileAsync(this.scene, this.camera);
    }
  }

  /**
   * Draws the pose and copies it onto a canvas, whose width and height are in device pixels.
   *
   * @param reach radius in mm round the camera's target within which shadows fall
   * @returns false when there is no context to draw with now
   */
  drawOnto(canvas: HTMLCanvasElement, camera: Camera, reach: number): boolean {
    const renderer = sharedRenderer();
    const { width, height } = canvas;
    const paper = canvas.getContext('2d');
    if (renderer === null || paper === null || width === 0 || height === 0) return false;
    const sheet = renderer.domElement;
    if (sheet.width < width || sheet.height < height) {
      renderer.setSize(Math.max(sheet.width, width), Math.max(sheet.height, height), false);
    }
    this.aim(camera, reach);
    renderer.setViewport(0, 0, width, height);
    renderer.setScissor(0, 0, width, height);
    renderer.setScissorTest(true);
    renderer.render(this.scene, this.camera);
    paper.clearRect(0, 0, width, height);
    paper.drawImage(sheet, 0, sheet.height - height, width, height, 0, 0, width, height);
    return true;
  }

  dispose(): void {
    if (this.disposed) return;
    this.disposed = true;
    for (const id of [...this.strands.keys()]) this.remove(id);
    this.key.dispose();
    this.fill.dispose();
    this.sky.dispose();
    this.wall.geometry.dispose();
    (this.wall.material as ShadowMaterial).dispose();
    leaveContext(this.user);
  }

  private aim(view: Camera, reach: number): void {
    const { camera, key, fill, wall, fog } = this;
    const { right, up, back } = cameraAxes(view.yaw, view.pitch);
    const [x, y, z] = cameraPosition(view);
    const [tx, ty, tz] = view.target;
    camera.fov = (FIELD_OF_VIEW * 180) / Math.PI;
    camera.aspect = view.aspect;
    camera.near = Math.max(0.01, view.distance - 3 * reach);
    camera.far = view.distance + 6 * reach;
    camera.position.set(x, y, z);
    camera.up.set(...up);
    camera.lookAt(tx, ty, tz);
    camera.updateProjectionMatrix();
    fog.near = view.distance + 0.15 * reach;
    fog.far = view.distance + 4.5 * reach;

    // The light stays at the viewer's upper left, so that it falls alike from every side.
    const place = (a: number, b: number, c: number): [number, number, number] => [
      tx + reach * (a * right[0] + b * up[0] + c * back[0]),
      ty + reach * (a * right[1] + b * up[1] + c * back[1]),
      tz + reach * (a * right[2] + b * up[2] + c * back[2]),
    ];
    key.position.set(...place(-0.95, 1.5, 2.9));
    key.target.position.set(tx, ty, tz);
    const box = key.shadow.camera;
    box.left = box.bottom = -1.7 * reach;
    box.right = box.top = 1.7 * reach;
    box.near = 0.2 * reach;
    box.far = 7 * reach;
    box.updateProjectionMatrix();
    key.shadow.normalBias = 0.004 * reach;
    key.shadow.bias = -0.0008;
    fill.position.set(...place(2, -0.6, 1.6));
    fill.target.position.set(tx, ty, tz);

    wall.position.set(...place(0, 0, -0.5));
    wall.scale.setScalar(12 * reach);
    wall.quaternion.copy(camera.quaternion);
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
