import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frameBox, projector } from '../src/thread/camera.js';

const BOX = { min: [-2, -6, -1], max: [3, 2, 2] } as const;

describe('the camera', () => {
  it('keeps every corner of the box in the picture, and one of them at its border', () => {
    const angle = fc.double({ min: -7, max: 7, noNaN: true });
    const tilt = fc.double({ min: -1.2, max: 1.2, noNaN: true });
    const aspect = fc.double({ min: 0.3, max: 3, noNaN: true });
    fc.assert(
      fc.property(angle, tilt, aspect, (yaw, pitch, aspectRatio) => {
        const height = 500;
        const width = height * aspectRatio;
        const project = projector(
          frameBox(BOX, { yaw, pitch, aspect: aspectRatio }),
          width,
          height,
        );
        let slack = Number.POSITIVE_INFINITY;
        for (const x of [BOX.min[0], BOX.max[0]])
          for (const y of [BOX.min[1], BOX.max[1]])
            for (const z of [BOX.min[2], BOX.max[2]]) {
              const at = project(x, y, z);
              slack = Math.min(slack, at.x, at.y, width - at.x, height - at.y);
            }
        expect(slack).toBeGreaterThan(-1e-6);
        expect(slack).toBeLessThan(1e-3);
      }),
    );
  });

  it('sees x to the right from the front and to the left from the back, y up, z near', () => {
    const front = projector(frameBox(BOX, { yaw: 0, pitch: 0, aspect: 1 }), 100, 100);
    const back = projector(frameBox(BOX, { yaw: Math.PI, pitch: 0, aspect: 1 }), 100, 100);
    expect(front(3, 0, 0).x).toBeGreaterThan(front(-2, 0, 0).x);
    expect(back(3, 0, 0).x).toBeLessThan(back(-2, 0, 0).x);
    expect(front(0, 2, 0).y).toBeLessThan(front(0, -6, 0).y);
    expect(front(0, 0, 2).depth).toBeLessThan(front(0, 0, -1).depth);
    expect(back(0, 0, 2).depth).toBeGreaterThan(back(0, 0, -1).depth);
  });
});
