/** Where in an input something is wrong. Rows, columns and lines are counted from 1. */
export interface Place {
  readonly file?: string;
  readonly line?: number;
  readonly row?: number;
  readonly column?: number;
  /** Path inside a document, such as `rows[3].steps[2]`. */
  readonly path?: string;
}

export function placeInWords(place: Place): string {
  const parts: string[] = [];
  if (place.file !== undefined) parts.push(place.file);
  if (place.line !== undefined) parts.push(`line ${place.line}`);
  if (place.row !== undefined) parts.push(`row ${place.row}`);
  if (place.column !== undefined) parts.push(`column ${place.column}`);
  if (place.path !== undefined) parts.push(place.path);
  return parts.join(', ');
}

/**
 * Input that cannot be used: what is wrong, where, and what to do about it.
 * The message holds all three, so that printing it alone is enough.
 */
export class InputError extends Error {
  override readonly name = 'InputError';
  readonly code: string;
  readonly what: string;
  readonly place: Place;
  readonly remedy: string;

  constructor(code: string, what: string, place: Place, remedy: string) {
    const where = placeInWords(place);
    super(`${where === '' ? '' : `${where}: `}${what} ${remedy}`);
    this.code = code;
    this.what = what;
    this.place = place;
    this.remedy = remedy;
  }

  /** The same error, with the name of the file it was found in. */
  inFile(file: string): InputError {
    return new InputError(this.code, this.what, { ...this.place, file }, this.remedy);
  }
}
