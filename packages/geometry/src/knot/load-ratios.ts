/**
 * Loads what knots of strings of unequal thickness need, for those who import a part of the package;
 * the whole package has it already.
 */
export async function loadEveryRatio(): Promise<void> {
  await import('./tightened/every-ratio.js');
}
