import { drawFlat } from '../flat/draw-flat.js';
import { flatPicture } from '../flat/flat-picture.js';
import type { Words } from '../messages/words.js';
import { type Camera, FIELD_OF_VIEW, frameBox } from '../thread/camera.js';
import type { ThreadLine } from '../thread/thread-line.js';
import type { StageScene } from '../webgl/stage-scene.js';
import { labelPlaces } from './label-places.js';
import { writeLabels } from './labels.js';
import type { StageMoment } from './moment.js';

/** Device pixels for each CSS pixel: more costs a phone much and shows little. */
const MOST_PIXELS = 2;
const MAGNIFICATION = 3.4;
/** How far to the side shadows fall, as a part of their reach. */
const SHADOWED = 1.45;

/** What is painted, and how it is seen. */
export interface Painting {
  readonly moment: StageMoment;
  /** Lines that are no threads of the moment: where a string was or will be. */
  readonly beside: readonly ThreadLine[];
  readonly angles: { readonly yaw: number; readonly pitch: number };
  /** What draws it in 3D; null for the flat picture. */
  readonly scene: StageScene | null;
  /** Puts the moment into the scene. */
  readonly pose: (scene: StageScene) => void;
  /** Whether strings are named. */
  readonly labelled: boolean;
  readonly words: Words;
}

/** Paints a stage: what is in it, the picture in its corner and the names of strings. */
export function paint(stage: HTMLElement, painting: Painting): void {
  const { clientWidth: width, clientHeight: height } = stage;
  if (width === 0 || height === 0) return;
  const { moment, beside, angles, scene } = painting;
  const camera = frameBox(moment.box, { ...angles, aspect: width / height });
  const canvas = stage.querySelector<HTMLCanvasElement>('canvas.threads');
  if (scene !== null && canvas !== null) {
    sizeTo(canvas, width, height);
    scene.setGround(getComputedStyle(stage).backgroundColor);
    painting.pose(scene);
    scene.drawOnto(canvas, camera, reachOf(moment, camera));
    magnify(stage, painting, scene);
  } else {
    const drawing = stage.querySelector<SVGElement>(':scope > svg');
    if (drawing !== null) {
      const lines = [...moment.lines, ...beside];
      drawFlat(drawing, flatPicture(lines, camera, width, height, moment.spotlight), width, height);
    }
  }
  nameStrings(stage, painting, camera, width, height);
}

/** Draws what is round the crossing once more, larger, into the corner. */
function magnify(stage: HTMLElement, { moment, angles }: Painting, scene: StageScene): void {
  const canvas = stage.querySelector<HTMLCanvasElement>('canvas.magnified');
  if (canvas === null || moment.crossing === undefined) return;
  sizeTo(canvas, canvas.clientWidth, canvas.clientHeight);
  const camera = frameBox(moment.box, { ...angles, aspect: 1 });
  const there = { ...camera, target: moment.crossing };
  const across = 2 * camera.distance * Math.tan(FIELD_OF_VIEW / 2);
  const zoom = moment.magnified === undefined ? MAGNIFICATION : across / moment.magnified;
  scene.drawOnto(canvas, there, reachOf(moment, camera), zoom);
}

function nameStrings(
  stage: HTMLElement,
  { moment, beside, labelled, words }: Painting,
  camera: Camera,
  width: number,
  height: number,
): void {
  const places = labelled
    ? labelPlaces([...moment.lines, ...beside], moment.box, camera, width, height)
    : [];
  writeLabels(stage, places, words, width, height);
}

function sizeTo(canvas: HTMLCanvasElement, width: number, height: number): void {
  const pixels = Math.min(MOST_PIXELS, window.devicePixelRatio || 1);
  const across = Math.round(width * pixels);
  const down = Math.round(height * pixels);
  if (canvas.width === across && canvas.height === down) return;
  canvas.width = across;
  canvas.height = down;
}

/**
 * Radius in mm within which shadows fall. Under a spotlight there are threads on both sides of the box, as far
 * as the picture goes.
 */
function reachOf({ box, spotlight }: StageMoment, { distance, aspect }: Camera): number {
  const held =
    0.5 * Math.hypot(box.max[0] - box.min[0], box.max[1] - box.min[1], box.max[2] - box.min[2]);
  if (spotlight === undefined) return held;
  const seenBeside = distance * Math.tan(FIELD_OF_VIEW / 2) * aspect;
  return Math.max(held, seenBeside / SHADOWED);
}
