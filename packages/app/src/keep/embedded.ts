import { InputError } from '@halfhitch/core';

/** The id of the element that holds the chart in our own SVG pictures and web pages. */
export const EMBEDDED_ID = 'halfhitch-pattern';

/** It stands near the beginning, after a title of at most some hundred letters. */
const LOOKED_THROUGH = 16 * 1024;

/**
 * A document as JSON of ASCII letters without those that mean something in markup: it can stand in
 * any SVG or HTML as it is, and nothing in it can be taken for a tag, an entity or the end of one.
 */
export function jsonForMarkup(json: string): string {
  return json.replace(
    // biome-ignore lint/suspicious/noControlCharactersInRegex: line ends and ASCII are what stays
    /[<>&\u2028\u2029\u007f-\uffff]|(?![\n])[\u0000-\u001f]/g,
    (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/** Whether a file is an SVG picture or a web page of ours that holds its chart. */
export function holdsChart(bytes: Uint8Array): boolean {
  const head = new TextDecoder().decode(bytes.subarray(0, LOOKED_THROUGH));
  return /^\s*<(\?xml|!doctype html|svg|html)/i.test(head) && head.includes(ELEMENT);
}

const ELEMENT = `id="${EMBEDDED_ID}"`;

/**
 * The chart's document from a picture or page of ours. Nothing is read as markup: it is cut out
 * between two marks, and all of it is then checked as any other document.
 *
 * @throws InputError
 */
export function embeddedDocument(text: string): string {
  const element = text.indexOf(ELEMENT);
  const start = text.indexOf('>', element) + 1;
  const end = text.indexOf('<', start);
  if (element < 0 || start === 0 || end < 0) {
    throw new InputError(
      'no-chart-inside',
      'The file should hold a chart, but it ends before that.',
      {},
      'Save it again from where it came from, or use the chart document or project file.',
    );
  }
  return text.slice(start, end);
}
