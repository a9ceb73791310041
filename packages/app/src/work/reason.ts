/** What an error says, whatever was thrown. */
export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** Whether the browser had too little memory; engines say so in their own words. */
export function isOutOfMemory(error: unknown): boolean {
  return error instanceof RangeError && /alloc|memory|array|length/i.test(error.message);
}
