import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type AlphaProject, nameOf, type Project, renamed } from '../../src/project/project.js';
import type { Session } from '../../src/project/session.js';
import { asStoreError } from '../../src/store/errors.js';
import { Keeper } from '../../src/store/keep-session.js';
import { MemoryShelves } from '../../src/store/memory-shelves.js';
import type { Backing } from '../../src/store/shelves.js';
import { Store } from '../../src/store/store.js';
import { chart, project } from './samples.js';

/** A session without its worker. */
class Work extends EventTarget {
  project: Project | null = null;
  edits: string[] = [];

  open(opened: Project): void {
    this.project = opened;
    this.dispatchEvent(new Event('open'));
    this.dispatchEvent(new Event('project'));
  }

  replace(project: Project, what: string): void {
    this.edits.push(what);
    this.project = { ...project, changed: Date.now() };
    this.dispatchEvent(new Event('project'));
  }

  rename(name: string): void {
    this.replace(renamed(this.project as Project, name), 'Rename');
  }
}

/** Local storage as a page has it: its places are its own keys. */
function fakeStorage(): Record<string, unknown> {
  return Object.defineProperties(
    {},
    {
      setItem: {
        value(this: Record<string, string>, place: string, text: string) {
          this[place] = text;
        },
      },
      getItem: {
        value(this: Record<string, string>, place: string) {
          return this[place] ?? null;
        },
      },
      removeItem: {
        value(this: Record<string, string>, place: string) {
          delete this[place];
        },
      },
    },
  );
}

let shelves: MemoryShelves;
let full: boolean;
let saves: number;
let store: Store;
let work: Work;
let keeper: Keeper;
let main: EventTarget;
let page: EventTarget & { visibilityState?: string };

function backing(): Backing {
  return {
    lasting: true,
    close: () => {},
    work: (names, mode, task) => {
      if (mode === 'readwrite' && names.includes('charts')) {
        saves++;
        if (full) return Promise.reject(asStoreError(new DOMException('', 'QuotaExceededError')));
      }
      return shelves.work(names, mode, task);
    },
  };
}

beforeEach(() => {
  vi.useFakeTimers();
  page = new EventTarget();
  vi.stubGlobal('document', page);
  main = new EventTarget();
  vi.stubGlobal('addEventListener', main.addEventListener.bind(main));
  vi.stubGlobal('removeEventListener', main.removeEventListener.bind(main));
  vi.stubGlobal('sessionStorage', undefined);
  vi.stubGlobal('BroadcastChannel', undefined);
  vi.stubGlobal('localStorage', fakeStorage());
  shelves = new MemoryShelves();
  full = false;
  saves = 0;
  store = new Store(backing());
  work = new Work();
  keeper = new Keeper(work as unknown as Session, store);
});

afterEach(() => {
  keeper.stop();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const nameKept = async (id = 'a1'): Promise<string | null> =>
  store.peek(id).then(
    (there) => nameOf(there.project),
    () => null,
  );

describe('keeping a session', () => {
  it('keeps what is opened and each change within 300 ms, many at a time', async () => {
    work.open(project());
    await vi.advanceTimersByTimeAsync(300);
    expect(await nameKept()).toBe('Heron');
    for (let i = 0; i < 10; i++) {
      work.rename(`Heron ${i}`);
      await vi.advanceTimersByTimeAsync(10);
    }
    expect(saves).toBeLessThanOrEqual(3);
    await vi.advanceTimersByTimeAsync(300);
    expect(await nameKept()).toBe('Heron 9');
    expect(keeper.waiting).toBe(false);
    expect(keeper.message).toBe('');
  });

  it('keeps at once what waits when the page is hidden', async () => {
    work.open(project());
    await vi.advanceTimersByTimeAsync(300);
    work.rename('Otter');
    page.visibilityState = 'hidden';
    page.dispatchEvent(new Event('visibilitychange'));
    await vi.advanceTimersByTimeAsync(0);
    expect(await nameKept()).toBe('Otter');
  });

  it('hands over what waits when the page is left, and it is there the next time', async () => {
    work.open(project());
    await vi.advanceTimersByTimeAsync(300);
    work.rename('Otter');
    main.dispatchEvent(new Event('pagehide'));
    keeper.stop();
    expect(await nameKept()).toBe('Heron');
    const next = new Store(backing());
    await next.takeUpLeft();
    expect(await nameKept()).toBe('Otter');
    await next.takeUpLeft();
    expect((await next.list()).projects).toHaveLength(1);
  });

  it('goes on from what was on its way when the page was left', async () => {
    work.open(project());
    await vi.advanceTimersByTimeAsync(300);
    work.rename('Otter');
    vi.advanceTimersByTime(300);
    // On its way, and the page hears no more of it.
    vi.advanceTimersByTime(1);
    work.rename('Kittiwake');
    main.dispatchEvent(new Event('pagehide'));
    keeper.stop();
    await vi.advanceTimersByTimeAsync(0);
    expect(await nameKept()).toBe('Otter');
    const next = new Store(backing());
    await next.takeUpLeft();
    expect((await next.list()).projects.map(({ name }) => name)).toEqual(['Kittiwake']);
  });

  it('takes up nothing twice when the page comes back as it was', async () => {
    work.open(project());
    await vi.advanceTimersByTimeAsync(300);
    work.rename('Otter');
    main.dispatchEvent(new Event('pagehide'));
    await vi.advanceTimersByTimeAsync(300);
    work.rename('Kittiwake');
    await vi.advanceTimersByTimeAsync(300);
    const next = new Store(backing());
    await next.takeUpLeft();
    expect((await next.list()).projects.map(({ name }) => name)).toEqual(['Kittiwake']);
  });

  it('keeps on what another window has taken up from it, without a copy', async () => {
    work.open(project());
    await vi.advanceTimersByTimeAsync(300);
    work.rename('Otter');
    main.dispatchEvent(new Event('pagehide'));
    await new Store(backing()).takeUpLeft();
    await vi.advanceTimersByTimeAsync(300);
    work.rename('Kittiwake');
    await vi.advanceTimersByTimeAsync(300);
    expect((await store.list()).projects.map(({ name }) => name)).toEqual(['Kittiwake']);
  });

  it('lets go what was left and can no longer be read, or finds no room to be left', async () => {
    work.open(project());
    await vi.advanceTimersByTimeAsync(300);
    for (const text of ['', 'x', '{}', '{"id":"a1","base":0,"cells":"0","head":{"format":1}}']) {
      localStorage.setItem('halfhitch.left/w/a1', text);
      await new Store(backing()).takeUpLeft();
      expect(Object.keys(localStorage)).toEqual([]);
    }
    expect(await nameKept()).toBe('Heron');
    work.rename('Otter');
    const full = {
      ...fakeStorage(),
      setItem: () => {
        throw new DOMException('', 'QuotaExceededError');
      },
    };
    vi.stubGlobal('localStorage', full);
    main.dispatchEvent(new Event('pagehide'));
    await vi.advanceTimersByTimeAsync(300);
    expect(await nameKept()).toBe('Otter');
  });

  it('keeps what waits of the project before when another is opened', async () => {
    work.open(project());
    await vi.advanceTimersByTimeAsync(300);
    work.rename('Otter');
    work.open(project({ id: 'b2' }));
    await vi.advanceTimersByTimeAsync(300);
    expect(await nameKept()).toBe('Otter');
    expect(await nameKept('b2')).toBe('Heron');
    expect(await store.lastOpen()).toBe('b2');
  });

  it('does not keep a sample until it is changed or worked on', async () => {
    const sample = project();
    work.open(sample);
    keeper.setSample(sample);
    await vi.advanceTimersByTimeAsync(500);
    expect(await nameKept()).toBeNull();
    expect(await store.lastOpen()).toBeNull();
    await keeper.keepNow();
    expect(await nameKept()).toBe('Heron');
    const other = project({ id: 'b2' });
    work.open(other);
    keeper.setSample(other);
    work.rename('Kittiwake');
    await vi.advanceTimersByTimeAsync(500);
    expect(await nameKept('b2')).toBe('Kittiwake');
  });

  it('does not save again what was loaded, and opens it next time', async () => {
    work.open(project());
    await vi.advanceTimersByTimeAsync(300);
    saves = 0;
    work.open(await store.load('a1'));
    await vi.advanceTimersByTimeAsync(500);
    expect(saves).toBe(0);
    const next = new Work();
    const again = new Keeper(next as unknown as Session, store);
    expect(await again.openLast()).toBe(true);
    expect(next.project?.id).toBe('a1');
    again.stop();
  });

  it('opens without it a project that can no longer be read', async () => {
    await store.setLastOpen('gone');
    expect(await keeper.openLast()).toBe(false);
    expect(work.project).toBeNull();
  });

  it('says that the storage is full, loses nothing, and keeps it once there is room', async () => {
    full = true;
    work.open(project());
    await vi.advanceTimersByTimeAsync(300);
    expect(keeper.message).toMatch(/full/);
    expect(keeper.waiting).toBe(true);
    await expect(keeper.keepNow()).rejects.toThrow(/full/);
    work.rename('Otter');
    await vi.advanceTimersByTimeAsync(300);
    expect(keeper.waiting).toBe(true);
    full = false;
    // Something was erased.
    await store.erase('none');
    await vi.advanceTimersByTimeAsync(300);
    expect(await nameKept()).toBe('Otter');
    expect(keeper.message).toBe('');
  });
});

describe('a session in two windows', () => {
  let otherStore: Store;

  /** What the other window keeps, told as a channel would. */
  const keepElsewhere = async (change: Partial<AlphaProject>): Promise<void> => {
    const there = await otherStore.load('a1');
    await otherStore.save({ ...there, ...change } as Project);
    store.dispatchEvent(
      new CustomEvent('change', { detail: { id: 'a1', what: 'project', elsewhere: true } }),
    );
  };

  beforeEach(async () => {
    otherStore = new Store(backing());
    work.open(project());
    await vi.advanceTimersByTimeAsync(300);
    saves = 0;
  });

  it('shows what the other keeps, as a change that can be undone, and does not send it back', async () => {
    await keepElsewhere({ chart: { ...chart, name: 'Otter' } });
    await vi.advanceTimersByTimeAsync(500);
    expect(nameOf(work.project as Project)).toBe('Otter');
    expect(work.edits).toEqual(['Change in another window']);
    expect(saves).toBe(1);
    work.rename('Tern');
    await vi.advanceTimersByTimeAsync(300);
    expect(await nameKept()).toBe('Tern');
    expect((await store.list()).projects).toHaveLength(1);
  });

  it('keeps both when both have changed it', async () => {
    work.rename('Mine');
    await keepElsewhere({ chart: { ...chart, name: 'Theirs' } });
    await vi.advanceTimersByTimeAsync(500);
    expect(nameOf(work.project as Project)).toBe('Mine');
    const names = (await store.list()).projects.map(({ name }) => name);
    expect(names.sort()).toEqual(['Mine', 'Theirs (other window)']);
  });

  it('keeps both when one was left with a change that the other did not know of', async () => {
    work.rename('Mine');
    main.dispatchEvent(new Event('pagehide'));
    keeper.stop();
    await keepElsewhere({ chart: { ...chart, name: 'Theirs' }, changed: 9_000 });
    await otherStore.takeUpLeft();
    const names = (await otherStore.list()).projects.map(({ name }) => name);
    expect(names.sort()).toEqual(['Mine (other window)', 'Theirs']);
  });

  it('looks again when it is seen again, since a sleeping window hears nothing', async () => {
    const there = await otherStore.load('a1');
    await otherStore.save(renamed(there, 'Otter'));
    page.visibilityState = 'visible';
    page.dispatchEvent(new Event('visibilitychange'));
    await vi.advanceTimersByTimeAsync(10);
    expect(nameOf(work.project as Project)).toBe('Otter');
  });
});
