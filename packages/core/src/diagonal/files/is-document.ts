import { LOOKS_LIKE_JSON } from '../../chart/read.js';

/** Whether a text is a document, by its opening brace. */
export function isDocument(text: string): boolean {
  return LOOKS_LIKE_JSON.test(text.slice(0, 1000));
}
