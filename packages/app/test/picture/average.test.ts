import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LIGHT_OF_BYTE, lightOf } from '../../src/colour/light.js';
import { Averager, type KnotLight } from '../../src/picture/average.js';

type Pixel = readonly [number, number, number, number];

function averaged(
  width: number,
  pixels: readonly Pixel[],
  columns: number,
  rows: number,
  { ground = '#ffffff', strip = 1000 } = {},
): KnotLight {
  const height = pixels.length / width;
  const averager = new Averager(width, height, { columns, rows }, ground);
  for (let top = 0; top < height; top += strip) {
    const part = pixels.slice(top * width, (top + strip) * width);
    averager.add(Uint8ClampedArray.from(part.flat()), top);
  }
  return averager.finish();
}

const grey = (value: number): Pixel => [value, value, value, 255];
const pixel = fc.tuple(fc.nat(255), fc.nat(255), fc.nat(255), fc.constant(255));
const picture = fc
  .record({ width: fc.integer({ min: 1, max: 9 }), height: fc.integer({ min: 1, max: 9 }) })
  .chain(({ width, height }) =>
    fc.record({
      width: fc.constant(width),
      pixels: fc.array(pixel, { minLength: width * height, maxLength: width * height }),
      columns: fc.integer({ min: 1, max: 9 }),
      rows: fc.integer({ min: 1, max: 9 }),
    }),
  );

describe('light of a byte', () => {
  // IEC 61966-2-1: ends, the knee, and middle grey 188 for half the light.
  it.each([
    [0, 0],
    [10, 10 / 255 / 12.92],
    [11, ((11 / 255 + 0.055) / 1.055) ** 2.4],
    [188, 0.5029],
    [255, 1],
  ])('%i is %f', (byte, light) => expect(LIGHT_OF_BYTE[byte]).toBeCloseTo(light, 4));
});

describe('averaging', () => {
  it('mixes light, so that black and white chequers make grey 188 and not 128', () => {
    const { light } = averaged(2, [grey(0), grey(255), grey(255), grey(0)], 1, 1);
    expect([...light]).toEqual([0.5, 0.5, 0.5]);
  });

  it('leaves a picture with a pixel for each knot as it is', () => {
    fc.assert(
      fc.property(picture, ({ width, pixels }) => {
        const { light } = averaged(width, pixels, width, pixels.length / width);
        pixels.forEach(([r, g, b], i) => {
          expect(light[3 * i]).toBeCloseTo(LIGHT_OF_BYTE[r] as number, 6);
          expect(light[3 * i + 1]).toBeCloseTo(LIGHT_OF_BYTE[g] as number, 6);
          expect(light[3 * i + 2]).toBeCloseTo(LIGHT_OF_BYTE[b] as number, 6);
        });
      }),
    );
  });

  it('counts a pixel on a border by the part in each knot', () => {
    // Three pixels over two knots: the middle one is half of either.
    const { light } = averaged(3, [grey(255), grey(0), grey(0)], 2, 1);
    expect(light[0]).toBeCloseTo(2 / 3, 6);
    expect(light[3]).toBe(0);
    // Two pixels over three knots: the middle knot has half of either.
    const wider = averaged(2, [grey(255), grey(0)], 3, 1).light;
    expect([wider[0], wider[6]]).toEqual([1, 0]);
    expect(wider[3]).toBeCloseTo(0.5, 6);
  });

  it('keeps the mean light of the whole, whatever the sizes', () => {
    fc.assert(
      fc.property(picture, ({ width, pixels, columns, rows }) => {
        const { light } = averaged(width, pixels, columns, rows);
        for (let c = 0; c < 3; c++) {
          const before = pixels.reduce(
            (sum, p) => sum + (LIGHT_OF_BYTE[p[c] as number] as number),
            0,
          );
          let after = 0;
          for (let i = c; i < light.length; i += 3) after += light[i] as number;
          expect(after / (rows * columns)).toBeCloseTo(before / pixels.length, 5);
        }
      }),
    );
  });

  it('does not depend on the strips it comes in', () => {
    fc.assert(
      fc.property(picture, fc.integer({ min: 1, max: 4 }), (given, strip) => {
        const { width, pixels, columns, rows } = given;
        expect(averaged(width, pixels, columns, rows, { strip })).toEqual(
          averaged(width, pixels, columns, rows),
        );
      }),
    );
  });

  it('lays what can be seen through on the ground, and counts it', () => {
    const red: Pixel = [255, 0, 0, 0];
    const half: Pixel = [255, 255, 255, 51];
    const { light, seeThrough } = averaged(2, [red, half], 2, 1, { ground: '#1f6fb2' });
    const ground = lightOf('#1f6fb2');
    expect(seeThrough).toBe(2);
    ground.forEach((value, c) => {
      expect(light[c]).toBeCloseTo(value, 6);
      expect(light[3 + c]).toBeCloseTo(0.2 + 0.8 * value, 6);
    });
    expect(averaged(1, [grey(7)], 1, 1).seeThrough).toBe(0);
  });
});
