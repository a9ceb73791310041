import { DatabaseShelves, NoDatabase } from './database-shelves.js';
import { MemoryShelves } from './memory-shelves.js';
import { Store } from './store.js';

/**
 * Opens the work kept on this device. It never fails: where the browser keeps nothing, work is
 * held in the page's memory, and the store's notice says so and why.
 */
export async function openStore(): Promise<Store> {
  let shelves: DatabaseShelves;
  try {
    shelves = await DatabaseShelves.open();
  } catch (error) {
    const why = error instanceof NoDatabase ? error.message : 'The storage can’t be used.';
    return new Store(
      new MemoryShelves(),
      `${why} Nothing is kept after this page is closed: export your work to a file before that.`,
    );
  }
  const store = new Store(shelves);
  shelves.overtaken = () => {
    store.notice =
      'A newer version of Halfhitch has been opened in another window, so this window no longer keeps work. Export what has changed since, and load this page anew.';
  };
  // Before anything is opened: it may be what is opened.
  await store.takeUpLeft().catch(() => {});
  // What was removed long ago takes up room; whether it goes now or next time does not matter.
  store.tidy().catch(() => {});
  return store;
}

let opened: Promise<Store> | null = null;

/** The store of this page, opened when it is first asked for. */
export function theStore(): Promise<Store> {
  opened ??= openStore();
  return opened;
}
