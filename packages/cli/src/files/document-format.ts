import { InputError, JsonText } from '@halfhitch/core';

/** The format that a JSON document names, such as `halfhitch-plan`; null when it names none. */
export function documentFormat(text: string): string | null {
  if (!/^\s*\{/.test(text)) return null;
  try {
    const json = new JsonText(text);
    const at = json.outline().get('format');
    if (at === undefined) return null;
    const format: unknown = JSON.parse(json.property('format', at, () => json.glimpse()));
    return typeof format === 'string' ? format : null;
  } catch (error) {
    // The reader of the document says what is wrong with it.
    if (error instanceof InputError || error instanceof SyntaxError) return null;
    throw error;
  }
}

/** Whether a text or a document says that it is of a diagonal pattern, in whatever way. */
export function saysDiagonal(text: string): boolean {
  const format = documentFormat(text);
  if (format !== null) return format.startsWith('halfhitch-diagonal');
  return /^[ \t]*pattern[\s=:]+diagonal\b/im.test(text.slice(0, 100_000));
}
