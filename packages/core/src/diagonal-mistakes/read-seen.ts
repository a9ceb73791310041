import { readPatternOrPicture, readPictureFile } from '../diagonal/files/index.js';
import { type DiagonalPattern, NO_KNOT } from '../diagonal/pattern.js';
import { simulateDiagonal } from '../diagonal/simulate.js';
import { InputError } from '../errors.js';
import { KNOT_KINDS } from '../model/knot.js';
import type { DiagonalSeen } from './seen.js';

/** First byte of a PNG picture; no text begins so. */
const PNG = 0x89;

/**
 * Reads what was seen of a diagonal piece from a file: its colours as a diagonal picture has them,
 * as text or as a document, with `?` where nothing was looked at; as a PNG picture with a pixel for
 * each gap between strings, see-through where nothing was looked at; or a diagonal pattern that was
 * really knotted, which then gives colours, kinds and how the strings hang.
 *
 * @param fileName for messages; nothing is opened
 * @throws InputError naming the file
 */
export function readDiagonalSeen(bytes: Uint8Array, fileName: string): DiagonalSeen {
  try {
    if (bytes[0] === PNG) return readPictureFile(bytes, '').picture;
    const reading = readPatternOrPicture(bytes, '');
    if (reading.kind === 'picture') return reading.picture;
    if (reading.kind === 'diagonal') return seenOfPattern(reading.pattern);
  } catch (error) {
    throw error instanceof InputError && fileName !== '' ? error.inFile(fileName) : error;
  }
  throw new InputError(
    'chart-not-diagonal',
    'This is a chart, but the plan is of a diagonal pattern.',
    fileName === '' ? {} : { file: fileName },
    'Write the colours of the knots as a diagonal picture: a legend with the line "picture diagonal", a blank line, and the rows, with ? where you did not look.',
  );
}

/** A piece that was knotted by a pattern. */
export function seenOfPattern(pattern: DiagonalPattern): DiagonalSeen {
  const { picture, order } = simulateDiagonal(pattern);
  const { strings, rows, start, knots } = pattern;
  return {
    ...picture,
    looks: knots.map((knot) => (knot < KNOT_KINDS.length ? knot : NO_KNOT)),
    hanging: Uint8Array.from(order.subarray(rows * strings), (string) => start[string] as number),
  };
}
