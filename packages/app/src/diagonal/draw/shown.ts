import type { Place } from '../../draw/edit/place.js';
import type { DiagonalProject } from '../../project/project.js';
import { Remembered } from '../../view/remembered.js';
import { shownBy } from '../edit/pattern.js';
import { indexOf, isPlace } from '../edit/places.js';
import type { LatticeMark } from '../lattice/look.js';
import type { LatticeSubject } from '../lattice/subject.js';
import { cellInWords } from '../lattice/words.js';
import { conflictMarks, differenceMarks, type Offer } from '../solve/offer.js';
import type { DrawMode } from './drawn-with.js';
import { knotsSubject, pictureSubject } from './subjects.js';

const NO_MARKS: readonly LatticeMark[] = [];

/** How a pattern is looked at while it is drawn. */
export interface Looked {
  readonly mode: DrawMode;
  /** What a search found that cannot be knotted as it is drawn. */
  readonly offer: Offer | null;
  /** Whether the way of the string that ties is drawn on each knot. */
  readonly ways: boolean;
}

/** What the sheet shows of a pattern, and what is marked in it. */
export class ShownPattern {
  private readonly subject = new Remembered<LatticeSubject>();
  private readonly marks = new Remembered<readonly LatticeMark[]>();

  subjectOf(open: DiagonalProject, { mode, offer, ways }: Looked): LatticeSubject {
    const { pattern, wanted } = open;
    const nearest = offer?.showing === 'nearest' ? offer.solution.pattern : null;
    return this.subject.of([pattern, wanted, mode, nearest, ways], () => {
      if (nearest !== null) return knotsSubject(nearest, ways);
      return mode === 'knots' ? knotsSubject(pattern, ways) : pictureSubject(open, ways);
    });
  }

  marksOf({ pattern, wanted }: DiagonalProject, { mode, offer }: Looked): readonly LatticeMark[] {
    return this.marks.of([pattern, wanted, offer, mode], () => {
      if (offer !== null) {
        const nearest = offer.solution.pattern;
        if (offer.showing === 'conflict' || nearest === null) return conflictMarks(offer);
        return differenceMarks(nearest, offer.wanted);
      }
      return mode === 'knots' && wanted !== null ? differenceMarks(pattern, wanted) : NO_MARKS;
    });
  }

  /** What a place is; and in knots what is wanted there, in the picture what the knots show. */
  wordsAt(open: DiagonalProject, looked: Looked, place: Place): string {
    const { words, bytes } = this.subjectOf(open, looked);
    const here = `${words(place, bytes)}.`;
    const { pattern, wanted } = open;
    if (wanted === null || looked.offer !== null || !isPlace(pattern, place)) return here;
    const at = indexOf(pattern, place);
    return looked.mode === 'knots'
      ? `${here} Wanted: ${cellInWords(wanted.colours, wanted.cells[at])}.`
      : `${here} The knots show: ${cellInWords(pattern.colours, shownBy(pattern).cells[at])}.`;
  }
}
