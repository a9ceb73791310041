import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { asStoreError } from '../../src/store/errors.js';
import { MemoryShelves } from '../../src/store/memory-shelves.js';
import type { Backing } from '../../src/store/shelves.js';
import { Store } from '../../src/store/store.js';
import { Tying } from '../../src/tie/tying.js';
import { chartOf, workOf } from './works.js';

const chart = chartOf(['bbbb', 'bobo', 'wwww']);
const work = workOf(chart);

let shelves: MemoryShelves;
let full: boolean;
let clock: number;
let keptProject: number;

function backing(): Backing {
  return {
    lasting: false,
    close: () => {},
    work: (names, mode, task) =>
      full && mode === 'readwrite'
        ? Promise.reject(asStoreError(new DOMException('', 'QuotaExceededError')))
        : shelves.work(names, mode, task),
  };
}

async function tyingIn(store = new Store(backing()), tied = work): Promise<Tying> {
  const tying = new Tying(
    store,
    tied,
    async () => {
      keptProject++;
    },
    () => clock,
  );
  await tying.start();
  return tying;
}

const settled = async (tying: Tying): Promise<void> => {
  while (tying.keeping === 'keeping') await new Promise((resolve) => setTimeout(resolve, 0));
};

beforeEach(() => {
  shelves = new MemoryShelves();
  full = false;
  clock = 1_000_000;
  keptProject = 0;
});

describe('counting knots', () => {
  it('keeps each at once, the project first', async () => {
    const tying = await tyingIn();
    expect(tying.tie(1, 0)).toEqual({ seconds: null });
    expect(tying.done).toBe(1);
    expect(tying.keeping).toBe('keeping');
    expect(tying.kept).toBe(0);
    await settled(tying);
    expect(keptProject).toBe(1);
    expect(tying.kept).toBe(1);
    clock += 9_000;
    expect(tying.tie(2, 1)).toEqual({ seconds: 9 });
    await settled(tying);
    const again = await tyingIn();
    expect(again.done).toBe(3);
    expect(again.times).toEqual([{ seconds: 9, knots: 2, changes: 1 }]);
    expect(again.active).toBe(9);
    // The first knot after a reload has no time: who knows when the last was tied.
    expect(again.tie(1, 0)).toEqual({ seconds: null });
  });

  it('comes to what was tied, undone and jumped to, and keeps just that', async () => {
    const move = fc.oneof(
      fc.record({ do: fc.constant('tie' as const), knots: fc.integer({ min: 1, max: 5 }) }),
      fc.record({ do: fc.constant('back' as const), knots: fc.constant(1) }),
      fc.record({ do: fc.constant('go' as const), knots: fc.integer({ min: -2, max: 14 }) }),
      fc.record({ do: fc.constant('wait' as const), knots: fc.constant(0) }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(move, { maxLength: 25 }), async (moves) => {
        shelves = new MemoryShelves();
        const tying = await tyingIn();
        let count = 0;
        for (const { do: what, knots } of moves) {
          if (what === 'tie') {
            tying.tie(knots, 0);
            count = Math.min(12, count + knots);
          } else if (what === 'back') {
            expect(tying.back()).toBe(count > 0);
            count = Math.max(0, count - 1);
          } else if (what === 'go') {
            tying.goTo(knots);
            count = Math.max(0, Math.min(12, knots));
          } else await settled(tying);
          expect(tying.done).toBe(count);
          expect(tying.drift).toEqual({ what: 'none' });
        }
        await settled(tying);
        expect(tying.kept).toBe(count);
        expect((await tyingIn()).done).toBe(count);
      }),
      { numRuns: 50 },
    );
  });

  it('times no pause, and nothing after a jump or an undoing but from there on', async () => {
    const tying = await tyingIn();
    tying.tie(1, 0);
    clock += 3_600_000;
    expect(tying.tie(1, 0)).toEqual({ seconds: 3600 });
    expect(tying.times).toEqual([]);
    expect(tying.active).toBe(0);
    clock += 10_000;
    tying.tie(1, 0);
    clock += 5_000;
    tying.back();
    expect(tying.times).toEqual([]);
    clock += 7_000;
    tying.tie(1, 0);
    expect(tying.times).toEqual([{ seconds: 7, knots: 1, changes: 0 }]);
    tying.goTo(8);
    expect(tying.cameFrom).toBe(3);
    clock += 4_000;
    expect(tying.tie(1, 0)).toEqual({ seconds: null });
    expect(tying.cameFrom).toBeNull();
  });

  it('goes on in the page when nothing can be kept, and keeps it once it can', async () => {
    const tying = await tyingIn();
    full = true;
    tying.tie(1, 0);
    tying.tie(1, 0);
    await settled(tying);
    expect(tying.keeping).toBe('failed');
    expect(tying.problem).toMatch(/full/);
    expect([tying.done, tying.kept]).toEqual([2, 0]);
    full = false;
    tying.retry();
    await settled(tying);
    expect([tying.keeping, tying.kept]).toEqual(['kept', 2]);
  });
});

describe('two windows that tie one piece', () => {
  it('see each other’s count, and none puts an older one over a newer', async () => {
    const one = await tyingIn();
    const other = await tyingIn();
    one.tie(3, 0);
    await settled(one);
    // The other has slept and heard nothing.
    other.tie(1, 0);
    await settled(other);
    expect([other.done, other.kept, other.keeping]).toEqual([3, 3, 'kept']);
    other.tie(1, 0);
    await settled(other);
    expect((await tyingIn()).done).toBe(4);
    let told = 0;
    one.addEventListener('elsewhere', () => told++);
    await one.takeOver();
    expect(one.done).toBe(4);
    expect(told).toBe(1);
  });
});

describe('a drawing that is changed', () => {
  const other = (rows: readonly string[]): typeof work => workOf(chartOf(rows));

  it('below what is tied leaves all as it is', async () => {
    const tying = await tyingIn();
    tying.tie(6, 0);
    tying.setWork(other(['bbbb', 'wwbo', 'oooo', 'oooo']));
    // Row 2 goes from right to left: its right half is tied.
    expect(tying.drift).toEqual({ what: 'none' });
    expect(tying.done).toBe(6);
    expect(tying.total).toBe(16);
  });

  it('within what is tied is told of until it is undone or taken for good', async () => {
    const tying = await tyingIn();
    tying.tie(6, 0);
    const changed = other(['bbbb', 'bobb', 'wwww']);
    tying.setWork(changed);
    expect(tying.drift).toEqual({ what: 'row', row: 1 });
    // Going on does not hide it.
    tying.tie(1, 0);
    expect(tying.drift).toEqual({ what: 'row', row: 1 });
    tying.tie(3, 0);
    expect([tying.done, tying.drift]).toEqual([10, { what: 'row', row: 1 }]);
    await settled(tying);
    const again = await tyingIn(undefined, changed);
    expect([again.done, again.drift]).toEqual([10, { what: 'row', row: 1 }]);
    again.acceptDrawing();
    expect([again.done, again.drift]).toEqual([10, { what: 'none' }]);
    again.setWork(work);
    expect(again.drift).toEqual({ what: 'row', row: 1 });
  });

  it('to other columns stops the count until the maker says where they are', async () => {
    const tying = await tyingIn();
    tying.tie(6, 0);
    tying.setWork(other(['bbb', 'bob', 'www']));
    expect(tying.drift).toEqual({ what: 'columns', was: 4, now: 3 });
    expect(tying.tie(1, 0)).toBeNull();
    expect(tying.back()).toBe(false);
    expect(tying.done).toBe(6);
    tying.setWork(work);
    expect(tying.drift).toEqual({ what: 'none' });
    tying.setWork(other(['bbb', 'bob', 'www']));
    tying.goTo(3);
    expect([tying.done, tying.drift]).toEqual([3, { what: 'none' }]);
    expect(tying.tie(1, 0)).not.toBeNull();
  });

  it('to fewer rows than are tied leaves the count, and going back ends at the last row', async () => {
    const tying = await tyingIn();
    tying.tie(12, 0);
    tying.setWork(other(['bbbb', 'bobo']));
    expect([tying.done, tying.total]).toEqual([12, 8]);
    expect(tying.tie(1, 0)).toBeNull();
    tying.back();
    expect(tying.done).toBe(8);
  });
});

describe('a count that is damaged', () => {
  it('is told of, counted anew, and then kept over what cannot be read', async () => {
    const one = await tyingIn();
    one.tie(5, 0);
    await settled(one);
    await shelves.work(['progress'], 'readwrite', async (within) => {
      const record = (await within.get('progress', 'a1')) as object;
      await within.put('progress', 'a1', { ...record, done: 'five' });
    });
    const tying = await tyingIn();
    expect(tying.damage).toMatch(/position/);
    expect(tying.done).toBe(0);
    tying.goTo(5);
    await settled(tying);
    expect([tying.keeping, tying.damage]).toEqual(['kept', '']);
    expect((await tyingIn()).done).toBe(5);
  });
});
