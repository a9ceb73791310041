export type StoreErrorCode =
  /** The device's storage is full. */
  | 'full'
  /** More projects than are kept. */
  | 'too-many'
  /** Another window has kept something newer than what this one had seen. */
  | 'newer'
  | 'damaged'
  | 'missing'
  /** The connection to the storage is gone. */
  | 'closed'
  | 'failed';

/** Work that could not be kept or fetched; the message says so to the maker, and what to do. */
export class StoreError extends Error {
  override readonly name = 'StoreError';

  constructor(
    readonly code: StoreErrorCode,
    message: string,
  ) {
    super(message);
  }
}

/** Whatever a database fails with, as something that can be said. */
export function asStoreError(error: unknown): StoreError {
  if (error instanceof StoreError) return error;
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') {
    return new StoreError(
      'full',
      'The storage that this browser gives is full, so the last change is not kept. Export your work to a file, and remove projects that you no longer need.',
    );
  }
  if (name === 'InvalidStateError' || name === 'AbortError') {
    return new StoreError(
      'closed',
      'The browser has closed its storage, so the last change is not kept. Export your work to a file, then load the page anew.',
    );
  }
  return new StoreError(
    'failed',
    `The browser could not keep or fetch this${name === '' ? '' : ` (${name})`}. Export your work to a file, then load the page anew.`,
  );
}
