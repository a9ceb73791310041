import { KNOT_KINDS } from '@halfhitch/core';
import { heldCrossings, knotPose } from '@halfhitch/geometry';
import { describe, expect, it } from 'vitest';
import { type FlatPiece, flatPicture } from '../src/flat/flat-picture.js';
import { knotBox, knotLines } from '../src/knot/knot-lines.js';
import { frameBox, projector } from '../src/thread/camera.js';

const SIZE = 400;

function pictureOf(kind: (typeof KNOT_KINDS)[number], position: number, yaw: number) {
  const look = { kind, mirror: false, tyingColour: '#2f6f9f', heldColour: '#e9e2d0' };
  const camera = frameBox(knotBox(position), { yaw, pitch: 0, aspect: 1 });
  const pieces = flatPicture(knotLines(look, position), camera, SIZE, SIZE);
  return { pieces, project: projector(camera, SIZE, SIZE) };
}

/** The string drawn last, so seen, at a pixel. */
function seenAt(pieces: readonly FlatPiece[], x: number, y: number): string | undefined {
  return [...pieces].reverse().find((piece) => {
    const corners = [...piece.path.matchAll(/([\d.-]+) ([\d.-]+)/g)].map((match) => ({
      x: Number(match[1]),
      y: Number(match[2]),
    }));
    return corners.some((to, i) => {
      const from = corners[Math.max(0, i - 1)] ?? to;
      return distance(x, y, from, to) <= piece.width / 2;
    });
  })?.string;
}

type Pixel = { readonly x: number; readonly y: number };

function distance(x: number, y: number, from: Pixel, to: Pixel): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const long = dx * dx + dy * dy;
  const at =
    long === 0 ? 0 : Math.max(0, Math.min(1, ((x - from.x) * dx + (y - from.y) * dy) / long));
  return Math.hypot(x - from.x - at * dx, y - from.y - at * dy);
}

describe('the flat picture', () => {
  // The geometry's own list of crossings is made without any projection of ours.
  for (const kind of KNOT_KINDS) {
    for (const position of [0.25, 0.5]) {
      it(`draws over and under as the thread of a ${kind} knot lies at ${position}`, () => {
        const pose = knotPose(kind, position, { points: 640 });
        const crossings = heldCrossings(pose.tying, pose.held);
        expect(crossings.length).toBeGreaterThan(0);
        const front = pictureOf(kind, position, 0);
        const back = pictureOf(kind, position, Math.PI);
        for (const { y, level } of crossings) {
          const z = level === 'over' ? 1 : -1;
          const f = front.project(0, -y, z);
          const b = back.project(0, -y, z);
          expect(seenAt(front.pieces, f.x, f.y)).toBe(level === 'over' ? 'tying' : 'held');
          expect(seenAt(back.pieces, b.x, b.y)).toBe(level === 'over' ? 'held' : 'tying');
        }
      });
    }
  }

  it('draws the farthest pieces first', () => {
    const { pieces } = pictureOf('forward', 1.5, 0.4);
    const depths = pieces.map((piece) => piece.depth);
    expect(depths).toEqual([...depths].sort((a, b) => b - a));
    expect(pieces.length).toBeGreaterThan(40);
  });

  it('marks the string that ties and leaves the held one plain', () => {
    const { pieces } = pictureOf('forward', 1, 0);
    const marked = new Set(pieces.filter(({ mark }) => mark !== '').map(({ string }) => string));
    expect([...marked]).toEqual(['tying']);
  });
});
