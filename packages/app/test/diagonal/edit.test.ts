import {
  ANY_COLOUR,
  BARE,
  type Chart,
  type DiagonalPicture,
  knotsInRow,
  mirrorPicture,
  NO_KNOT,
  reversePicture,
  turnPicture,
} from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { USUAL_SETTINGS } from '../../src/cut/settings.js';
import { kindInk, plainInk } from '../../src/diagonal/edit/ink.js';
import { doubled, OPERATIONS, operated } from '../../src/diagonal/edit/operations.js';
import {
  differing,
  drawnPicture,
  emptyPattern,
  pictureDrawn,
  relaid,
  shownBy,
  usesOf,
} from '../../src/diagonal/edit/pattern.js';
import { indexOf, isPlace, placeAtSlot, slotOf, touching } from '../../src/diagonal/edit/places.js';
import { pictureOfChart } from '../../src/diagonal/edit/sampled.js';
import { inked, LatticeStroke, lineBetween, patchAt } from '../../src/diagonal/edit/strokes.js';
import { symmetriesOf } from '../../src/diagonal/edit/symmetry.js';
import { NO_SYMMETRY } from '../../src/draw/edit/symmetry.js';
import { newDiagonalProject } from '../../src/project/project.js';
import { anyDiagonalProject, anyLattice, anyPattern, COLOURS } from './projects.js';

/** Places of a lattice, some of which may be beside it. */
const anyPlace = fc.record({
  row: fc.integer({ min: -1, max: 9 }),
  column: fc.integer({ min: -1, max: 5 }),
});

const ALL = { sides: true, ends: true, turn: true };

describe('places', () => {
  it('are found again by their slots, and touch those that share a string', () => {
    fc.assert(
      fc.property(anyLattice, anyPlace, (lattice, place) => {
        const found = placeAtSlot(lattice, place.row, slotOf(lattice, place));
        expect(found).toEqual(isPlace(lattice, place) ? place : null);
        for (const next of touching(lattice, place)) {
          expect(isPlace(lattice, next)).toBe(true);
          expect(Math.abs(slotOf(lattice, next) - slotOf(lattice, place))).toBe(1);
        }
      }),
    );
  });
});

describe('strokes', () => {
  it('go along a diagonal from touching knot to touching knot', () => {
    const lattice = { strings: 8, rows: 7, first: 0 } as const;
    const line = lineBetween(lattice, { row: 0, column: 0 }, { row: 6, column: 3 });
    expect(line).toHaveLength(7);
    line.forEach(({ row }, at) => {
      expect(row).toBe(at);
    });
    // Straight down, only every second row has a knot there.
    const down = lineBetween(lattice, { row: 0, column: 1 }, { row: 6, column: 1 });
    expect(down.map(({ row }) => row)).toEqual([0, 2, 4, 6]);
  });

  it('write nothing but the ink, only into places, and the images of what they meet', () => {
    fc.assert(
      fc.property(
        anyPattern,
        fc.array(anyPlace, { minLength: 1, maxLength: 4 }),
        (pattern, stops) => {
          const [from, ...rest] = stops as [(typeof stops)[0], ...typeof stops];
          const { knots } = pattern;
          const stroke = new LatticeStroke(pattern, knots, 'pencil', plainInk(2), ALL, from);
          for (const stop of rest) stroke.moveTo(stop);
          for (let row = 0; row < pattern.rows; row++) {
            for (let column = 0; column < Math.floor(pattern.strings / 2); column++) {
              const at = indexOf(pattern, { row, column });
              const place = column < knotsInRow(pattern, row);
              expect([knots[at], place ? 2 : knots[at]]).toContain(stroke.bytes[at]);
            }
          }
        },
      ),
    );
  });

  it('drawn with all symmetries of a lattice make a picture that has them', () => {
    fc.assert(
      fc.property(anyLattice, anyPlace, (lattice, place) => {
        const { pattern } = emptyPattern('', lattice, COLOURS);
        const bytes = inked(lattice, pattern.knots, [place], plainInk(1), ALL);
        const picture: DiagonalPicture = { name: '', ...lattice, colours: COLOURS, cells: bytes };
        const has = symmetriesOf(lattice);
        if (has.sides) expect(mirrorPicture(picture)).toEqual(picture);
        if (has.ends) expect(reversePicture(picture)).toEqual(picture);
        if (has.turn) expect(turnPicture(picture)).toEqual(picture);
      }),
    );
  });

  it('of kinds mirror the ways of the knots, so that the picture is mirrored', () => {
    const lattice = { strings: 6, rows: 1, first: 0 } as const;
    const sides = { ...NO_SYMMETRY, sides: true };
    const { pattern } = emptyPattern('', lattice, COLOURS);
    const kinds = [0, 1, 2, 3].map((kind) => {
      const knots = inked(lattice, pattern.knots, [{ row: 0, column: 0 }], kindInk(kind), sides);
      return [knots[0], knots[2]];
    });
    expect(kinds).toEqual([
      [0, 1],
      [1, 0],
      [2, 3],
      [3, 2],
    ]);
  });

  it('fill a patch that is all alike and holds the knot', () => {
    fc.assert(
      fc.property(anyPattern, anyPlace, (pattern, place) => {
        fc.pre(isPlace(pattern, place));
        const patch = patchAt(pattern, pattern.knots, place);
        expect(patch).toContainEqual(place);
        const kind = pattern.knots[indexOf(pattern, place)];
        const inside = new Set(patch.map((one) => indexOf(pattern, one)));
        for (const one of patch) {
          expect(pattern.knots[indexOf(pattern, one)]).toBe(kind);
          for (const next of touching(pattern, one)) {
            const alike = pattern.knots[indexOf(pattern, next)] === kind;
            expect(inside.has(indexOf(pattern, next))).toBe(alike);
          }
        }
      }),
    );
  });
});

describe('a pattern and the picture that is wanted of it', () => {
  it('what is drawn just as the knots show is wanted no more', () => {
    fc.assert(
      fc.property(anyDiagonalProject, (project) => {
        const { cells } = shownBy(project.pattern);
        expect(pictureDrawn(project, cells.slice())).toEqual({ wanted: null });
        const wish = drawnPicture(project);
        const { wanted } = pictureDrawn(project, wish.cells);
        if (wanted == null) expect(wish.cells).toEqual(cells);
        else expect(wanted.cells).toEqual(wish.cells);
      }),
    );
  });

  it('any colour is shown by any knot, and by none only where none is', () => {
    const lattice = { strings: 4, rows: 2, first: 0 } as const;
    const { pattern, wanted } = emptyPattern('', lattice, COLOURS);
    // Three places without a knot where a knot in any colour is wanted.
    expect(differing(shownBy(pattern), wanted)).toEqual([0, 1, 2]);
    const knots = pattern.knots.map((kind, at) => (at < 3 ? 0 : kind));
    expect(differing(shownBy({ ...pattern, knots }), wanted)).toEqual([]);
    const bare = { ...wanted, cells: wanted.cells.map(() => BARE) };
    expect(differing(shownBy(pattern), bare)).toEqual([]);
  });

  it('on a larger lattice everything stays in its row and slots', () => {
    fc.assert(
      fc.property(
        anyDiagonalProject,
        fc.nat({ max: 3 }),
        fc.nat({ max: 3 }),
        (project, wide, long) => {
          const { pattern } = project;
          const { strings, rows, first } = pattern;
          const change = relaid(project, { strings: strings + wide, rows: rows + long, first });
          if (wide === 0 && long === 0) {
            expect(change).toEqual({});
            return;
          }
          const next = { ...project, ...change };
          expect(next.pattern.start.slice(0, strings)).toEqual(pattern.start);
          const picture = drawnPicture(project);
          const nextPicture = drawnPicture(next);
          for (let row = 0; row < rows; row++) {
            for (let column = 0; column < knotsInRow(pattern, row); column++) {
              const at = indexOf(pattern, { row, column });
              const there = indexOf(next.pattern, { row, column });
              expect(next.pattern.knots[there]).toBe(pattern.knots[at]);
              expect(nextPicture.cells[there]).toBe(picture.cells[at]);
            }
          }
          // The way back loses nothing.
          const back = { ...next, ...relaid(next, pattern) };
          expect(back.pattern).toEqual(pattern);
          expect(drawnPicture(back).cells).toEqual(picture.cells);
        },
      ),
    );
  });

  it('is mirrored, upside down and turned together with what is wanted', () => {
    fc.assert(
      fc.property(anyDiagonalProject, fc.constantFrom(...OPERATIONS), (project, operation) => {
        const once = { ...project, ...operated(project, operation) };
        expect(shownBy(once.pattern).cells).toEqual(
          operation.picture(shownBy(project.pattern)).cells,
        );
        const { wanted } = { ...once, ...operated(once, operation) };
        expect(wanted).toEqual(project.wanted);
      }),
    );
  });

  it('twice as long is knotted twice, where its first row fits below its last', () => {
    fc.assert(
      fc.property(anyDiagonalProject, (project) => {
        const { pattern } = project;
        if (pattern.rows % 2 === 1) {
          expect(() => doubled(project)).toThrow(/cannot follow itself/);
          return;
        }
        const twice = { ...project, ...doubled(project) };
        const once = shownBy(pattern).cells;
        expect(shownBy(twice.pattern).cells.slice(0, once.length)).toEqual(once);
        expect(twice.pattern.knots.slice(pattern.knots.length)).toEqual(pattern.knots);
        if (project.wanted === null) expect(twice.wanted).toBeNull();
        else expect(twice.wanted?.cells.length).toBe(2 * project.wanted.cells.length);
      }),
    );
  });

  it('counts strings and wanted knots by their colours', () => {
    fc.assert(
      fc.property(anyDiagonalProject, (project) => {
        const wanted = project.wanted?.cells.filter((cell) => cell < COLOURS.length).length ?? 0;
        const uses = usesOf(project).reduce((sum, many) => sum + many, 0);
        expect(uses).toBe(project.pattern.strings + wanted);
      }),
    );
  });

  it('takes the colours of a chart at the middle of each knot', () => {
    const lattice = { strings: 8, rows: 6, first: 1 } as const;
    const { pattern, wanted } = emptyPattern('', lattice, COLOURS.slice(0, 1));
    const project = newDiagonalProject(pattern, wanted, USUAL_SETTINGS, 0);
    const chart: Chart = {
      name: '',
      rows: 60,
      columns: 80,
      colours: [COLOURS[1], COLOURS[0]].flatMap((colour) => colour ?? []),
      cells: Uint8Array.from({ length: 4_800 }, (_, at) => (at % 80 < 40 ? 0 : 1)),
    };
    const change = pictureOfChart(project, chart);
    expect(change.pattern?.colours.map(({ hex }) => hex)).toEqual(
      COLOURS.slice(0, 2).map(({ hex }) => hex),
    );
    const cells = change.wanted?.cells ?? new Uint8Array();
    for (let row = 0; row < 6; row++) {
      for (let column = 0; column < knotsInRow(lattice, row); column++) {
        const middle = slotOf(lattice, { row, column }) + 1;
        // Orange on the left of the middle, blue from it on.
        expect(cells[indexOf(lattice, { row, column })]).toBe(middle < 4 ? 1 : 0);
      }
    }
    expect(cells).not.toContain(ANY_COLOUR);
    expect(pattern.knots.every((kind) => kind === NO_KNOT)).toBe(true);
  });
});
