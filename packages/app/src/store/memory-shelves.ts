import { asStoreError } from './errors.js';
import type { Backing, Shelf, Shelves } from './shelves.js';

/** Keeps records until the page is closed. */
export class MemoryShelves implements Backing {
  readonly lasting = false;
  private readonly records = new Map<string, unknown>();
  private last: Promise<unknown> = Promise.resolve();

  work<T>(
    _shelves: readonly Shelf[],
    _mode: 'readonly' | 'readwrite',
    task: (shelves: Shelves) => Promise<T>,
  ): Promise<T> {
    const turn = this.last.then(async () => {
      const changes = new Map<string, unknown>();
      const result = await task(this.within(changes));
      for (const [place, value] of changes) {
        if (value === undefined) this.records.delete(place);
        else this.records.set(place, value);
      }
      return result;
    });
    this.last = turn.catch(() => undefined);
    return turn.catch((error: unknown) => {
      throw asStoreError(error);
    });
  }

  close(): void {
    this.records.clear();
  }

  /** The shelves as they are with some changes; an undefined value is one taken away. */
  private within(changes: Map<string, unknown>): Shelves {
    const { records } = this;
    const placeOf = (shelf: Shelf, key: string): string => `${shelf}/${key}`;
    return {
      get: async (shelf, key) => {
        const place = placeOf(shelf, key);
        return changes.has(place) ? changes.get(place) : records.get(place);
      },
      // A copy, as a database makes one: what is changed afterwards is not what was kept.
      put: async (shelf, key, value) => {
        changes.set(placeOf(shelf, key), structuredClone(value));
      },
      delete: async (shelf, key) => {
        changes.set(placeOf(shelf, key), undefined);
      },
      keys: async (shelf) =>
        [...new Set([...records.keys(), ...changes.keys()])]
          .filter((place) => place.startsWith(`${shelf}/`))
          .filter((place) => !changes.has(place) || changes.get(place) !== undefined)
          .map((place) => place.slice(shelf.length + 1))
          .sort(),
    };
  }
}
