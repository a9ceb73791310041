import { type IDBPDatabase, openDB } from 'idb';
import { asStoreError, StoreError } from './errors.js';
import { type Backing, SHELVES, type Shelf, type Shelves } from './shelves.js';

export const DATABASE = 'halfhitch';
const VERSION = 1;

/** Longer than any browser takes over a sound database; some never answer over a broken one. */
const PATIENCE = 10_000;

/** The storage cannot be used, for a reason that is said to the maker. */
export class NoDatabase extends Error {
  override readonly name = 'NoDatabase';
}

/** Keeps records in the browser's database. */
export class DatabaseShelves implements Backing {
  readonly lasting = true;
  /** Called when another window needs a newer kind of database, and this one has let go. */
  overtaken: () => void = () => {};
  private isOvertaken = false;
  private closed = false;

  private constructor(private database: IDBPDatabase | null) {}

  /** @throws NoDatabase */
  static async open(): Promise<DatabaseShelves> {
    const shelves = new DatabaseShelves(null);
    shelves.database = await shelves.connect();
    return shelves;
  }

  private connect(): Promise<IDBPDatabase> {
    return new Promise((resolve, reject) => {
      if (typeof indexedDB === 'undefined') {
        reject(new NoDatabase('This browser has no storage for work, or it is switched off.'));
        return;
      }
      let waiting = true;
      const giveUp = (reason: string): void => {
        waiting = false;
        clearTimeout(timer);
        reject(new NoDatabase(reason));
      };
      const timer = setTimeout(
        () => giveUp('The storage of this browser does not answer.'),
        PATIENCE,
      );
      openDB(DATABASE, VERSION, {
        upgrade: (database) => {
          for (const shelf of SHELVES) {
            if (!database.objectStoreNames.contains(shelf)) database.createObjectStore(shelf);
          }
        },
        blocked: () =>
          giveUp('Another window of Halfhitch, of an earlier version, holds the storage.'),
        blocking: () => {
          // Closed at once, so that the newer window need not wait.
          this.isOvertaken = true;
          this.database?.close();
          this.database = null;
          this.overtaken();
        },
        terminated: () => {
          this.database = null;
        },
      }).then(
        (database) => {
          if (!waiting) {
            database.close();
            return;
          }
          clearTimeout(timer);
          resolve(database);
        },
        (error: unknown) => {
          const name = error instanceof DOMException ? error.name : '';
          giveUp(
            name === 'VersionError'
              ? 'The work on this device was kept by a later version of Halfhitch. Load the page anew to get that version.'
              : name === 'QuotaExceededError'
                ? 'The storage of this device is full.'
                : 'This browser does not let the page keep work, as in some private windows.',
          );
        },
      );
    });
  }

  async work<T>(
    shelves: readonly Shelf[],
    mode: 'readonly' | 'readwrite',
    task: (shelves: Shelves) => Promise<T>,
  ): Promise<T> {
    if (this.isOvertaken || this.closed) throw closedError();
    try {
      // The browser may have ended the connection, as when the device sleeps: it is made again.
      this.database ??= await this.connect();
      return await inTransaction(this.database, shelves, mode, task);
    } catch (error) {
      if (error instanceof NoDatabase) throw new StoreError('failed', error.message);
      throw asStoreError(error);
    }
  }

  close(): void {
    this.closed = true;
    this.database?.close();
    this.database = null;
  }
}

function closedError(): StoreError {
  return new StoreError(
    'closed',
    'A newer version of Halfhitch has been opened in another window, so this one no longer keeps work. Load this page anew.',
  );
}

async function inTransaction<T>(
  database: IDBPDatabase,
  shelves: readonly Shelf[],
  mode: 'readonly' | 'readwrite',
  task: (shelves: Shelves) => Promise<T>,
): Promise<T> {
  // Strict: what is said to be kept has reached the disk, whatever becomes of the browser.
  const transaction = database.transaction([...shelves], mode, { durability: 'strict' });
  const done = transaction.done;
  // Waited for below; an error before that must not count as one that nobody handles.
  done.catch(() => {});
  const shelfOf = (shelf: Shelf) => transaction.objectStore(shelf);
  try {
    const result = await task({
      get: (shelf, key) => shelfOf(shelf).get(key),
      put: async (shelf, key, value) => {
        await shelfOf(shelf).put?.(value, key);
      },
      delete: async (shelf, key) => {
        await shelfOf(shelf).delete?.(key);
      },
      keys: async (shelf) =>
        (await shelfOf(shelf).getAllKeys()).filter((key) => typeof key === 'string'),
    });
    await done;
    return result;
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // It has ended by itself.
    }
    // Running out of room shows in the transaction, while the requests only say that it ended.
    if (transaction.error !== null && !(error instanceof StoreError)) throw transaction.error;
    throw error;
  }
}
