import type { ChartNotice } from '../../chart/chart.js';
import { nameOfFile } from '../../chart/read.js';
import { FILE_LIMITS, sizeInWords } from '../../document/limits.js';
import { decodeUtf8 } from '../../document/utf8.js';
import { InputError } from '../../errors.js';
import type { DiagonalPicture } from '../picture.js';
import { isDocument } from './is-document.js';
import { readDrawnPng } from './picture-drawing.js';
import { readDiagonalPictureDocument } from './picture-json.js';
import { readDiagonalPictureText } from './picture-text.js';

/**
 * Reads the picture wanted of a diagonal pattern, as text or as a document.
 *
 * @param text at most 32 MiB of it
 * @throws InputError with line, column and path
 */
export function readDiagonalPicture(text: string): DiagonalPicture {
  return isDocument(text) ? readDiagonalPictureDocument(text) : readDiagonalPictureText(text);
}

export interface PictureReading {
  readonly picture: DiagonalPicture;
  readonly notices: readonly ChartNotice[];
}

/**
 * Reads the picture wanted of a diagonal pattern from a file: PNG by its first bytes, otherwise a
 * document by its opening brace, or text. A PNG has a pixel for each gap between two strings; see
 * `readDrawnPng`. A picture without a name is named after its file.
 *
 * @param fileName for messages and for the name; nothing is opened
 * @throws InputError naming the file
 */
export function readPictureFile(bytes: Uint8Array, fileName: string): PictureReading {
  try {
    const { picture, notices } = readAny(bytes);
    const name = picture.name === '' ? nameOfFile(fileName) : picture.name;
    return { picture: { ...picture, name }, notices };
  } catch (error) {
    throw error instanceof InputError && fileName !== '' ? error.inFile(fileName) : error;
  }
}

function readAny(bytes: Uint8Array): PictureReading {
  if (bytes[1] === 0x50 && bytes[2] === 0x4e && bytes[3] === 0x47) return readDrawnPng(bytes);
  if (bytes.length > FILE_LIMITS.text) {
    throw new InputError(
      'file-too-large',
      `The file has ${sizeInWords(bytes.length)}.`,
      {},
      `A wanted picture can have at most ${sizeInWords(FILE_LIMITS.text)} as text and ${sizeInWords(FILE_LIMITS.png)} as PNG.`,
    );
  }
  return { picture: readDiagonalPicture(decodeUtf8(bytes)), notices: [] };
}
