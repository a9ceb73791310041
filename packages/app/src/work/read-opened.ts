import { decodeUtf8, InputError, readDiagonalPicture, readPattern } from '@halfhitch/core';
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
  try {
    const picture = readDiagonalPicture(decodeUtf8(bytes));
    const name = picture.name || fileName.replace(/\.[^.]*$/, '');
    const { pattern } = emptyPattern(name, picture, picture.colours);
    return { kind: 'diagonal', pattern, wanted: { ...picture, name }, notices: [] };
  } catch (error) {
    throw error instanceof InputError ? error.inFile(fileName) : error;
  }
}
