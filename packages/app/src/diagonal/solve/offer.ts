import type { DiagonalPattern, DiagonalPicture } from '@halfhitch/core';
import type { DiagonalSolution } from '@halfhitch/core/solve';
import { counted } from '../../view/figures.js';
import { differing, shownBy } from '../edit/pattern.js';
import { placeOf } from '../edit/places.js';
import type { LatticeMark } from '../lattice/look.js';
import { cellInWords } from '../lattice/words.js';

/** What a search has come to that is no exact answer, to be looked at and taken or left. */
export interface Offer {
  readonly wanted: DiagonalPicture;
  readonly solution: DiagonalSolution;
  /** What of it is looked at. */
  readonly showing: 'conflict' | 'nearest';
}

export function offerOf(wanted: DiagonalPicture, solution: DiagonalSolution): Offer {
  const showing = solution.pattern === null ? 'conflict' : 'nearest';
  return { wanted, solution, showing };
}

/** The knots of the smallest part that can't be knotted. */
export function conflictMarks({ solution, wanted }: Offer): LatticeMark[] {
  const { conflict } = solution;
  return (conflict?.cells ?? []).map(({ row, place, cell }) => ({
    row,
    column: place,
    what: 'conflict',
    message: `${cellInWords(wanted.colours, wanted.cells[cell])} is wanted here. This knot is part of what can't be knotted together.`,
  }));
}

/** The knots in which a pattern shows otherwise than is wanted. */
export function differenceMarks(pattern: DiagonalPattern, wanted: DiagonalPicture): LatticeMark[] {
  const shown = shownBy(pattern);
  return differing(shown, wanted).map((at) => {
    const colour = wanted.colours[wanted.cells[at] as number];
    const words = cellInWords(wanted.colours, wanted.cells[at]);
    return {
      ...placeOf(wanted, at),
      what: 'differs',
      ...(colour === undefined ? {} : { wanted: colour.hex }),
      message: `Wanted: ${words}. The knots show ${cellInWords(shown.colours, shown.cells[at])}.`,
    };
  });
}

/** What was found, in a sentence or two. */
export function foundInWords({ solution }: Offer): string {
  const { status, pattern, wrong, atLeastWrong, conflict } = solution;
  const many = wrong.length;
  const differ = counted(many, 'knot');
  const proven = many === atLeastWrong ? ', and no pattern comes nearer' : '';
  const nearest =
    pattern === null
      ? ''
      : ` The nearest pattern ${proven === '' ? 'found ' : ''}differs in ${differ}${proven}.`;
  if (status === 'impossible') {
    const why = conflict === null ? '' : ` ${conflict.message}`;
    return `Proven: there are no strings and knots that show this picture.${why}${nearest}`;
  }
  return pattern === null
    ? 'The time ran out before anything was found. Search for longer, or leave more knots in any colour.'
    : `The time ran out.${nearest} Search for longer to come nearer, if that is possible.`;
}
