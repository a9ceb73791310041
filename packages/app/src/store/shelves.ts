/**
 * Where each kind of record lies:
 * - `projects`: the head of a project: everything but its cells;
 * - `charts`: its cells, apart, so that a list of projects need not read them;
 * - `thumbnails`: its small picture;
 * - `progress`: how far it is knotted;
 * - `kept`: small settings, by name.
 */
export const SHELVES = ['projects', 'charts', 'thumbnails', 'progress', 'kept'] as const;

/** Those that hold something of a project, by its id. */
export const OF_A_PROJECT = ['projects', 'charts', 'thumbnails', 'progress'] as const;

export type Shelf = (typeof SHELVES)[number];

/** What can be done within one piece of work. */
export interface Shelves {
  get(shelf: Shelf, key: string): Promise<unknown>;
  put(shelf: Shelf, key: string, value: unknown): Promise<void>;
  delete(shelf: Shelf, key: string): Promise<void>;
  keys(shelf: Shelf): Promise<string[]>;
}

/** A place for records: the browser's database, or the page's memory where there is none. */
export interface Backing {
  /** Whether what is kept is there when the page is opened again. */
  readonly lasting: boolean;
  /**
   * Does some work as a whole: once the promise is fulfilled all of it is kept, and when it is
   * rejected nothing is. Works that share a shelf come one after the other, other windows' included.
   * Within the work nothing may be waited for but the shelves.
   *
   * @throws StoreError
   */
  work<T>(
    shelves: readonly Shelf[],
    mode: 'readonly' | 'readwrite',
    task: (shelves: Shelves) => Promise<T>,
  ): Promise<T>;
  close(): void;
}
