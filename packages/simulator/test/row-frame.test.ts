import { PlanReader, planAlpha, readDiagonalText, readTextChart } from '@halfhitch/core';
import { describe, expect, it } from 'vitest';
import { LatticeOrder } from '../src/piece/lattice-order.js';
import { latticeLines } from '../src/row/lattice-lines.js';
import { type RowMoment, rowLines } from '../src/row/row-lines.js';
import { frameBox, projector } from '../src/thread/camera.js';

const COLOURS = 'b #1f6fb2 lake blue\no #e8742c buoy orange\n\n';

function alphaMoment(mirror: boolean): RowMoment {
  const plan = planAlpha(readTextChart(`${COLOURS}bbobbbb\nbobobbb\n`).chart);
  const reader = new PlanReader(plan);
  return rowLines({ reading: reader.row(1), previous: reader.row(0) }, 3, 0.8, mirror);
}

function diagonalMoment(mirror: boolean): RowMoment {
  const pattern = readDiagonalText(
    `pattern diagonal\n${COLOURS}bboobbob\n\n\\ \\ \\ \\\n \\ \\ \\\n\\ \\ \\ \\\n`,
  );
  return latticeLines(new LatticeOrder(pattern), 2, 1, 0.8, mirror);
}

describe('the picture of a row', () => {
  for (const [name, momentOf, room] of [
    ['alpha', alphaMoment, 1.7],
    ['diagonal', diagonalMoment, 1.35],
  ] as const) {
    for (const mirror of [false, true]) {
      const moment = momentOf(mirror);
      const { box, focus, pitch } = moment;
      it.each([
        ['wide', 3],
        ['as wide as high', 1],
        ['upright', 0.5],
      ])(
        `of ${name} work, ${mirror ? 'mirrored' : 'as it is'}, holds what is round the knot: %s`,
        (_, aspect) => {
          for (const yaw of [0, Math.PI]) {
            const height = 400;
            const width = height * aspect;
            const project = projector(frameBox(box, { yaw, pitch: 0, aspect }), width, height);
            // The knots beside it, the row above with room over its knots, and what is tied with.
            for (const [across, up] of [
              [-1.8, 0],
              [1.8, 0],
              [0, room],
              [0, -room],
            ] as const) {
              const at = project(focus[0] + across * pitch, focus[1] + up * pitch, focus[2]);
              const away = [at.x / width, at.y / height].map((part) => Math.abs(part - 0.5));
              expect(Math.max(...away)).toBeLessThan(0.5);
            }
            // And it is not seen from farther than that takes.
            const pixels = project(focus[0], focus[1], focus[2]).scale * pitch;
            expect(pixels).toBeGreaterThan(Math.min(width, height) / 6);
          }
        },
      );
    }
  }
});
