import type { Camera } from '../thread/camera.js';

/** Whoever draws with the one WebGL context of the page. */
export interface ContextUser {
  contextLost(): void;
  contextRestored(): void;
}

/**
 * What an element draws with in 3D. The elements know no more of it, so that their published types
 * need none of three's, which a page may not have.
 */
export interface StageScene {
  /** Colour behind the threads, into which far ones fade; any CSS colour that three reads. */
  setGround(colour: string): void;
  /** Lets the browser make the programs ready beside other work; drawing sooner would wait. */
  ready(): Promise<void>;
  /**
   * Draws the pose and copies it onto a canvas, whose width and height are in device pixels.
   *
   * @param reach radius in mm round the camera's target within which shadows fall
   * @param zoom how much larger than the camera shows it
   * @returns false when there is no context to draw with now
   */
  drawOnto(canvas: HTMLCanvasElement, camera: Camera, reach: number, zoom?: number): boolean;
  dispose(): void;
}
