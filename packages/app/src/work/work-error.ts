/** Said to the user as it is. */
export class WorkError extends Error {
  override readonly name = 'WorkError';
}
