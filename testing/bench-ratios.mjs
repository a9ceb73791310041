import { appendFileSync } from 'node:fs';

/**
 * Tells `npm run bench` a ratio to the baseline of the same run, for its table. Run on its own, a
 * bench only prints.
 *
 * @param {string} what what was measured, the same in every run
 * @param {number} ratio how many times the baseline it took
 */
export function noteRatio(what, ratio) {
  const file = process.env.HALFHITCH_BENCH_RATIOS;
  if (file) appendFileSync(file, `${JSON.stringify({ what, ratio })}\n`);
}
