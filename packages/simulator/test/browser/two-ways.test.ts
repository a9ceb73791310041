import { KNOT_KINDS } from '@halfhitch/core';
import { describe } from 'vitest';
import { expect, test } from './bundle-page.js';
import { type Pixels, pixelsOf, settled } from './stage.js';

/**
 * Least share that the tying string covers in both pictures, of what it covers in either. WebGL
 * shades the thread and marks its yarns in one way, the flat drawing outlines and marks it in
 * another, so they cannot agree entirely: 0.70 to 0.85 is usual, below 0.6 for a wrong picture.
 */
const LEAST_AGREEMENT = 0.65;

const isBlue = (picture: Pixels, at: number): boolean => {
  const { data } = picture;
  return (data[at + 2] as number) > (data[at] as number) + 35;
};

/** The same, moved by some pixels: a slip of the whole picture must show. */
function agreement(one: Pixels, other: Pixels, shift = 0): number {
  let both = 0;
  let either = 0;
  for (let y = 0; y < one.height; y++) {
    for (let x = 0; x + shift < one.width; x++) {
      const a = isBlue(one, 4 * (y * one.width + x));
      const b = isBlue(other, 4 * (y * one.width + x + shift));
      if (a && b) both++;
      if (a || b) either++;
    }
  }
  return both / either;
}

describe('each knot drawn by WebGL and drawn flat', () => {
  test('the same string in the same places, from the front and from the back', async ({ fill }) => {
    const page = await fill(
      '<halfhitch-knot tying-colour="#1f6fb2" held-colour="#d8c9a4" controls="none" style="inline-size:340px"></halfhitch-knot>',
    );
    const knot = page.locator('halfhitch-knot');
    await knot.locator('canvas.threads').waitFor();
    const show = async (given: Readonly<Record<string, unknown>>): Promise<Pixels> => {
      await knot.evaluate((element, change) => {
        for (const [name, value] of Object.entries(change))
          Object.assign(element, { [name]: value });
      }, given);
      await settled(page);
      return pixelsOf(knot.locator('[part=stage]'));
    };
    for (const kind of KNOT_KINDS) {
      for (const view of ['front', 'back'] as const) {
        for (const position of view === 'front' ? [0.5, 2] : [2]) {
          const solid = await show({ drawing: 'webgl', kind, view, position });
          const flat = await show({ drawing: 'flat' });
          const what = `${kind} at ${position} from the ${view}`;
          const found = agreement(solid, flat);
          expect(found, what).toBeGreaterThan(LEAST_AGREEMENT);
          expect(agreement(solid, flat, 24), what).toBeLessThan(found - 0.05);
        }
      }
    }
  });
});
