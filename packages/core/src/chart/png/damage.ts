import { InputError, type Place } from '../../errors.js';

/** A PNG that breaks its standard, with what to do about it. */
export function damaged(what: string, place: Place = {}): InputError {
  return new InputError(
    'png-damaged',
    what,
    place,
    'Copy or download the file again, or open it in a picture editor and save it anew as PNG.',
  );
}
