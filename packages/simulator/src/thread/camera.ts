import type { Box } from './thread-line.js';

/** Vertical opening angle in radians. Narrow, so that near and far threads keep their sizes. */
export const FIELD_OF_VIEW = (24 * Math.PI) / 180;

/** Where the picture is seen from; angles in radians, lengths in mm, y up. */
export interface Camera {
  /** Turn about the upright axis: 0 from the front, pi from the back. */
  readonly yaw: number;
  /** Height above the horizon. */
  readonly pitch: number;
  readonly target: readonly [number, number, number];
  /** From the camera to the target. */
  readonly distance: number;
  /** Width of the picture over its height. */
  readonly aspect: number;
}

export interface CameraAxes {
  readonly right: readonly [number, number, number];
  readonly up: readonly [number, number, number];
  /** From the target to the camera. */
  readonly back: readonly [number, number, number];
}

export function cameraAxes(yaw: number, pitch: number): CameraAxes {
  const sinYaw = Math.sin(yaw);
  const cosYaw = Math.cos(yaw);
  const sinPitch = Math.sin(pitch);
  const cosPitch = Math.cos(pitch);
  return {
    right: [cosYaw, 0, -sinYaw],
    up: [-sinYaw * sinPitch, cosPitch, -cosYaw * sinPitch],
    back: [sinYaw * cosPitch, sinPitch, cosYaw * cosPitch],
  };
}

/** The camera as near to a box as keeps all of it in the picture. */
export function frameBox(
  box: Box,
  view: { readonly yaw: number; readonly pitch: number; readonly aspect: number },
): Camera {
  const { yaw, pitch } = view;
  const aspect = view.aspect > 0 ? view.aspect : 1;
  const { right, up, back } = cameraAxes(yaw, pitch);
  const target: [number, number, number] = [
    (box.min[0] + box.max[0]) / 2,
    (box.min[1] + box.max[1]) / 2,
    (box.min[2] + box.max[2]) / 2,
  ];
  const slopeY = Math.tan(FIELD_OF_VIEW / 2);
  const slopeX = slopeY * aspect;
  let distance = 1e-3;
  for (let corner = 0; corner < 8; corner++) {
    const x = (corner & 1 ? box.max[0] : box.min[0]) - target[0];
    const y = (corner & 2 ? box.max[1] : box.min[1]) - target[1];
    const z = (corner & 4 ? box.max[2] : box.min[2]) - target[2];
    const across = Math.abs(x * right[0] + y * right[1] + z * right[2]);
    const upward = Math.abs(x * up[0] + y * up[1] + z * up[2]);
    const towards = x * back[0] + y * back[1] + z * back[2];
    distance = Math.max(distance, towards + across / slopeX, towards + upward / slopeY);
  }
  return { yaw, pitch, target, distance, aspect };
}

export function cameraPosition(camera: Camera): [number, number, number] {
  const { back } = cameraAxes(camera.yaw, camera.pitch);
  const { target, distance } = camera;
  return [
    target[0] + back[0] * distance,
    target[1] + back[1] * distance,
    target[2] + back[2] * distance,
  ];
}

/**
 * Projects points into a picture.
 *
 * @returns a function from x, y, z in mm to pixels from the top left, the distance from the
 *   camera along its axis in mm, and pixels for each mm there
 */
export function projector(
  camera: Camera,
  width: number,
  height: number,
): (x: number, y: number, z: number) => { x: number; y: number; depth: number; scale: number } {
  const { right, up, back } = cameraAxes(camera.yaw, camera.pitch);
  const { target, distance } = camera;
  const focal = height / 2 / Math.tan(FIELD_OF_VIEW / 2);
  return (x, y, z) => {
    const dx = x - target[0];
    const dy = y - target[1];
    const dz = z - target[2];
    const depth = Math.max(1e-3, distance - (dx * back[0] + dy * back[1] + dz * back[2]));
    const scale = focal / depth;
    return {
      x: width / 2 + (dx * right[0] + dy * right[1] + dz * right[2]) * scale,
      y: height / 2 - (dx * up[0] + dy * up[1] + dz * up[2]) * scale,
      depth,
      scale,
    };
  };
}
