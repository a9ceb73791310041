import type { Place, Size } from './place.js';

/** What is drawn again elsewhere as it is drawn, about the middle of the chart. */
export interface Symmetry {
  /** The right half is the mirror image of the left one. */
  readonly sides: boolean;
  /** The lower half is the mirror image of the upper one. */
  readonly ends: boolean;
  /** The chart looks the same turned by half a turn. */
  readonly turn: boolean;
}

export const NO_SYMMETRY: Symmetry = { sides: false, ends: false, turn: false };

/** Two of the three ways together bring the third. */
export function wholeSymmetry({ sides, ends, turn }: Symmetry): Symmetry {
  return {
    sides: sides || (ends && turn),
    ends: ends || (sides && turn),
    turn: turn || (sides && ends),
  };
}

/** The place and its images, each once. */
export function imagesOf(place: Place, size: Size, symmetry: Symmetry): Place[] {
  const { row, column } = place;
  const across = size.columns - 1 - column;
  const down = size.rows - 1 - row;
  const images: Place[] = [place];
  const add = (image: Place): void => {
    if (!images.some((other) => other.row === image.row && other.column === image.column)) {
      images.push(image);
    }
  };
  const { sides, ends, turn } = wholeSymmetry(symmetry);
  if (sides) add({ row, column: across });
  if (ends) add({ row: down, column });
  if (turn) add({ row: down, column: across });
  return images;
}
