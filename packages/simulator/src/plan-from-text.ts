import type { DiagonalPattern, Plan, PlanOptions } from '@halfhitch/core';

/**
 * Plans a chart written as text, for pages that have no other means to: one character for each
 * knot, and a legend of the colours. What it takes is loaded when it is first called.
 *
 * @throws InputError when the text is no chart
 */
export async function planFromText(text: string, options: PlanOptions = {}): Promise<Plan> {
  const { planAlpha, readTextChart } = await import('./text-plans.js');
  return planAlpha(readTextChart(text).chart, options);
}

/**
 * Reads a diagonal pattern written as text, or as a document, for pages that have no other means
 * to. What it takes is loaded when it is first called.
 *
 * @throws InputError when the text is no diagonal pattern
 */
export async function patternFromText(text: string): Promise<DiagonalPattern> {
  const { readDiagonalDocument, readDiagonalText } = await import('./text-plans.js');
  return /^\s*\{/.test(text) ? readDiagonalDocument(text) : readDiagonalText(text);
}
