import { FILE_LIMITS, sizeInWords } from '../document/limits.js';
import { decodeUtf8 } from '../document/utf8.js';
import { InputError } from '../errors.js';
import { CHART_LIMITS, type ChartReading } from './chart.js';
import { readChartDocument } from './json.js';
import { readPngChart } from './png.js';
import { foreignFile } from './signatures.js';
import { readTextChart } from './text.js';

// A brace may also be the key of a text chart's first colour, but then the colour follows it.
export const LOOKS_LIKE_JSON = /^\s*[{[](?!\s*[=:]?\s*#)/;

/**
 * Reads a chart from a file of any of the formats: PNG by its first bytes, a chart document by
 * its opening brace, otherwise a text chart. A chart without a name is named after its file.
 *
 * @param fileName for messages and for the name; nothing is opened
 * @throws InputError naming the file
 */
export function readChart(bytes: Uint8Array, fileName: string): ChartReading {
  try {
    const { chart, notices } = readAny(bytes);
    if (chart.name !== '') return { chart, notices };
    return { chart: { ...chart, name: nameOfFile(fileName) }, notices };
  } catch (error) {
    throw error instanceof InputError && fileName !== '' ? error.inFile(fileName) : error;
  }
}

function readAny(bytes: Uint8Array): ChartReading {
  if (bytes.length === 0) {
    throw new InputError('empty', 'The file is empty.', {}, 'Check that it was saved.');
  }
  // The letters alone: a file spoiled by a transfer as text is still meant as a PNG.
  if (bytes[1] === 0x50 && bytes[2] === 0x4e && bytes[3] === 0x47) return readPngChart(bytes);
  const foreign = foreignFile(bytes);
  if (foreign !== undefined) {
    throw new InputError(
      'not-a-chart',
      `This is ${foreign}.`,
      {},
      'Draw the chart with one pixel for each knot and save it as PNG, or write it as a text chart.',
    );
  }
  if (bytes.length > FILE_LIMITS.text) {
    throw new InputError(
      'file-too-large',
      `The file has ${sizeInWords(bytes.length)}.`,
      {},
      `A chart can have at most ${sizeInWords(FILE_LIMITS.text)} as text and ${sizeInWords(FILE_LIMITS.png)} as PNG.`,
    );
  }
  const text = decodeUtf8(bytes);
  return LOOKS_LIKE_JSON.test(text.slice(0, 1000)) ? readChartDocument(text) : readTextChart(text);
}

/** The name that a pattern gets which has none of its own. */
export function nameOfFile(fileName: string): string {
  const base = fileName.split(/[/\\]/).at(-1) ?? '';
  const stem = base.replace(/(.)\.[^.]*$/, '$1').replace(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/gu, '');
  return [...stem.trim()].slice(0, CHART_LIMITS.maxName).join('').trim();
}
