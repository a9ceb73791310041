import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  diameterOfTex,
  FIBRE_DENSITIES,
  FIBRES,
  neOfTex,
  nmOfTex,
  texOfDiameter,
  texOfNe,
  texOfNm,
} from '../../src/thread/density.js';
import { threadOf } from '../../src/thread/thread.js';

describe('fineness and diameter', () => {
  // Peirce 1937: d[mm] = 0.0374 sqrt(tex), at a specific volume of 1.1 cm3/g.
  it.each([1, 20, 59.05, 240, 1_000])('gives %d tex the diameter of the cotton rule', (tex) => {
    // The rule's figure is given to three places.
    expect(diameterOfTex(tex) / Math.sqrt(tex)).toBeCloseTo(0.0374, 4);
  });

  // ISO 1144 and the definitions of the counts: 840 yd/lb and km/kg.
  it('converts counts as the definitions say', () => {
    const poundInGrams = 453.592_37;
    const hankInKm = 840 * 0.000_914_4;
    expect(texOfNe(1)).toBeCloseTo(poundInGrams / hankInKm, 1);
    expect(texOfNe(20)).toBeCloseTo(29.5, 1);
    expect(texOfNm(34)).toBeCloseTo(29.4, 1);
    expect(neOfTex(texOfNe(30))).toBeCloseTo(30, 12);
    expect(nmOfTex(texOfNm(50))).toBeCloseTo(50, 12);
  });

  it('goes there and back for every fibre, and denser fibres are finer', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100_000, noNaN: true }),
        fc.constantFrom(...FIBRES),
        (tex, fibre) => {
          const diameter = diameterOfTex(tex, fibre);
          expect(texOfDiameter(diameter, fibre) / tex).toBeCloseTo(1, 9);
          const finer = FIBRE_DENSITIES[fibre] > FIBRE_DENSITIES.polypropylene;
          expect(diameter < diameterOfTex(tex, 'polypropylene')).toBe(finer);
          // Four times the fineness, twice the diameter.
          expect(diameterOfTex(4 * tex, fibre) / diameter).toBeCloseTo(2, 9);
        },
      ),
    );
  });

  it('lays strands together by their cross-section', () => {
    const one = threadOf({ tex: 40 });
    const six = threadOf({ tex: 40, strands: 6 });
    expect(six.tex).toBeCloseTo(240, 9);
    expect(six.diameter / one.diameter).toBeCloseTo(Math.sqrt(6), 9);
    expect(threadOf({ diameter: 0.5, strands: 4 }).diameter).toBeCloseTo(1, 12);
  });

  it.each([
    [{ tex: 0 }, /tex is outside.*from 1/],
    [{ tex: Number.NaN }, /outside/],
    [{ diameter: 30 }, /30 mm is outside/],
    [{ tex: 10, diameter: 1 }, /both/],
    [{ strands: 0 }, /0 strands/],
    [{ strands: 1.5 }, /1.5 strands/],
  ])('refuses %j', (choice, message) => {
    expect(() => threadOf(choice)).toThrow(message);
  });
});
