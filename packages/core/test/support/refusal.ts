import { InputError } from '../../src/index.js';

/** The error that input is refused with; throws when it is not refused, or in another way. */
export function refusal(read: () => unknown): InputError {
  try {
    read();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('The input was not refused.');
}

/** Reads input that may be refused; anything but an InputError is passed on. */
export function readOrRefusal<T>(read: () => T): T | InputError {
  try {
    return read();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
}
