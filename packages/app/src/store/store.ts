import { CHART_LIMITS } from '@halfhitch/core';
import { newId } from '../project/new-id.js';
import { nameOf, type Project, renamed } from '../project/project.js';
import { figures } from '../view/figures.js';
import { StoreError } from './errors.js';
import {
  forgetLeft,
  heardOfLeft,
  type LeftWork,
  leaveWork,
  leftPlace,
  leftWork,
} from './left-work.js';
import { STORE_LIMITS } from './limits.js';
import type { Listing, ProjectSummary, StoreChange, Thumbnail } from './listing.js';
import type { Progress } from './progress.js';
import { progressRecord, readProgress } from './progress-record.js';
import {
  cellsOf,
  damaged,
  fieldsOf,
  headOf,
  type ProjectHead,
  readHead,
  readProject,
  time,
} from './project-record.js';
import { rawText } from './raw.js';
import type { Backing, Shelf, Shelves } from './shelves.js';
import { hereOpen, setHereOpen } from './window-note.js';

const EVERYTHING = ['projects', 'charts', 'thumbnails', 'progress'] as const;
const DAY = 24 * 60 * 60 * 1000;

/** Where windows tell each other what they have kept. */
const CHANNEL = 'halfhitch.store';

/**
 * The work kept on this device: projects, and how far each is knotted.
 *
 * Every record is checked as it is read; one that is broken is listed as damaged and keeps nothing
 * else from being read. Windows may keep the same work: what is kept carries a revision, and
 * nothing is put over a later revision than the one this window has seen.
 *
 * All methods reject with a StoreError, whose message is for the maker.
 *
 * Fires `change` (CustomEvent<StoreChange>) when something was kept, here or in another window,
 * and `notice` when `notice` has changed.
 */
export class Store extends EventTarget {
  private current: string;
  /** The latest revision of each project that this window has seen. */
  private readonly seen = new Map<string, number>();
  /** Projects that lie in the storage just as they are. */
  private readonly kept = new WeakSet<Project>();
  private readonly channel: BroadcastChannel | null;
  private asked = false;

  /** Use openStore, which finds out what can be kept. */
  constructor(
    private readonly backing: Backing,
    notice = '',
  ) {
    super();
    this.current = notice;
    this.channel =
      backing.lasting && typeof BroadcastChannel !== 'undefined'
        ? new BroadcastChannel(CHANNEL)
        : null;
    this.channel?.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
      const { id, what } = (data ?? {}) as { id?: unknown; what?: unknown };
      if (typeof id !== 'string') return;
      if (what === 'project' || what === 'progress') this.fire({ id, what, elsewhere: true });
    });
    this.deaf = backing.lasting
      ? heardOfLeft(() => void this.takeUpLeft().catch(() => {}))
      : () => {};
  }
  private readonly deaf: () => void;

  /** Whether work is there when the page is opened again. */
  get lasting(): boolean {
    return this.backing.lasting;
  }

  /** What the maker must know of how work is kept; empty when all is well. */
  get notice(): string {
    return this.current;
  }

  set notice(notice: string) {
    this.current = notice;
    this.dispatchEvent(new Event('notice'));
  }

  close(): void {
    this.channel?.close();
    this.deaf();
    this.backing.close();
  }

  // ---- projects ----

  /** All projects, the one changed last first; those removed; and what could not be read. */
  async list(): Promise<Listing> {
    const projects: ProjectSummary[] = [];
    const removed: ProjectSummary[] = [];
    const broken: { id: string; name: string; what: string }[] = [];
    for (const [id, entry] of await this.entries()) {
      if (typeof entry === 'string') {
        broken.push({ id, name: '', what: entry });
        continue;
      }
      try {
        const head = readHead(entry.head);
        if (!entry.drawn) damaged('Its drawing is missing.');
        (head.removed === undefined ? projects : removed).push(summaryOf(id, head, entry));
      } catch (error) {
        if (!(error instanceof StoreError)) throw error;
        broken.push({ id, name: nameIn(entry.head), what: error.message });
      }
    }
    projects.sort((one, other) => other.changed - one.changed);
    removed.sort((one, other) => (other.removed ?? 0) - (one.removed ?? 0));
    return { projects, removed, damaged: broken };
  }

  /** What lies there of each project; of one that the browser cannot read, why. */
  private async entries(): Promise<[string, Entry | string][]> {
    try {
      return await this.backing.work(EVERYTHING, 'readonly', async (shelves) => {
        const drawn = new Set(await shelves.keys('charts'));
        const ids = await shelves.keys('projects');
        return Promise.all(ids.map(async (id) => [id, await entryOf(shelves, id, drawn.has(id))]));
      });
    } catch {
      // A record that the browser itself cannot read fails all that is read together with it.
    }
    const ids = await this.backing.work(['projects'], 'readonly', (shelves) =>
      shelves.keys('projects'),
    );
    const entries: [string, Entry | string][] = [];
    for (const id of ids) {
      try {
        const entry = await this.backing.work(EVERYTHING, 'readonly', async (shelves) =>
          entryOf(shelves, id, (await shelves.keys('charts')).includes(id)),
        );
        entries.push([id, entry]);
      } catch {
        entries.push([id, 'The browser cannot read it.']);
      }
    }
    return entries;
  }

  /**
   * A project to be opened. From now on this window has seen what is kept of it.
   *
   * @throws StoreError `missing` or `damaged`
   */
  async load(id: string): Promise<Project> {
    const { project, revision } = await this.peek(id);
    this.setSeen(id, revision);
    this.setHeld(project);
    return project;
  }

  /** A project as it is kept, and its revision, without counting as seen. */
  async peek(id: string): Promise<{ readonly project: Project; readonly revision: number }> {
    const { head, cells } = await this.backing.work(
      ['projects', 'charts'],
      'readonly',
      async (shelves) => ({
        head: await shelves.get('projects', id),
        cells: await shelves.get('charts', id),
      }),
    );
    if (head === undefined) {
      throw new StoreError('missing', 'This project is no longer kept on this device.');
    }
    try {
      const read = readHead(head);
      return { project: readProject(id, read, cells), revision: read.revision };
    } catch (error) {
      if (!(error instanceof StoreError) || error.code !== 'damaged') throw error;
      throw new StoreError(
        'damaged',
        `This project is damaged and can't be opened. ${error.message} Export what is left of it, or remove it; all other work is untouched.`,
      );
    }
  }

  /** Whether a project lies in the storage just as it is. */
  holds(project: Project): boolean {
    return this.kept.has(project);
  }

  /** Says that a project is what lies in the storage, as one that was loaded and opened anew. */
  setHeld(project: Project): void {
    this.kept.add(project);
  }

  /** Says that this window has seen a revision: it may be put over. */
  setSeen(id: string, revision: number): void {
    this.seen.set(id, revision);
  }

  /** Whether another window has kept something later of a project that this one has seen. */
  async isBehind(id: string): Promise<boolean> {
    const head = await this.backing.work(['projects'], 'readonly', (shelves) =>
      shelves.get('projects', id),
    );
    const seen = this.seen.get(id);
    return seen !== undefined && revisionOf(head) > seen;
  }

  /**
   * Keeps a project. One that was removed is brought back by it.
   *
   * @param options `replace`: puts it over what lies there even when this window has not seen that
   * @throws StoreError `newer` when another window has kept something later, `full`, `too-many`
   */
  async save(project: Project, { replace = false } = {}): Promise<void> {
    const { id } = project;
    this.sending.set(id, project.changed);
    const revision = await this.backing.work(
      ['projects', 'charts'],
      'readwrite',
      async (shelves) => {
        const there = await shelves.get('projects', id);
        const last = revisionOf(there);
        const { changed } = (there ?? {}) as { changed?: unknown };
        // What this window handed over when it was left, and another has taken up since.
        const own = changed !== undefined && changed === this.hasLeft.get(id);
        if (!replace && !own && last > (this.seen.get(id) ?? 0)) {
          throw new StoreError(
            'newer',
            'This project has been changed in another window as well. What that window kept is left as it is.',
          );
        }
        if (there === undefined) await refuseTooMany(shelves);
        await shelves.put('charts', id, cellsOf(project));
        await shelves.put('projects', id, headOf(project, last + 1));
        return last + 1;
      },
    );
    this.saved(project, revision);
  }

  /**
   * Keeps a project although another window has kept something later, of which a copy is made
   * first: so neither is lost.
   *
   * @returns the copy's id
   */
  async saveBeside(project: Project): Promise<string> {
    const { id } = project;
    const copy = newId();
    const revision = await this.backing.work(
      ['projects', 'charts', 'progress'],
      'readwrite',
      async (shelves) => {
        const there = await shelves.get('projects', id);
        if (there !== undefined) {
          await refuseTooMany(shelves);
          for (const shelf of ['charts', 'progress'] as const) {
            const record = await shelves.get(shelf, id);
            if (record !== undefined) await shelves.put(shelf, copy, record);
          }
          await shelves.put('projects', copy, { ...(there as object), name: besideName(there) });
        }
        const last = revisionOf(there);
        await shelves.put('charts', id, cellsOf(project));
        await shelves.put('projects', id, headOf(project, last + 1));
        return last + 1;
      },
    );
    this.saved(project, revision);
    this.tell({ id: copy, what: 'project' });
    return copy;
  }

  /** Hands over a project that is not kept yet, where the page is being left. */
  leave(project: Project): void {
    if (!this.lasting) return;
    const { id, changed } = project;
    this.hasLeft.set(id, changed);
    const base = this.seen.get(id) ?? 0;
    leaveWork(this.window, { project, base, sent: this.sending.get(id) ?? null });
    setHereOpen(id);
  }
  /** The `changed` of what was handed over and is not kept otherwise yet. */
  private readonly hasLeft = new Map<string, number>();
  /** The `changed` of what is on its way to the disk, of which it is not known whether it came. */
  private readonly sending = new Map<string, number>();
  private readonly window = newId();

  /**
   * Keeps what pages handed over as they were left. Where another window has kept something later
   * since, it becomes a project of its own.
   */
  async takeUpLeft(): Promise<void> {
    for (const [place, left] of leftWork()) {
      if (left !== null) {
        await this.backing.work(['projects', 'charts'], 'readwrite', (shelves) =>
          takeUp(shelves, left),
        );
        this.fire({ id: left.project.id, what: 'project', elsewhere: true });
      }
      forgetLeft(place);
    }
  }

  private saved(project: Project, revision: number): void {
    this.setSeen(project.id, revision);
    this.setHeld(project);
    this.sending.delete(project.id);
    this.askToStay();
    // The page was not left after all, or has come back as it was.
    if (project.changed >= (this.hasLeft.get(project.id) ?? Number.POSITIVE_INFINITY)) {
      this.hasLeft.delete(project.id);
      forgetLeft(leftPlace(this.window, project.id));
    }
    this.tell({ id: project.id, what: 'project' });
  }

  /** Removes a project; it can be restored until it is erased, or for a month. */
  async remove(id: string): Promise<void> {
    await this.changeHead(id, (head) => ({ ...head, removed: Date.now() }));
  }

  async restore(id: string): Promise<void> {
    await this.changeHead(id, ({ removed: _, ...head }) => head);
  }

  /** Erases a project, or what is left of a damaged one, for good. */
  async erase(id: string): Promise<void> {
    await this.backing.work(EVERYTHING, 'readwrite', async (shelves) => {
      for (const shelf of EVERYTHING) await shelves.delete(shelf, id);
    });
    this.seen.delete(id);
    this.tell({ id, what: 'project' });
  }

  private async changeHead(
    id: string,
    change: (head: ProjectHead) => Omit<ProjectHead, 'revision'>,
  ): Promise<void> {
    await this.backing.work(['projects'], 'readwrite', async (shelves) => {
      const there = await shelves.get('projects', id);
      if (there === undefined) {
        throw new StoreError('missing', 'This project is no longer kept on this device.');
      }
      const head = readHead(there);
      // Not a later revision: nothing of the work has changed, and who has it open may go on.
      await shelves.put('projects', id, { ...change(head), revision: head.revision });
    });
    this.tell({ id, what: 'project' });
  }

  /** Erases what was removed longer than a month ago. */
  async tidy(now = Date.now()): Promise<void> {
    const { removed } = await this.list();
    for (const { id, removed: when } of removed) {
      if (when !== null && now - when > STORE_LIMITS.removedDays * DAY) await this.erase(id);
    }
  }

  /**
   * @param image of at most STORE_LIMITS.thumbnail bytes; a larger one is not kept
   * @param of the `changed` of the project it was drawn of
   */
  async saveThumbnail(id: string, image: Blob, of: number): Promise<void> {
    if (image.size > STORE_LIMITS.thumbnail) return;
    const bytes = new Uint8Array(await image.arrayBuffer());
    await this.backing.work(['projects', 'thumbnails'], 'readwrite', async (shelves) => {
      // Not of one that was erased meanwhile.
      if ((await shelves.get('projects', id)) === undefined) return;
      await shelves.put('thumbnails', id, { type: image.type, bytes, of });
    });
  }

  /** All that lies there of a project, however broken, as JSON text in a file. */
  async exportRaw(id: string): Promise<Blob> {
    const parts: Record<string, unknown> = {};
    for (const shelf of EVERYTHING) {
      try {
        parts[shelf] = await this.backing.work([shelf], 'readonly', (shelves) =>
          shelves.get(shelf, id),
        );
      } catch {
        parts[shelf] = 'The browser cannot read it.';
      }
    }
    return new Blob([rawText({ id, ...parts })], { type: 'application/json' });
  }

  // ---- progress ----

  /** Null where nothing is tied yet. @throws StoreError `damaged` */
  async progress(id: string): Promise<Progress | null> {
    const record = await this.backing.work(['progress'], 'readonly', (shelves) =>
      shelves.get('progress', id),
    );
    return record === undefined ? null : readProgress(id, record);
  }

  /**
   * Keeps progress. Once the promise is fulfilled it has reached the disk.
   *
   * @param progress with the revision it was made from
   * @param options `replace`: puts it over whatever lies there, as over damaged progress
   * @returns it as it was kept, with its own revision
   * @throws StoreError `newer` when another window has kept a later revision
   */
  async saveProgress(progress: Progress, { replace = false } = {}): Promise<Progress> {
    const { id } = progress;
    const kept = await this.backing.work(['progress'], 'readwrite', async (shelves) => {
      const last = revisionOf(await shelves.get('progress', id));
      if (!replace && last > progress.revision) {
        throw new StoreError(
          'newer',
          'Knots of this piece were counted in another window meanwhile. Its count holds.',
        );
      }
      const next = { ...progress, revision: Math.max(last, progress.revision) + 1 };
      await shelves.put('progress', id, progressRecord(next));
      return next;
    });
    this.askToStay();
    this.tell({ id, what: 'progress' });
    return kept;
  }

  // ---- small things ----

  /** The project that was open last: in this window, if it was loaded anew, or else in any. */
  async lastOpen(): Promise<string | null> {
    const here = hereOpen();
    if (here !== null) return here;
    const id = await this.setting('last open');
    return typeof id === 'string' ? id : null;
  }

  async setLastOpen(id: string | null): Promise<void> {
    setHereOpen(id);
    await this.keepSetting('last open', id);
  }

  /** A small setting as it was kept, to be checked by who reads it; undefined if there is none. */
  async setting(name: string): Promise<unknown> {
    return this.backing.work(['kept'], 'readonly', (shelves) => shelves.get('kept', name));
  }

  async keepSetting(name: string, value: unknown): Promise<void> {
    await this.backing.work(['kept'], 'readwrite', (shelves) => shelves.put('kept', name, value));
  }

  /** Bytes used and given by the browser; null where it does not say. */
  async room(): Promise<{ readonly used: number; readonly given: number } | null> {
    try {
      const { usage, quota } = await navigator.storage.estimate();
      return usage === undefined || quota === undefined ? null : { used: usage, given: quota };
    } catch {
      return null;
    }
  }

  /** Asks the browser, once there is work to lose, not to clear it away when room gets short. */
  private askToStay(): void {
    if (this.asked || !this.lasting) return;
    this.asked = true;
    // May be missing, or refused: then work is kept as all pages' is.
    globalThis.navigator?.storage?.persist?.().catch(() => {});
  }

  private tell(change: Omit<StoreChange, 'elsewhere'>): void {
    this.channel?.postMessage(change);
    this.fire({ ...change, elsewhere: false });
  }

  private fire(change: StoreChange): void {
    this.dispatchEvent(new CustomEvent<StoreChange>('change', { detail: change }));
  }
}

interface Entry {
  readonly head: unknown;
  readonly drawn: boolean;
  readonly thumbnail: unknown;
  readonly progress: unknown;
}

async function entryOf(shelves: Shelves, id: string, drawn: boolean): Promise<Entry> {
  const get = (shelf: Shelf): Promise<unknown> => shelves.get(shelf, id);
  const [head, thumbnail, progress] = await Promise.all([
    get('projects'),
    get('thumbnails'),
    get('progress'),
  ]);
  return { head, drawn, thumbnail, progress };
}

function summaryOf(id: string, head: ProjectHead, entry: Entry): ProjectSummary {
  const { kind, name, rows, colours, created, changed } = head;
  return {
    id,
    kind,
    name,
    rows,
    across: kind === 'alpha' ? head.columns : head.strings,
    knots: kind === 'alpha' ? rows * head.columns : head.knots,
    colours,
    created,
    changed,
    removed: head.removed ?? null,
    thumbnail: thumbnailIn(entry.thumbnail),
    ...progressIn(id, entry.progress),
  };
}

function progressIn(id: string, record: unknown): Pick<ProjectSummary, 'done' | 'doneDamaged'> {
  if (record === undefined) return { done: 0, doneDamaged: false };
  try {
    return { done: readProgress(id, record).done, doneDamaged: false };
  } catch {
    return { done: 0, doneDamaged: true };
  }
}

/** A picture that is broken is drawn anew, so it is as good as none. */
function thumbnailIn(record: unknown): Thumbnail | null {
  try {
    const { type, bytes, of } = fieldsOf(record, 'The picture') as Record<string, unknown>;
    if (!(bytes instanceof Uint8Array) || bytes.length > STORE_LIMITS.thumbnail) return null;
    if (type !== 'image/png' && type !== 'image/webp' && type !== 'image/jpeg') return null;
    return { image: new Blob([bytes.slice()], { type }), of: time(of, 'The time') };
  } catch {
    return null;
  }
}

/** Keeps what a page handed over. */
async function takeUp(shelves: Shelves, { project, base, sent }: LeftWork): Promise<void> {
  const there = await shelves.get('projects', project.id);
  const changed = (there as { changed?: unknown } | undefined)?.changed;
  // It was kept just then, after all.
  if (changed === project.changed) return;
  const last = revisionOf(there);
  // What the page itself had sent off, and could no longer hear of.
  const own = last === base + 1 && changed === sent;
  if (last <= base || own) {
    await shelves.put('charts', project.id, cellsOf(project));
    await shelves.put('projects', project.id, headOf(project, last + 1));
    return;
  }
  const copy = newId();
  const name = besideName({ name: nameOf(project) });
  await shelves.put('charts', copy, cellsOf(project));
  await shelves.put('projects', copy, headOf(renamed(project, name), 1));
}

async function refuseTooMany(shelves: Shelves): Promise<void> {
  if ((await shelves.keys('projects')).length < STORE_LIMITS.projects) return;
  throw new StoreError(
    'too-many',
    `There are ${figures(STORE_LIMITS.projects)} projects already, so this one is not kept. Export it to a file, or erase projects that you no longer need.`,
  );
}

function revisionOf(record: unknown): number {
  const revision = (record as { revision?: unknown } | null | undefined)?.revision;
  return typeof revision === 'number' && Number.isSafeInteger(revision) ? revision : 0;
}

/** What the copy of a project is called that another window has kept. */
function besideName(record: unknown): string {
  const added = ' (other window)';
  return `${nameIn(record).slice(0, CHART_LIMITS.maxName - added.length)}${added}`.trim();
}

function nameIn(record: unknown): string {
  const name = (record as { name?: unknown } | null | undefined)?.name;
  return typeof name === 'string' ? name.slice(0, 200) : '';
}
