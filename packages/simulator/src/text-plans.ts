/** What plans are made with from text: loaded only by pages that do. */
export {
  planAlpha,
  readDiagonalDocument,
  readDiagonalText,
  readTextChart,
} from '@halfhitch/core';
