import { describe, expect, it } from 'vitest';
import { CameraTurn, STAGE_VIEWS } from '../../src/stage/camera-turn.js';
import { cameraAxes } from '../../src/thread/camera.js';

function lookFrom(view: (typeof STAGE_VIEWS)[number], mirror = false) {
  const turn = new CameraTurn();
  turn.to(view, mirror, true);
  return cameraAxes(turn.yaw, turn.pitch).back;
}

describe('the views', () => {
  it('look from where their names say', () => {
    expect(lookFrom('front')[2]).toBeCloseTo(1);
    expect(lookFrom('back')[2]).toBeCloseTo(-1);
    // Edge-on the work is a line: nothing of its face is turned to the camera.
    expect(lookFrom('edge')[2]).toBeCloseTo(0);
    expect(Math.abs(lookFrom('edge')[0])).toBeCloseTo(1);
    const [x, , z] = lookFrom('side');
    expect(x).toBeGreaterThan(0.3);
    expect(z).toBeGreaterThan(0.3);
    // The maker sits where the loose ends hang, so looks from below in the picture.
    expect(lookFrom('hands')[1]).toBeLessThan(-0.3);
    expect(lookFrom('hands')[2]).toBeGreaterThan(0.5);
  });

  it('are mirrored with the knot', () => {
    for (const view of STAGE_VIEWS) {
      const [x, y, z] = lookFrom(view);
      const [mx, my, mz] = lookFrom(view, true);
      expect(Math.abs(mx + x)).toBeLessThan(1e-9 + (view === 'back' ? 1 : 0));
      expect([my, mz].map((v) => v.toFixed(6))).toEqual([y, z].map((v) => v.toFixed(6)));
    }
  });

  it('are turned to by the shorter way, and reached', () => {
    const turn = new CameraTurn();
    turn.by(6.1, 0.2);
    turn.to('front', false, false);
    let most = 0;
    for (let i = 0; i < 200 && turn.turning; i++) {
      const before = turn.yaw;
      turn.pass(0.01);
      most = Math.max(most, Math.abs(turn.yaw - before));
    }
    expect(turn.turning).toBe(false);
    expect([turn.yaw, turn.pitch]).toEqual([0, 0]);
    expect(most).toBeLessThan(0.06);
  });
});
