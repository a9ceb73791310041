import type { Project } from '../project/project.js';
import type { Session } from '../project/session.js';
import { asStoreError, type StoreError } from './errors.js';
import type { StoreChange } from './listing.js';
import type { Store } from './store.js';

/** Time between two savings of the same work, ms: a stroke of the pencil is many changes. */
const PAUSE = 250;

const keepers = new WeakMap<Session, Promise<Keeper>>();

/** From now on every change of a session's projects is kept. */
export function keepSession(session: Session, store: Promise<Store>): Promise<Keeper> {
  const keeper = store.then((opened) => new Keeper(session, opened));
  keepers.set(session, keeper);
  return keeper;
}

/** Who keeps a session's work; null of one that nobody keeps. */
export function keeperOf(session: Session): Promise<Keeper> | null {
  return keepers.get(session) ?? null;
}

/**
 * Keeps what is changed in a session: the first change at once, those that follow close upon it a
 * quarter of a second later, and whatever waits as soon as the page is left.
 *
 * Fires `state` when `message` or `waiting` has changed.
 */
export class Keeper extends EventTarget {
  /** The latest of each project that is not kept yet. */
  private readonly unsaved = new Map<string, Project>();
  /** Shown, but nobody's work as long as they are just as they were opened. */
  private readonly samples = new WeakSet<Project>();
  private timer: ReturnType<typeof setTimeout> | null = null;
  private saving: Promise<void> | null = null;
  private lastSaved = 0;
  private failure: StoreError | null = null;

  constructor(
    readonly session: Session,
    readonly store: Store,
  ) {
    super();
    session.addEventListener('open', this.onOpen);
    session.addEventListener('project', this.onProject);
    store.addEventListener('change', this.onStoreChange);
    store.addEventListener('notice', this.onNotice);
    document.addEventListener('visibilitychange', this.onVisibility);
    addEventListener('pagehide', this.onLeave);
    if (session.project !== null) {
      this.onOpen();
      this.onProject();
    }
  }

  /** Stops keeping. */
  stop(): void {
    this.session.removeEventListener('open', this.onOpen);
    this.session.removeEventListener('project', this.onProject);
    this.store.removeEventListener('change', this.onStoreChange);
    this.store.removeEventListener('notice', this.onNotice);
    document.removeEventListener('visibilitychange', this.onVisibility);
    removeEventListener('pagehide', this.onLeave);
    if (this.timer !== null) clearTimeout(this.timer);
  }

  /** What the maker must know: work that is not kept, and why. Empty when all is well. */
  get message(): string {
    return this.failure?.message ?? this.store.notice;
  }

  /** Whether there are changes that are not kept yet. */
  get waiting(): boolean {
    return this.unsaved.size > 0;
  }

  /**
   * Opens the project that was open last.
   *
   * @param wanted asked once more when it has been fetched
   * @returns whether there is one, and it can be opened
   */
  async openLast(wanted: () => boolean = () => true): Promise<boolean> {
    const { session, store } = this;
    try {
      const id = await store.lastOpen();
      if (id === null || session.project !== null) return false;
      const project = await store.load(id);
      if (session.project !== null || !wanted()) return false;
      session.open(project);
      return true;
    } catch {
      // It is listed with the others, with what is wrong with it; the page opens without it.
      return false;
    }
  }

  /** Says that a project that was just opened is only shown: it is kept once it is changed. */
  setSample(project: Project): void {
    this.samples.add(project);
    if (this.unsaved.get(project.id) === project) this.unsaved.delete(project.id);
    this.fire();
  }

  /**
   * Keeps the open project now, a sample too: it is being worked on.
   *
   * @throws StoreError when it can't be kept
   */
  async keepNow(): Promise<void> {
    const { project } = this.session;
    if (project === null) return;
    this.samples.delete(project);
    if (!this.store.holds(project)) this.unsaved.set(project.id, project);
    await this.saveAll();
    if (this.failure !== null && this.unsaved.has(project.id)) throw this.failure;
  }

  private readonly onOpen = (): void => {
    const { project } = this.session;
    if (project !== null && this.store.holds(project)) this.setLastOpen(project.id);
  };

  private readonly onProject = (): void => {
    const { project } = this.session;
    if (project === null || this.store.holds(project) || this.samples.has(project)) return;
    this.unsaved.set(project.id, project);
    this.schedule();
    this.fire();
  };

  private schedule(): void {
    if (this.timer !== null) return;
    // Not before all who hear of the change have done their part, such as calling it a sample.
    const wait = Math.max(0, this.lastSaved + PAUSE - Date.now());
    this.timer = setTimeout(() => void this.saveAll(), Math.min(wait, PAUSE));
  }

  private async saveAll(): Promise<void> {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
    while (this.saving !== null) await this.saving;
    if (this.unsaved.size === 0) return;
    this.saving = this.saveEach();
    await this.saving;
  }

  private async saveEach(): Promise<void> {
    let failure: StoreError | null = null;
    for (const [id, project] of [...this.unsaved]) {
      try {
        await this.save(project);
        if (this.unsaved.get(id) === project) this.unsaved.delete(id);
        if (this.session.project?.id === id) this.setLastOpen(id);
      } catch (error) {
        failure = asStoreError(error);
      }
    }
    this.lastSaved = Date.now();
    this.failure = failure;
    this.saving = null;
    this.fire();
    // What failed is tried again with the next change.
    if (failure === null && this.unsaved.size > 0) this.schedule();
  }

  private async save(project: Project): Promise<void> {
    try {
      await this.store.save(project);
    } catch (error) {
      if (asStoreError(error).code !== 'newer') throw error;
      await this.store.saveBeside(project);
    }
  }

  private setLastOpen(id: string): void {
    // What is opened next time is no work: if it can't be kept, the demo is.
    this.store.setLastOpen(id).catch(() => {});
  }

  private readonly onStoreChange = (event: Event): void => {
    const { id, what, elsewhere } = (event as CustomEvent<StoreChange>).detail;
    if (what !== 'project') return;
    // Room may have been made.
    if (this.failure !== null && this.saving === null) this.schedule();
    if (elsewhere && id === this.session.project?.id) void this.takeOver();
  };

  /** Shows what another window has kept of the open project, unless this one has changes too. */
  private async takeOver(): Promise<void> {
    const { session, store } = this;
    const { project } = session;
    if (project === null || this.unsaved.has(project.id)) return;
    try {
      if (!(await store.isBehind(project.id))) return;
      const later = await store.peek(project.id);
      if (session.project !== project || this.unsaved.has(project.id)) return;
      store.setSeen(project.id, later.revision);
      session.replace(later.project, 'Change in another window');
      if (session.project !== null) store.setHeld(session.project);
      this.unsaved.delete(project.id);
      this.fire();
    } catch {
      // It has been erased or can't be read; what is open here stays, and is kept when changed.
    }
  }

  private readonly onNotice = (): void => this.fire();

  private readonly onVisibility = (): void => {
    if (document.visibilityState === 'hidden') void this.saveAll();
    else void this.takeOver();
  };

  private readonly onLeave = (): void => {
    // No saving is seen through any more; what is handed over is taken up the next time.
    for (const project of this.unsaved.values()) this.store.leave(project);
    // The page may come back just as it is.
    if (this.unsaved.size > 0) this.schedule();
  };

  private fire(): void {
    this.dispatchEvent(new Event('state'));
  }
}
