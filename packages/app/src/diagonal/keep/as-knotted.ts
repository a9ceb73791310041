import type { DiagonalPattern, DiagonalPicture } from '@halfhitch/core';
import { plainLegend, plainName } from '../../keep/plain.js';
import type { DiagonalProject } from '../../project/project.js';

type Drawn = Pick<DiagonalProject, 'pattern' | 'wanted'>;

/** A pattern, and the picture that is still wanted of it, as they go into files. */
export function asKnotted({ pattern, wanted }: Drawn): {
  readonly pattern: DiagonalPattern;
  readonly wanted: DiagonalPicture | null;
} {
  const name = plainName(pattern.name);
  const { colours, placeOf } = plainLegend(pattern.colours);
  const one = (bytes: Uint8Array): Uint8Array =>
    colours.length === pattern.colours.length ? bytes : bytes.map((byte) => placeOf[byte] ?? byte);
  return {
    pattern: { ...pattern, name, colours, start: one(pattern.start) },
    wanted: wanted === null ? null : { ...wanted, name, colours, cells: one(wanted.cells) },
  };
}
