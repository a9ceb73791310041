// Of this window alone, where the database is of all: two windows loaded anew must not both come
// back with the project of one of them.
const OPEN = 'halfhitch.open';

/** The project that was open in this window before it was loaded anew. */
export function hereOpen(): string | null {
  try {
    return sessionStorage.getItem(OPEN);
  } catch {
    return null;
  }
}

export function setHereOpen(id: string | null): void {
  try {
    if (id === null) sessionStorage.removeItem(OPEN);
    else sessionStorage.setItem(OPEN, id);
  } catch {
    // Then the project that was open last in any window is opened.
  }
}
