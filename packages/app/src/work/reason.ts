/** What an error says, whatever was thrown. */
export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** Whether the browser had too little memory; engines say so in their own words. */
export function isOutOfMemory(error: unknown): boolean {
  return error instanceof RangeError && /alloc|memory|array|length/i.test(error.message);
}

/** Does what may not be possible. @returns why it is not; empty when it is done */
export function attempted(act: () => void): string {
  try {
    act();
    return '';
  } catch (error) {
    return reasonOf(error);
  }
}
