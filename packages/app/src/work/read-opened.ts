import { readPatternOrPicture } from '@halfhitch/core';
import { emptyPattern } from '../diagonal/edit/pattern.js';
import type { Answers } from './messages.js';

/**
 * What a file holds: a chart, a diagonal pattern, or a picture that is wanted of one.
 *
 * @throws InputError naming the file
 */
export function readOpened(bytes: Uint8Array, fileName: string): Answers['read'] {
  const { notices, ...read } = readPatternOrPicture(bytes, fileName);
  const said = notices.map(({ message }) => message);
  switch (read.kind) {
    case 'alpha':
      return { ...read, notices: said };
    case 'diagonal':
      return { ...read, wanted: null, notices: said };
    case 'picture': {
      // It comes without knots: they are to be found.
      const { picture } = read;
      const { pattern } = emptyPattern(picture.name, picture, picture.colours);
      return { kind: 'diagonal', pattern, wanted: picture, notices: said };
    }
  }
}
