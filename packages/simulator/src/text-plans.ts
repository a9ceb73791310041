/** What plans are made with from text: loaded only by pages that do. */
export { planAlpha, readTextChart } from '@halfhitch/core';
