import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { deleteDB, openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type AlphaProject, nameOf } from '../../src/project/project.js';
import { DATABASE, DatabaseShelves } from '../../src/store/database-shelves.js';
import { StoreError } from '../../src/store/errors.js';
import { STORE_LIMITS } from '../../src/store/limits.js';
import type { StoreChange } from '../../src/store/listing.js';
import { MemoryShelves } from '../../src/store/memory-shelves.js';
import { cellsOf, headOf } from '../../src/store/project-record.js';
import type { Backing, Shelf } from '../../src/store/shelves.js';
import { Store } from '../../src/store/store.js';
import { anyProject, anything, chart, progress, project } from './samples.js';

const backings: Record<string, () => Promise<Backing>> = {
  'the database': () => DatabaseShelves.open(),
  'the memory of the page': async () => new MemoryShelves(),
};

const codeOf = (promise: Promise<unknown>): Promise<string> =>
  promise.then(
    () => 'nothing',
    (error: unknown) => (error instanceof StoreError ? error.code : `not told: ${error}`),
  );

let open: { close(): void }[] = [];
afterEach(async () => {
  for (const one of open) one.close();
  open = [];
  await deleteDB(DATABASE);
});

/** A project that is alpha work. */
async function loaded(store: Store, id: string): Promise<AlphaProject> {
  const there = await store.load(id);
  if (there.kind !== 'alpha') throw new Error('It is a diagonal pattern.');
  return there;
}

const put = (backing: Backing, shelf: Shelf, key: string, value: unknown): Promise<void> =>
  backing.work([shelf], 'readwrite', (shelves) => shelves.put(shelf, key, value));

describe.each(Object.entries(backings))('a store in %s', (_, openBacking) => {
  let backing: Backing;
  let store: Store;
  beforeEach(async () => {
    backing = await openBacking();
    store = new Store(backing);
    open.push(store);
  });

  it('gives back every project as it was saved', async () => {
    await fc.assert(
      fc.asyncProperty(anyProject, async (one) => {
        await store.save(one);
        expect(await store.load(one.id)).toEqual(one);
        const { projects } = await store.list();
        expect(projects.find(({ id }) => id === one.id)).toMatchObject({
          kind: one.kind,
          name: nameOf(one),
          ...(one.kind === 'alpha'
            ? { rows: one.chart.rows, across: one.chart.columns }
            : { rows: one.pattern.rows, across: one.pattern.strings }),
          changed: one.changed,
          removed: null,
          done: 0,
        });
        await store.erase(one.id);
      }),
      { numRuns: 40 },
    );
  });

  it('keeps what was saved, not what became of it in the page', async () => {
    const cells = chart.cells.slice();
    await store.save(project({ chart: { ...chart, cells } }));
    cells.fill(1);
    expect((await loaded(store, 'a1')).chart.cells).toEqual(chart.cells);
  });

  it('lists the project changed last first', async () => {
    await store.save(project({ id: 'a', changed: 10 }));
    await store.save(project({ id: 'b', changed: 30 }));
    await store.save(project({ id: 'c', changed: 20 }));
    expect((await store.list()).projects.map(({ id }) => id)).toEqual(['b', 'c', 'a']);
  });

  it('brings back what was removed, until it is erased', async () => {
    await store.save(project());
    await store.saveProgress(progress());
    await store.remove('a1');
    const { projects, removed } = await store.list();
    expect(projects).toEqual([]);
    expect(removed.map(({ id, done }) => [id, done])).toEqual([['a1', 5]]);
    await store.restore('a1');
    expect((await store.list()).projects).toHaveLength(1);
    expect((await loaded(store, 'a1')).chart).toEqual(chart);
    await store.erase('a1');
    expect(await store.list()).toEqual({ projects: [], removed: [], damaged: [] });
    expect(await store.progress('a1')).toBeNull();
    expect(await codeOf(store.load('a1'))).toBe('missing');
    expect(await codeOf(store.restore('a1'))).toBe('missing');
  });

  it('erases after a month what was removed, and nothing else', async () => {
    await store.save(project({ id: 'stays' }));
    await store.save(project({ id: 'goes' }));
    await store.remove('goes');
    const days = (number: number): number => Date.now() + number * 24 * 60 * 60 * 1000;
    await store.tidy(days(STORE_LIMITS.removedDays - 1));
    expect((await store.list()).removed).toHaveLength(1);
    await store.tidy(days(STORE_LIMITS.removedDays + 1));
    expect((await store.list()).removed).toHaveLength(0);
    expect((await store.list()).projects).toHaveLength(1);
  });

  it('keeps progress with its revision, and refuses what is older', async () => {
    const first = await store.saveProgress(progress());
    expect(first.revision).toBe(1);
    expect(await store.progress('a1')).toEqual(first);
    const second = await store.saveProgress({ ...first, done: 6 });
    expect(await codeOf(store.saveProgress({ ...first, done: 2 }))).toBe('newer');
    expect(await store.progress('a1')).toEqual(second);
  });

  it('remembers no more times than it says', async () => {
    const times = Array.from({ length: STORE_LIMITS.times + 50 }, (_, i) => ({
      seconds: i,
      knots: 1 + (i % 5),
      changes: i % 2,
    }));
    await store.saveProgress(progress({ times }));
    expect((await store.progress('a1'))?.times).toEqual(times.slice(-STORE_LIMITS.times));
  });

  it('reads whatever lies there without ever failing as a whole', async () => {
    await store.save(project({ id: 'sound' }));
    await store.saveProgress(progress({ id: 'sound' }));
    await fc.assert(
      fc.asyncProperty(anything, anything, anything, async (head, cells, rest) => {
        // Some values can't be kept by a database at all.
        const kept = await Promise.all([
          put(backing, 'projects', 'broken', head),
          put(backing, 'charts', 'broken', cells),
          put(backing, 'progress', 'broken', rest),
          put(backing, 'thumbnails', 'sound', rest),
        ]).catch(() => null);
        const listing = await store.list();
        expect(listing.projects.map(({ id }) => id)).toEqual(['sound']);
        expect(listing.projects[0]?.done).toBe(5);
        expect(listing.projects[0]?.thumbnail).toBeNull();
        if (kept !== null && head !== undefined) {
          expect(listing.damaged.map(({ id }) => id)).toEqual(['broken']);
          expect(await codeOf(store.load('broken'))).toBe('damaged');
          JSON.parse(await (await store.exportRaw('broken')).text());
        }
        if (kept !== null && rest !== undefined) {
          expect(await codeOf(store.progress('broken'))).toBe('damaged');
        }
        await store.erase('broken');
      }),
      { numRuns: 60 },
    );
    expect((await loaded(store, 'sound')).chart).toEqual(chart);
  });

  it.each<[string, Shelf, (record: Record<string, unknown>) => void, RegExp]>([
    ['rows', 'projects', (head) => Object.assign(head, { rows: 4 }), /12 knots in place of 16/],
    ['no rows', 'projects', (head) => Object.assign(head, { rows: 0 }), /number of rows/],
    ['colour', 'projects', (head) => Object.assign(head, { colours: [] }), /list of colours/],
    ['edge', 'projects', (head) => Object.assign(head, { choice: { edge: 'x' } }), /edge/],
    ['later', 'projects', (head) => Object.assign(head, { format: 2 }), /later version/],
    ['cells', 'charts', (cells) => Object.assign(cells, { cells: [0, 1] }), /drawing is missing/],
    [
      'legend',
      'charts',
      (cells) => Object.assign(cells, { cells: new Uint8Array(12).fill(2) }),
      /not in its legend/,
    ],
  ])('says what is damaged: %s', async (_name, shelf, change, message) => {
    await store.save(project());
    await backing.work([shelf], 'readwrite', async (shelves) => {
      const record = (await shelves.get(shelf, 'a1')) as Record<string, unknown>;
      change(record);
      await shelves.put(shelf, 'a1', record);
    });
    await expect(store.load('a1')).rejects.toThrow(message);
    await expect(store.load('a1')).rejects.toThrow(/Export what is left of it, or remove it/);
  });

  it('lists a project whose drawing is gone as damaged, by its name', async () => {
    await store.save(project());
    await backing.work(['charts'], 'readwrite', (shelves) => shelves.delete('charts', 'a1'));
    expect((await store.list()).damaged).toEqual([
      { id: 'a1', name: 'Heron', what: 'Its drawing is missing.' },
    ]);
  });

  it('takes a thumbnail of what is there, and none that is too large', async () => {
    await store.save(project());
    await store.saveThumbnail('a1', new Blob(['ab'], { type: 'image/png' }), 2_000);
    await store.saveThumbnail('none', new Blob(['ab'], { type: 'image/png' }), 2_000);
    const [summary] = (await store.list()).projects;
    expect(await summary?.thumbnail?.image.text()).toBe('ab');
    expect(summary?.thumbnail?.of).toBe(2_000);
    const large = new Blob([new Uint8Array(STORE_LIMITS.thumbnail + 1)], { type: 'image/png' });
    await store.saveThumbnail('a1', large, 3_000);
    expect((await store.list()).projects[0]?.thumbnail?.of).toBe(2_000);
  });

  it('keeps no more projects than it says, and those it has go on being kept', async () => {
    await backing.work(['projects'], 'readwrite', async (shelves) => {
      for (let i = 0; i < STORE_LIMITS.projects - 1; i++) await shelves.put('projects', `p${i}`, i);
    });
    await store.save(project({ id: 'last' }));
    expect(await codeOf(store.save(project({ id: 'more' })))).toBe('too-many');
    await store.save(project({ id: 'last', changed: 9 }));
    await store.erase('p0');
    await store.save(project({ id: 'more' }));
  });

  it('keeps settings, and the project that was open last', async () => {
    expect(await store.lastOpen()).toBeNull();
    await store.setLastOpen('a1');
    expect(await store.lastOpen()).toBe('a1');
    expect(await store.setting('tie')).toBeUndefined();
    await store.keepSetting('tie', { voice: true });
    expect(await store.setting('tie')).toEqual({ voice: true });
    await store.keepSetting('last open', { not: 'an id' });
    expect(await store.lastOpen()).toBeNull();
  });
});

describe('two windows', () => {
  let one: Store;
  let other: Store;
  beforeEach(async () => {
    one = new Store(await DatabaseShelves.open());
    other = new Store(await DatabaseShelves.open());
    open.push(one, other);
  });

  it('never put something older over what the other has kept', async () => {
    await one.save(project());
    await other.load('a1');
    const mine = project({ chart: { ...chart, name: 'Otter' } });
    await one.save(mine);
    expect(await codeOf(other.save(project({ chart: { ...chart, name: 'Late' } })))).toBe('newer');
    expect(nameOf(await one.load('a1'))).toBe('Otter');
    await other.load('a1');
    await other.save(project({ chart: { ...chart, name: 'Seen' } }));
    expect(nameOf(await one.load('a1'))).toBe('Seen');
  });

  it('can both keep what they have: the other window’s becomes a copy', async () => {
    await one.save(project());
    await one.saveProgress(progress());
    const copy = await other.saveBeside(project({ chart: { ...chart, name: 'Late' } }));
    expect(nameOf(await one.load('a1'))).toBe('Late');
    expect(nameOf(await one.load(copy))).toBe('Heron (other window)');
    expect((await one.progress(copy))?.done).toBe(5);
    expect((await one.progress('a1'))?.done).toBe(5);
  });

  it('that count knots in turn lose none, whatever the order of their turns', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.boolean(), { maxLength: 30 }), async (turns) => {
        await one.erase('a1');
        await one.saveProgress(progress({ done: 0 }));
        const seen = new Map([
          [one, (await one.progress('a1')) as ReturnType<typeof progress>],
          [other, (await other.progress('a1')) as ReturnType<typeof progress>],
        ]);
        let counted = 0;
        for (const turn of turns) {
          const store = turn ? one : other;
          const base = seen.get(store) as ReturnType<typeof progress>;
          try {
            seen.set(store, await store.saveProgress({ ...base, done: base.done + 1 }));
            counted++;
          } catch {
            // Told of the newer count, a window shows it and does not count by itself.
            seen.set(store, (await store.progress('a1')) as ReturnType<typeof progress>);
          }
          expect((await one.progress('a1'))?.done).toBe(counted);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('that count at the very same time do not both count', async () => {
    const base = await one.saveProgress(progress());
    const codes = await Promise.all([
      codeOf(one.saveProgress({ ...base, done: 6 })),
      codeOf(other.saveProgress({ ...base, done: 6 })),
    ]);
    expect(codes.sort()).toEqual(['newer', 'nothing']);
  });

  it('tell each other', async () => {
    const heard = new Promise<StoreChange>((resolve) => {
      other.addEventListener('change', (event) =>
        resolve((event as CustomEvent<StoreChange>).detail),
      );
    });
    await one.save(project());
    expect(await heard).toEqual({ id: 'a1', what: 'project', elsewhere: true });
    expect(await other.isBehind('a1')).toBe(false);
    await other.load('a1');
    await one.save(project({ changed: 5 }));
    expect(await other.isBehind('a1')).toBe(true);
  });
});

describe('a database that gives way', () => {
  it('lets go of a newer kind of database, and says so instead of keeping', async () => {
    const shelves = await DatabaseShelves.open();
    const store = new Store(shelves);
    open.push(store);
    let told = false;
    shelves.overtaken = () => {
      told = true;
    };
    const newer = await openDB(DATABASE, 2);
    expect(told).toBe(true);
    expect(await codeOf(store.save(project()))).toBe('closed');
    expect(await codeOf(store.list())).toBe('closed');
    newer.close();
    // A page of this version that is opened now.
    await expect(DatabaseShelves.open()).rejects.toThrow(/later version/);
  });

  it('says that the storage is full, and keeps what was there', async () => {
    const store = new Store(await DatabaseShelves.open());
    open.push(store);
    await store.save(project());
    const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('', 'QuotaExceededError');
    });
    const message = store.save(project({ changed: 9 })).catch((error: StoreError) => error.message);
    expect(await message).toMatch(/storage .* is full.*Export your work to a file/);
    full.mockRestore();
    expect((await store.load('a1')).changed).toBe(2_000);
    await store.save(project({ changed: 9 }));
  });

  it('lists all the rest when the browser fails over one record', async () => {
    const memory = new MemoryShelves();
    const failing: Backing = {
      lasting: false,
      close: () => memory.close(),
      work: (shelves, mode, task) =>
        memory.work(shelves, mode, (within) =>
          task({
            ...within,
            get: (shelf, key) => {
              if (key === 'bad') throw new DOMException('', 'DataError');
              return within.get(shelf, key);
            },
          }),
        ),
    };
    const store = new Store(failing);
    open.push(store);
    for (const id of ['a', 'bad', 'c']) await put(memory, 'projects', id, headOf(project(), 1));
    for (const id of ['a', 'bad', 'c']) await put(memory, 'charts', id, cellsOf(project()));
    const { projects, damaged } = await store.list();
    expect(projects.map(({ id }) => id)).toEqual(['a', 'c']);
    expect(damaged).toEqual([{ id: 'bad', name: '', what: 'The browser cannot read it.' }]);
    expect(JSON.parse(await (await store.exportRaw('bad')).text())).toMatchObject({ id: 'bad' });
    await store.erase('bad');
    expect((await store.list()).damaged).toEqual([]);
  });

  it('keeps nothing of a work that fails half-way', async () => {
    const shelves = await DatabaseShelves.open();
    open.push(shelves);
    await put(shelves, 'kept', 'a', 1);
    const failing = shelves.work(['kept'], 'readwrite', async (within) => {
      await within.put('kept', 'a', 2);
      throw new StoreError('newer', 'No.');
    });
    expect(await codeOf(failing)).toBe('newer');
    expect(await shelves.work(['kept'], 'readonly', (within) => within.get('kept', 'a'))).toBe(1);
  });
});
