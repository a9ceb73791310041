import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import {
  apply,
  type DiagonalPattern,
  type DiagonalPicture,
  mirrorDiagonal,
  mirrorPicture,
  planDiagonal,
  recolourDiagonal,
  recolourPicture,
  repeatOf,
  reverseDiagonal,
  reversePicture,
  simulateDiagonal,
  slotOfPlace,
  startState,
  turnDiagonal,
  turnPicture,
} from '../../src/index.js';
import { anyPictureOfFile } from '../support/any-diagonal-file.js';

const any = anyDiagonal({ bareTenths: 2 });
const pictureOf = (pattern: DiagonalPattern) => simulateDiagonal(pattern).picture;

/** What is seen where: rows of slots, read from the lattice and from nothing else. */
function spots({ strings, rows, first, cells }: DiagonalPicture): (number | null)[][] {
  const across = Math.floor(strings / 2);
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: strings - 1 }, (_, slot) => {
      const place = (slot - slotOfPlace({ first }, row, 0)) / 2;
      return Number.isInteger(place) && place >= 0 ? (cells[row * across + place] as number) : null;
    }),
  );
}

/** The strings in front before each row and at the end, by the state machine. */
function fronts(pattern: DiagonalPattern): string[][] {
  const plan = planDiagonal(pattern);
  let state = startState(plan.strings, plan.hung);
  const found = [[...state.front]];
  for (const step of plan.steps) {
    const result = apply(state, step);
    if (!result.ok) throw new Error(result.fault.message);
    state = result.state;
    if (step.do === 'turn') found.push([...state.front]);
  }
  return [...found, [...state.front]];
}

describe('symmetry of diagonal patterns', () => {
  it('a mirrored pattern knots the mirrored picture', () => {
    fc.assert(
      fc.property(any, (pattern) => {
        const mirrored = mirrorDiagonal(pattern);
        const picture = pictureOf(pattern);
        expect(pictureOf(mirrored)).toEqual(mirrorPicture(picture));
        expect(spots(mirrorPicture(picture))).toEqual(
          spots(picture).map((row) => row.slice().reverse()),
        );
        expect(mirrorDiagonal(mirrored)).toEqual(pattern);
      }),
    );
  });

  it('mirroring a plan mirrors every state', () => {
    fc.assert(
      fc.property(any, (pattern) => {
        const { strings } = pattern;
        const renamed = (id: string) => `S${strings + 1 - Number(id.slice(1))}`;
        const mirrored = fronts(mirrorDiagonal(pattern));
        expect(mirrored.map((front) => front.map(renamed).reverse())).toEqual(fronts(pattern));
      }),
    );
  });

  it('a reversed pattern knots the picture upside down, through the same orders backwards', () => {
    fc.assert(
      fc.property(any, (pattern) => {
        const reversed = reverseDiagonal(pattern);
        const picture = pictureOf(pattern);
        expect(pictureOf(reversed)).toEqual(reversePicture(picture));
        expect(spots(reversePicture(picture))).toEqual(spots(picture).reverse());
        expect(reverseDiagonal(reversed)).toEqual(pattern);
        const there = fronts(pattern);
        const last = there.at(-1) as string[];
        const back = fronts(reversed).map((front) =>
          front.map((id) => last[Number(id.slice(1)) - 1] as string),
        );
        expect(back.reverse()).toEqual(there);
      }),
    );
  });

  it('a turned pattern knots the picture turned by half a turn, whichever comes first', () => {
    fc.assert(
      fc.property(any, (pattern) => {
        const turned = turnDiagonal(pattern);
        expect(pictureOf(turned)).toEqual(turnPicture(pictureOf(pattern)));
        expect(turned).toEqual(reverseDiagonal(mirrorDiagonal(pattern)));
        expect(turnDiagonal(turned)).toEqual(pattern);
      }),
    );
  });

  it('recolouring a pattern recolours its picture and nothing else', () => {
    fc.assert(
      fc.property(any, fc.array(fc.nat(3), { minLength: 4, maxLength: 4 }), (pattern, picks) => {
        const to = picks.map((pick) => pick % pattern.colours.length);
        const recoloured = recolourDiagonal(pattern, to);
        expect(pictureOf(recoloured)).toEqual(recolourPicture(pictureOf(pattern), to));
        expect(recoloured.knots).toEqual(pattern.knots);
        expect(simulateDiagonal(recoloured).order).toEqual(simulateDiagonal(pattern).order);
      }),
    );
    const [pattern] = fc.sample(any, 1) as [DiagonalPattern];
    expect(() => recolourDiagonal(pattern, [])).toThrow(RangeError);
    expect(() => recolourDiagonal(pattern, [0, 0, 0, 0], [])).toThrow(RangeError);
  });

  it('keeps open and bare places of wanted pictures', () => {
    fc.assert(
      fc.property(anyPictureOfFile, (picture) => {
        expect(mirrorPicture(mirrorPicture(picture))).toEqual(picture);
        expect(reversePicture(reversePicture(picture))).toEqual(picture);
        const same = picture.colours.map((_, colour) => colour);
        expect(recolourPicture(picture, same)).toEqual(picture);
      }),
    );
  });

  it('a repeat has as many rounds mirrored and upside down', () => {
    fc.assert(
      fc.property(anyDiagonal({ maxStrings: 9, maxRows: 8 }), (pattern) => {
        const told = ({
          order,
          coloursCloseAfter,
          smallestRepeatRows,
        }: ReturnType<typeof repeatOf>) => [order, coloursCloseAfter, smallestRepeatRows];
        const once = told(repeatOf(pattern));
        expect(told(repeatOf(mirrorDiagonal(pattern)))).toEqual(once);
        const [order] = told(repeatOf(reverseDiagonal(pattern)));
        expect(order).toBe(once[0]);
      }),
    );
  });
});
