import type { Chart, ChartNotice } from '../../chart/chart.js';
import { nameOfFile, readChart } from '../../chart/read.js';
import { linesOf } from '../../chart/text-lines.js';
import { JsonText } from '../../document/json.js';
import { FILE_LIMITS } from '../../document/limits.js';
import { decodeUtf8 } from '../../document/utf8.js';
import { InputError } from '../../errors.js';
import type { DiagonalPattern } from '../pattern.js';
import { isDocument } from './is-document.js';
import { DIAGONAL_FORMAT, readDiagonalDocument } from './pattern-json.js';
import { readDiagonalText } from './pattern-text.js';
import { type PictureReading, readPictureFile } from './picture-file.js';
import { DIAGONAL_PICTURE_FORMAT } from './picture-json.js';

/** What a file holds: a chart of an alpha pattern, or a diagonal pattern. */
export type PatternReading =
  | { readonly kind: 'alpha'; readonly chart: Chart; readonly notices: readonly ChartNotice[] }
  | {
      readonly kind: 'diagonal';
      readonly pattern: DiagonalPattern;
      readonly notices: readonly ChartNotice[];
    };

/** The same, or a picture that is wanted of a diagonal pattern. */
export type PatternOrPicture = PatternReading | ({ readonly kind: 'picture' } & PictureReading);

const DIAGONAL_LINE = /^\s*(?<noun>pattern|picture)(?:\s|[=:]|$)/iu;

/**
 * Reads a pattern of either sort from a file of any of the formats. A text says that it is diagonal
 * by the line `pattern diagonal` of its legend, a document by its format; anything else is a chart.
 * A pattern without a name is named after its file.
 *
 * @param fileName for messages and for the name; nothing is opened
 * @throws InputError naming the file
 */
export function readPattern(bytes: Uint8Array, fileName: string): PatternReading {
  return namingFile(fileName, () => {
    const said = diagonalText(bytes);
    if (said?.noun !== 'picture') return readSaid(said, bytes, fileName);
    throw new InputError(
      'picture-not-pattern',
      'This is a picture wanted of a diagonal pattern: it says what is to be seen, not how it is knotted.',
      {},
      'Let it be solved first, and give the pattern found.',
    );
  });
}

/**
 * Reads a pattern as `readPattern` does, or the picture wanted of one where a text or a document says
 * that it is that. A PNG says nothing, and is read as a chart.
 *
 * @param fileName for messages and for the name; nothing is opened
 * @throws InputError naming the file
 */
export function readPatternOrPicture(bytes: Uint8Array, fileName: string): PatternOrPicture {
  return namingFile(fileName, () => {
    const said = diagonalText(bytes);
    if (said?.noun !== 'picture') return readSaid(said, bytes, fileName);
    return { kind: 'picture', ...readPictureFile(bytes, fileName) };
  });
}

function readSaid(
  said: DiagonalText | undefined,
  bytes: Uint8Array,
  fileName: string,
): PatternReading {
  if (said === undefined) return { kind: 'alpha', ...readChart(bytes, fileName) };
  const { text } = said;
  const pattern = isDocument(text) ? readDiagonalDocument(text) : readDiagonalText(text);
  const name = pattern.name === '' ? nameOfFile(fileName) : pattern.name;
  return { kind: 'diagonal', pattern: { ...pattern, name }, notices: [] };
}

function namingFile<T>(fileName: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    const named = !(error instanceof InputError) || fileName === '' || error.place.file;
    throw named ? error : error.inFile(fileName);
  }
}

interface DiagonalText {
  readonly noun: 'pattern' | 'picture';
  readonly text: string;
}

/** The text of a file that says it is of a diagonal pattern; undefined when it may be a chart. */
function diagonalText(bytes: Uint8Array): DiagonalText | undefined {
  if (bytes.length === 0 || bytes.length > FILE_LIMITS.text || bytes[0] === 0x89) return undefined;
  let text: string;
  try {
    text = decodeUtf8(bytes);
  } catch {
    // The reader of charts says what the file is.
    return undefined;
  }
  const noun = isDocument(text) ? formatNoun(text) : legendNoun(text);
  return noun === undefined ? undefined : { noun, text };
}

function formatNoun(text: string): 'pattern' | 'picture' | undefined {
  if (!text.includes(DIAGONAL_FORMAT)) return undefined;
  const json = new JsonText(text);
  const at = json.outline().get('format');
  if (at === undefined) return undefined;
  const format = json.property('format', at, () => json.glimpse());
  if (format === JSON.stringify(DIAGONAL_FORMAT)) return 'pattern';
  return format === JSON.stringify(DIAGONAL_PICTURE_FORMAT) ? 'picture' : undefined;
}

/** What the first block of a text says it is for. */
function legendNoun(text: string): 'pattern' | 'picture' | undefined {
  let begun = false;
  for (const line of linesOf(text)) {
    if (line.text === '') {
      if (begun) return undefined;
      continue;
    }
    begun = true;
    const noun = DIAGONAL_LINE.exec(line.text)?.groups?.['noun']?.toLowerCase();
    if (noun === 'pattern' || noun === 'picture') return noun;
  }
  return undefined;
}
