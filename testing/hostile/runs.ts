/**
 * How many runs a fuzz test makes: few enough for every test run, and FUZZ times as many when asked
 * for (`FUZZ=100 npm test -- unit packages/core/test/hostile`).
 */
export function fuzzRuns(usual: number): { numRuns: number } {
  const asked = process.env['FUZZ'];
  if (asked === undefined || asked === '') return { numRuns: usual };
  const times = Number(asked);
  if (!(times > 0)) throw new Error(`FUZZ must be a number above 0, not "${asked}".`);
  return { numRuns: Math.max(1, Math.round(usual * times)) };
}
