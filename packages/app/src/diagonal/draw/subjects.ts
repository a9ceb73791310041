import { type DiagonalPattern, type DiagonalPicture, simulateDiagonal } from '@halfhitch/core';
import type { DiagonalProject } from '../../project/project.js';
import { readingOf } from '../edit/pattern.js';
import type { LatticeSubject } from '../lattice/subject.js';
import { knotWords, pictureWords } from '../lattice/words.js';

/** What is drawn freely; the strings and ways of the knots show while they are just that. */
export function pictureSubject(project: DiagonalProject, ways: boolean): LatticeSubject {
  const { pattern, wanted } = project;
  const reading = readingOf(pattern);
  const { colours, start, strings, rows, first } = pattern;
  const lattice = { strings, rows, first };
  const cells = (wanted ?? reading.picture).cells;
  // Strings and ways are those of the knots: they are shown only while they are what is drawn.
  return {
    lattice,
    bytes: cells,
    look: (bytes) => {
      const drawn = wanted === null && bytes === cells;
      return {
        lattice,
        colours,
        cells: bytes,
        kinds: drawn && ways ? pattern.knots : null,
        strings: drawn ? { start, order: reading.order } : null,
      };
    },
    words: (place, bytes) => pictureWords(lattice, colours, bytes, place),
  };
}

/** The knots, with what comes of them while they are drawn. */
export function knotsSubject(pattern: DiagonalPattern, ways: boolean): LatticeSubject {
  const { colours, start, strings, rows, first } = pattern;
  const lattice = { strings, rows, first };
  let known: { of: Uint8Array; picture: DiagonalPicture; order: Uint16Array } | null = null;
  const tied = (knots: Uint8Array) => {
    if (known?.of !== knots) {
      const { picture, order } =
        knots === pattern.knots ? readingOf(pattern) : simulateDiagonal({ ...pattern, knots });
      known = { of: knots, picture, order };
    }
    return known;
  };
  return {
    lattice,
    bytes: pattern.knots,
    look: (knots) => {
      // A stroke in hand writes into the same bytes again and again.
      if (knots !== pattern.knots) known = null;
      const { picture, order } = tied(knots);
      return {
        lattice,
        colours,
        cells: picture.cells,
        kinds: ways ? knots : null,
        strings: { start, order },
      };
    },
    words: (place, knots) => knotWords(lattice, colours, knots, tied(knots).picture.cells, place),
  };
}
