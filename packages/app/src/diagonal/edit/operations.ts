import {
  type DiagonalPattern,
  type DiagonalPicture,
  mirrorDiagonal,
  mirrorPicture,
  reverseDiagonal,
  reversePicture,
  turnDiagonal,
  turnPicture,
} from '@halfhitch/core';
import type { DiagonalChange, DiagonalProject } from '../../project/project.js';

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
