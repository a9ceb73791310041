import { newId } from '../project/new-id.js';
import type { Project } from '../project/project.js';
import { StoreError } from './errors.js';
import { Leaving } from './leaving.js';
import { forgetLeft, heardOfLeft, leftWork } from './left-work.js';
import { STORE_LIMITS } from './limits.js';
import { listWork } from './list-work.js';
import type { Listing, StoreChange } from './listing.js';
import type { Progress } from './progress.js';
import { putProgress, readProgress } from './progress-record.js';
import { type ProjectHead, readHead, readProject } from './project-record.js';
import { putBeside, putLeft, putProject } from './put-project.js';
import { rawFile } from './raw.js';
import { type Backing, OF_A_PROJECT } from './shelves.js';
import { changedOf, revisionOf } from './unread-record.js';
import { hereOpen, setHereOpen } from './window-note.js';

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
  private readonly leaving = new Leaving();
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
  list(): Promise<Listing> {
    return listWork(this.backing);
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
    this.leaving.sends(project);
    const revision = await this.backing.work(['projects', 'charts'], 'readwrite', (shelves) =>
      putProject(shelves, project, (there) => {
        // What this window handed over when it was left, and another has taken up since.
        const own = this.leaving.hasLeft(id, changedOf(there));
        if (!replace && !own && revisionOf(there) > (this.seen.get(id) ?? 0)) {
          throw new StoreError(
            'newer',
            'This project has been changed in another window as well. What that window kept is left as it is.',
          );
        }
      }),
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
    const copy = newId();
    const revision = await this.backing.work(
      ['projects', 'charts', 'progress'],
      'readwrite',
      (shelves) => putBeside(shelves, project, copy),
    );
    this.saved(project, revision);
    this.tell({ id: copy, what: 'project' });
    return copy;
  }

  /** Hands over a project that is not kept yet, where the page is being left. */
  leave(project: Project): void {
    if (!this.lasting) return;
    this.leaving.leave(project, this.seen.get(project.id) ?? 0);
    setHereOpen(project.id);
  }

  /**
   * Keeps what pages handed over as they were left. Where another window has kept something later
   * since, it becomes a project of its own.
   */
  async takeUpLeft(): Promise<void> {
    for (const [place, left] of leftWork()) {
      if (left !== null) {
        await this.backing.work(['projects', 'charts'], 'readwrite', (shelves) =>
          putLeft(shelves, left),
        );
        this.fire({ id: left.project.id, what: 'project', elsewhere: true });
      }
      forgetLeft(place);
    }
  }

  private saved(project: Project, revision: number): void {
    this.setSeen(project.id, revision);
    this.setHeld(project);
    this.leaving.kept(project);
    this.askToStay();
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
    await this.backing.work(OF_A_PROJECT, 'readwrite', async (shelves) => {
      for (const shelf of OF_A_PROJECT) await shelves.delete(shelf, id);
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
  exportRaw(id: string): Promise<Blob> {
    return rawFile(this.backing, id);
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
    const kept = await this.backing.work(['progress'], 'readwrite', (shelves) =>
      putProgress(shelves, progress, replace),
    );
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
