import { InputError, type Plan, printable } from '@halfhitch/core';
import type { Level } from '@halfhitch/geometry';
import { FABRIC_FULLNESS, Fabric } from '@halfhitch/geometry/fabric';
import {
  type BufferGeometry,
  CircleGeometry,
  Color,
  Curve,
  Group,
  Mesh,
  MeshStandardMaterial,
  Quaternion,
  Scene,
  TubeGeometry,
  Vector3,
} from 'three';
import { GLTFExporter } from 'three/examples/jsm/exporters/GLTFExporter.js';
import { mergeGeometries } from 'three/examples/jsm/utils/BufferGeometryUtils.js';
import { figures } from '../view/figures.js';
import { wholeStrands } from './strands.js';

interface Detail {
  /** Up to so many knots. */
  readonly knots: number;
  readonly level: Level;
  /** Corners of a thread's round. */
  readonly around: number;
}

/** The larger the piece, the less of each knot is seen. */
const DETAILS: readonly Detail[] = [
  { knots: 1_000, level: 1, around: 8 },
  { knots: 5_000, level: 2, around: 6 },
  { knots: 20_000, level: 3, around: 5 },
];

/** Most knots in a model: it then has some hundred megabytes. */
const MOST_KNOTS_IN_MODEL = 20_000;

/**
 * The finished piece as a 3D model, binary glTF 2.0: one mesh for each string, named as the plan
 * names it, in metres as glTF asks, y up, its front towards +z. Threads are as full as the
 * simulator draws them, so they touch and overlap a little: it is a picture, not a part to be made.
 *
 * @param diameter of the thread, mm
 * @throws InputError above 20,000 knots
 */
export async function modelOfPiece(plan: Plan, diameter = 1): Promise<Uint8Array> {
  const knots = plan.rows * plan.columns;
  const detail = DETAILS.find((one) => knots <= one.knots);
  if (detail === undefined) {
    throw new InputError(
      'model-too-large',
      `A model of ${figures(knots)} knots would be too large for most viewers; the most is ${figures(MOST_KNOTS_IN_MODEL)}.`,
      {},
      'Export a piece with fewer rows, for example one repeat of the pattern.',
    );
  }
  const scene = sceneOf(plan, diameter, detail);
  const glb = await new GLTFExporter().parseAsync(scene, { binary: true, onlyVisible: false });
  scene.traverse((node) => {
    if (node instanceof Mesh) (node.geometry as BufferGeometry).dispose();
  });
  return new Uint8Array(glb as ArrayBuffer);
}

function sceneOf(plan: Plan, diameter: number, { level, around }: Detail): Scene {
  const fabric = new Fabric(plan, { diameter });
  const skins = new Map<string, BufferGeometry[]>();
  for (const { string, radius, points } of wholeStrands(fabric, level)) {
    const line = uprightLine(points);
    if (line.length < 2) continue;
    const parts = skins.get(string) ?? [];
    parts.push(...skinOf(line, FABRIC_FULLNESS * radius, around));
    skins.set(string, parts);
  }
  const piece = new Group();
  piece.name = printable(plan.name) || 'Knotted band';
  // Its middle lies in the origin.
  const scale = 0.001;
  piece.scale.setScalar(scale);
  piece.position.set(
    (-(plan.columns - 1) * fabric.pitch * scale) / 2,
    ((plan.rows - 1) * fabric.rowHeight * scale) / 2,
    0,
  );
  const materials = new Map<string, MeshStandardMaterial>();
  for (const { id, colour, name } of plan.strings) {
    const parts = skins.get(id);
    if (parts === undefined) continue;
    const material = materials.get(colour) ?? cotton(colour, name);
    materials.set(colour, material);
    const mesh = new Mesh(mergeGeometries(parts), material);
    for (const part of parts) part.dispose();
    mesh.name = id;
    piece.add(mesh);
  }
  const scene = new Scene();
  scene.name = piece.name;
  scene.add(piece);
  return scene;
}

function cotton(colour: string, name: string): MeshStandardMaterial {
  const material = new MeshStandardMaterial({ color: new Color(colour), roughness: 0.9 });
  material.name = printable(name) || colour;
  return material;
}

/** Points from the geometry's frame, whose y points down the page; none twice in a row. */
function uprightLine(points: Float32Array): Vector3[] {
  const line: Vector3[] = [];
  for (let i = 0; i < points.length; i += 3) {
    const point = new Vector3(points[i], -(points[i + 1] as number), points[i + 2]);
    const last = line.at(-1);
    if (last === undefined || last.distanceToSquared(point) > 1e-8) line.push(point);
  }
  return line;
}

/** A thread's skin: a tube through all points of its line, closed at both ends. */
function skinOf(line: readonly Vector3[], radius: number, around: number): BufferGeometry[] {
  const curve = new Polyline(line);
  const tube = new TubeGeometry(curve, line.length - 1, radius, around, false);
  const ends = [0, 1].map((u) => {
    const out = curve.getTangentAt(u).multiplyScalar(u === 0 ? -1 : 1);
    return new CircleGeometry(radius, around)
      .applyQuaternion(new Quaternion().setFromUnitVectors(new Vector3(0, 0, 1), out))
      .translate(...curve.getPointAt(u).toArray());
  });
  const parts: BufferGeometry[] = [tube, ...ends];
  // There is no picture to lay on.
  for (const part of parts) part.deleteAttribute('uv');
  return parts;
}

/** A line through its points and no others, each a step of its own however far it is. */
class Polyline extends Curve<Vector3> {
  constructor(private readonly line: readonly Vector3[]) {
    super();
  }

  override getPointAt(u: number, target = new Vector3()): Vector3 {
    const at = u * (this.line.length - 1);
    const first = Math.min(Math.floor(at + 1e-9), this.line.length - 2);
    const from = this.line[first] as Vector3;
    return target.copy(from).lerp(this.line[first + 1] as Vector3, at - first);
  }

  override getTangentAt(u: number, target = new Vector3()): Vector3 {
    const at = Math.round(u * (this.line.length - 1));
    const before = this.line[Math.max(0, at - 1)] as Vector3;
    const after = this.line[Math.min(this.line.length - 1, at + 1)] as Vector3;
    target.copy(after).sub(before);
    // Where the line turns straight back there is no direction between.
    if (target.lengthSq() < 1e-12) target.copy(this.line[at] as Vector3).sub(before);
    return target.normalize();
  }
}
