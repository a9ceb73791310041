import {
  DIAGONAL_LIMITS,
  type DiagonalPattern,
  type DiagonalPicture,
  InputError,
  mirrorDiagonal,
  mirrorPicture,
  reverseDiagonal,
  reversePicture,
  turnDiagonal,
  turnPicture,
} from '@halfhitch/core';
import type { DiagonalChange, DiagonalProject } from '../../project/project.js';
import { figures } from '../../view/figures.js';

/** A change of a whole pattern, and of the picture that is wanted of it. */
export interface Operation {
  readonly label: string;
  /** For the button that takes it back. */
  readonly what: string;
  readonly pattern: (pattern: DiagonalPattern) => DiagonalPattern;
  readonly picture: (picture: DiagonalPicture) => DiagonalPicture;
}

export const OPERATIONS: readonly Operation[] = [
  {
    label: 'Mirror',
    what: 'Mirror left to right',
    pattern: mirrorDiagonal,
    picture: mirrorPicture,
  },
  {
    label: 'Upside down',
    what: 'Turn upside down',
    pattern: reverseDiagonal,
    picture: reversePicture,
  },
  { label: 'Turn by half', what: 'Turn by half', pattern: turnDiagonal, picture: turnPicture },
];

export function operated({ pattern, wanted }: DiagonalProject, by: Operation): DiagonalChange {
  return {
    pattern: by.pattern(pattern),
    wanted: wanted === null ? null : by.picture(wanted),
  };
}

/**
 * The knots once more below themselves, and with them what is wanted. What the second half shows
 * depends on how the strings hang after the first.
 *
 * @throws InputError where the first row does not fit below the last, or there would be too many
 */
export function doubled({ pattern, wanted }: DiagonalProject): DiagonalChange {
  const rows = 2 * pattern.rows;
  if (pattern.rows % 2 === 1) {
    throw new InputError(
      'repeat-odd',
      `A pattern of ${pattern.rows} rows cannot follow itself: its first row does not fit below its last.`,
      {},
      'Give it one row more or less, so that it has an even number of rows.',
    );
  }
  if (rows > DIAGONAL_LIMITS.maxRows) {
    throw new InputError(
      'too-many-rows',
      `It would have ${figures(rows)} rows.`,
      {},
      `A pattern can have at most ${figures(DIAGONAL_LIMITS.maxRows)}.`,
    );
  }
  const twice = (bytes: Uint8Array): Uint8Array => {
    const next = new Uint8Array(2 * bytes.length);
    next.set(bytes);
    next.set(bytes, bytes.length);
    return next;
  };
  return {
    pattern: { ...pattern, rows, knots: twice(pattern.knots) },
    wanted: wanted === null ? null : { ...wanted, rows, cells: twice(wanted.cells) },
  };
}
