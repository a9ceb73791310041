import {
  Color,
  DirectionalLight,
  Fog,
  HemisphereLight,
  Mesh,
  PerspectiveCamera,
  PlaneGeometry,
  Scene,
  ShadowMaterial,
} from 'three';
import { type Camera, cameraAxes, cameraPosition, FIELD_OF_VIEW } from '../thread/camera.js';
import { joinContext, leaveContext, sharedRenderer } from './shared-context.js';
import type { ContextUser, StageScene } from './stage-scene.js';

/** Pixels across the shadow picture: soft enough at this size, and cheap on a phone. */
const SHADOW_PIXELS = 1024;

/** Light, ground and camera, and drawing onto canvases with the shared context. */
export class LitScene implements StageScene {
  protected readonly scene = new Scene();
  protected readonly ground = new Color();
  protected readonly key = new DirectionalLight('#fffaf0', 2.5);
  private readonly camera = new PerspectiveCamera();
  private readonly fill = new DirectionalLight('#dfe9f5', 0.45);
  private readonly sky = new HemisphereLight('#ffffff', '#8d949c', 1.35);
  private readonly wall = new Mesh(new PlaneGeometry(1, 1), new ShadowMaterial());
  private readonly fog = new Fog('#ffffff', 1, 100);
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

  setGround(colour: string): void {
    this.ground.set(colour);
    this.fog.color.copy(this.ground);
  }

  async ready(): Promise<void> {
    const renderer = sharedRenderer();
    // Without the extension there is no asking, and three would complain on the console.
    if (renderer?.extensions.has('KHR_parallel_shader_compile')) {
      await renderer.compileAsync(this.scene, this.camera);
    }
  }

  drawOnto(canvas: HTMLCanvasElement, camera: Camera, reach: number, zoom = 1): boolean {
    const renderer = sharedRenderer();
    const { width, height } = canvas;
    const paper = canvas.getContext('2d');
    if (renderer === null || paper === null || width === 0 || height === 0) return false;
    const sheet = renderer.domElement;
    if (sheet.width < width || sheet.height < height) {
      renderer.setSize(Math.max(sheet.width, width), Math.max(sheet.height, height), false);
    }
    this.camera.zoom = zoom;
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
    this.clear();
    this.key.dispose();
    this.fill.dispose();
    this.sky.dispose();
    this.wall.geometry.dispose();
    (this.wall.material as ShadowMaterial).dispose();
    leaveContext(this.user);
  }

  /** Gives back what is drawn. */
  protected clear(): void {}

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
}
