import { figures } from '../view/figures.js';
import { WorkError } from '../work/work-error.js';
import { MOST_KNOTS } from './desk.js';

export function tooLargeInWords(): string {
  return `Mistakes are looked into in pieces of up to ${figures(MOST_KNOTS)} knots. Open a part of the chart, such as one repeat, for that.`;
}

export function problemInWords(error: unknown): string {
  return error instanceof WorkError ? error.message : 'Something went wrong. Try again.';
}
