import { InputError, readPattern, readPictureFile } from '@halfhitch/core';
import { emptyPattern } from '../diagonal/edit/pattern.js';
import type { Answers } from './messages.js';

/**
 * What a file holds: a chart, a diagonal pattern, or a picture that is wanted of one.
 *
 * @throws InputError naming the file
 */
export function readOpened(bytes: Uint8Array, fileName: string): Answers['read'] {
  try {
    const { notices, ...read } = readPattern(bytes, fileName);
    const said = notices.map(({ message }) => message);
    return read.kind === 'alpha'
      ? { ...read, notices: said }
      : { ...read, wanted: null, notices: said };
  } catch (error) {
    if (!(error instanceof InputError) || error.code !== 'picture-not-pattern') throw error;
    return readWanted(bytes, fileName);
  }
}

/** A picture comes without knots: they are to be found. */
function readWanted(bytes: Uint8Array, fileName: string): Answers['read'] {
  const { picture, notices } = readPictureFile(bytes, fileName);
  const { pattern } = emptyPattern(picture.name, picture, picture.colours);
  const said = notices.map(({ message }) => message);
  return { kind: 'diagonal', pattern, wanted: picture, notices: said };
}
