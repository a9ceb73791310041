import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Player, type Score } from '../src/playback/player.js';

const SCORE: Score = {
  length: 3,
  stops: [0, 1, 2, 3],
  stills: [0, 0.5, 1, 1.5, 2, 2.5, 3],
  secondsAt: () => 1,
};

function played(set: (player: Player) => void): { player: Player; ends: () => number } {
  let ends = 0;
  const player = new Player(SCORE, { moved: () => undefined, ended: () => ends++ });
  set(player);
  player.play();
  return { player, ends: () => ends };
}

describe('playing backward', () => {
  it('goes from the end to the beginning and ends there', () => {
    const { player, ends } = played((one) => {
      one.backward = true;
    });
    expect(player.position).toBe(3);
    let before = 3;
    for (let i = 0; i < 60 && player.playing; i++) {
      player.tick(0.1);
      expect(player.position).toBeLessThan(before);
      before = player.position;
    }
    expect([player.position, player.playing, ends()]).toEqual([0, false, 1]);
  });

  it('goes from still to still where motion is not wanted', () => {
    const { player } = played((one) => {
      one.backward = true;
      one.stills = true;
    });
    const seen = new Set<number>();
    for (let i = 0; i < 400 && player.playing; i++) {
      player.tick(0.1);
      seen.add(player.position);
    }
    expect([...seen]).toEqual([3, 2.5, 2, 1.5, 1, 0.5, 0]);
  });
});

describe('a step played again and again', () => {
  it('is never left, whichever way and wherever it begins', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2.99, noNaN: true }),
        fc.boolean(),
        fc.array(fc.double({ min: 0.001, max: 0.1, noNaN: true }), {
          minLength: 30,
          maxLength: 80,
        }),
        (from, backward, ticks) => {
          const { player, ends } = played((one) => {
            one.loop = true;
            one.backward = backward;
            one.seek(from + (backward ? 0.01 : 0));
          });
          const at = player.position;
          const first = backward ? Math.ceil(at) - 1 : Math.floor(at);
          for (const seconds of ticks) {
            player.tick(seconds);
            expect(player.position).toBeGreaterThanOrEqual(first - 1e-9);
            expect(player.position).toBeLessThanOrEqual(first + 1 + 1e-9);
          }
          expect(player.playing).toBe(true);
          expect(ends()).toBe(0);
        },
      ),
    );
  });
});
