import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Player, type Score } from '../src/playback/player.js';

const SCORE: Score = {
  length: 2,
  stops: [0, 1, 2],
  stills: [0, 0.25, 0.5, 1, 1.25, 1.5, 2],
  secondsAt: () => 2,
};

function playerOf(score: Score = SCORE) {
  const seen: number[] = [];
  let ends = 0;
  const player = new Player(score, {
    moved: (position) => seen.push(position),
    ended: () => {
      ends++;
    },
  });
  return { player, seen, ends: () => ends };
}

describe('Player', () => {
  it('moves by time over the seconds of a step, times the speed', () => {
    const { player } = playerOf();
    player.play();
    player.tick(0.1);
    expect(player.position).toBeCloseTo(0.05);
    player.speed = 2;
    player.tick(0.1);
    expect(player.position).toBeCloseTo(0.15);
  });

  it('stops once at the end, and plays from the beginning when played again', () => {
    const { player, ends } = playerOf();
    player.seek(1.99);
    player.play();
    player.tick(0.1);
    player.tick(0.1);
    expect([player.position, player.playing, ends()]).toEqual([2, false, 1]);
    player.play();
    expect([player.position, player.playing]).toEqual([0, true]);
  });

  it('shows only stills where motion is not wanted', () => {
    const { player, seen } = playerOf();
    player.stills = true;
    player.play();
    for (let i = 0; i < 400; i++) player.tick(0.1);
    expect(seen).toEqual(SCORE.stills.slice(1));
    expect(player.playing).toBe(false);
  });

  it('does not leap when the page has slept', () => {
    const { player } = playerOf();
    player.play();
    player.tick(3600);
    expect(player.position).toBeLessThanOrEqual(0.05);
  });

  it('steps to the stops and moves to the stills, both ways and no further', () => {
    const { player } = playerOf();
    const places: number[] = [];
    for (const way of [1, 1, 1, -1, -1, -1] as const) {
      player.step(way);
      places.push(player.position);
    }
    expect(places).toEqual([1, 2, 2, 1, 0, 0]);
    player.seek(1.1);
    player.move(-1);
    expect(player.position).toBe(1);
    player.move(1);
    expect(player.position).toBe(1.25);
  });

  it('never leaves the score, whatever is done', () => {
    const act = fc.oneof(
      fc.record({ do: fc.constant('seek' as const), to: fc.double() }),
      fc.record({ do: fc.constant('tick' as const), to: fc.double({ min: -5, max: 5 }) }),
      fc.record({ do: fc.constantFrom('play', 'pause', 'on', 'back') }),
    );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 60 }), fc.boolean(), (acts, stills) => {
        const { player, seen } = playerOf();
        player.stills = stills;
        for (const one of acts) {
          if (one.do === 'seek' && 'to' in one) player.seek(one.to);
          else if (one.do === 'tick' && 'to' in one) player.tick(one.to);
          else if (one.do === 'play') player.play();
          else if (one.do === 'pause') player.pause();
          else player.step(one.do === 'on' ? 1 : -1);
          expect(player.position).toBeGreaterThanOrEqual(0);
          expect(player.position).toBeLessThanOrEqual(2);
        }
        expect(seen.every((position) => position >= 0 && position <= 2)).toBe(true);
      }),
    );
  });
});
