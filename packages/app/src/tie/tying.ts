import { asStoreError } from '../store/errors.js';
import type { StoreChange } from '../store/listing.js';
import type { Progress } from '../store/progress.js';
import type { Store } from '../store/store.js';
import { PAUSE, timed } from './pace.js';
import { type Drift, driftOf, goneOn, rowMarks, type TiedRows } from './row-marks.js';

/** The piece that is tied. */
export interface TiedWork {
  /** Of the project. */
  readonly id: string;
  readonly rows: TiedRows;
}

/** Whether what is counted has reached the disk. */
export type Keeping =
  /** What is counted is kept. */
  | 'kept'
  | 'keeping'
  /** It is not kept; `problem` says why. */
  | 'failed';

/** What is known of knots that have just been counted. */
export interface Counted {
  /** Seconds since the knot before, where that is known. */
  readonly seconds: number | null;
}

/**
 * The count of knots tied of one project, kept on this device knot by knot.
 *
 * The count goes on in the page at once, and `kept` follows when it has reached the disk. Of what
 * is counted while something is still on its way, only the latest is kept then.
 *
 * Fires `count` when anything of it has changed, and `elsewhere` when another window has counted.
 */
export class Tying extends EventTarget {
  private progress: Progress | null = null;
  /** As it lies on the disk. */
  private onDisk: Progress | null = null;
  private writing = false;
  /** Whether there is something that the disk does not have. */
  private unwritten = false;
  private lastKnotAt: number | null = null;
  private broken = '';
  private failure = '';
  private came: number | null = null;

  /**
   * @param keepProject keeps the project itself, before its first knot is counted
   * @param now milliseconds since 1970
   */
  constructor(
    private readonly store: Store,
    private work: TiedWork,
    private readonly keepProject: () => Promise<void>,
    private readonly now: () => number = Date.now,
  ) {
    super();
    store.addEventListener('change', this.onStoreChange);
  }

  stop(): void {
    this.store.removeEventListener('change', this.onStoreChange);
  }

  /** Fetches what was counted before. Until then nothing can be counted. */
  async start(): Promise<void> {
    try {
      this.onDisk = await this.store.progress(this.work.id);
      this.progress = this.onDisk ?? this.fresh();
      this.broken = '';
    } catch (error) {
      this.broken = asStoreError(error).message;
      this.progress = this.fresh();
    }
    this.fire();
  }

  /** The drawing, or how it is knotted, has changed: the count stays. */
  setWork(work: TiedWork): void {
    this.work = work;
    this.fire();
  }

  get id(): string {
    return this.work.id;
  }

  get ready(): boolean {
    return this.progress !== null;
  }

  /** Knots tied. */
  get done(): number {
    return this.progress?.done ?? 0;
  }

  /** Knots tied that have reached the disk. */
  get kept(): number {
    return this.onDisk?.done ?? 0;
  }

  get keeping(): Keeping {
    if (this.failure !== '') return 'failed';
    return this.unwritten || this.writing ? 'keeping' : 'kept';
  }

  /** Why the count is not kept. */
  get problem(): string {
    return this.failure;
  }

  /** Why what was counted before can't be read; empty when it can. */
  get damage(): string {
    return this.broken;
  }

  get times(): Progress['times'] {
    return this.progress?.times ?? [];
  }

  /** Seconds of knotting, pauses left out. */
  get active(): number {
    return this.progress?.active ?? 0;
  }

  /** Knots in all. */
  get total(): number {
    return this.work.rows.total;
  }

  get drift(): Drift {
    const { progress, work } = this;
    if (progress === null) return { what: 'none' };
    // Looked for in all that is tied, so not oftener than something has changed.
    if (this.compared?.progress !== progress || this.compared.work !== work) {
      this.compared = { progress, work, drift: driftOf(progress, work.rows) };
    }
    return this.compared.drift;
  }
  private compared: {
    readonly progress: Progress;
    readonly work: TiedWork;
    readonly drift: Drift;
  } | null = null;

  /** Counts in the columns of the chart can't go on from a count in others. */
  private get countable(): boolean {
    const { progress } = this;
    return progress !== null && (progress.done === 0 || this.drift.what !== 'columns');
  }

  /**
   * Some knots have been tied.
   *
   * @param changes colour changes that came with them
   * @returns null when they can't be counted
   */
  tie(knots: number, changes: number): Counted | null {
    const { progress } = this;
    if (progress === null || !this.countable || knots < 1) return null;
    const to = Math.min(this.total, progress.done + knots);
    if (to <= progress.done) return null;
    const now = this.now();
    const seconds = this.lastKnotAt === null ? null : Math.max(0, (now - this.lastKnotAt) / 1000);
    this.lastKnotAt = now;
    const tied = to - progress.done;
    const spent = seconds !== null && seconds <= PAUSE * tied ? seconds : 0;
    this.put({
      ...this.at(progress, to),
      times: seconds === null ? progress.times : timed(progress.times, seconds, tied, changes),
      active: progress.active + spent,
    });
    this.came = null;
    return { seconds };
  }

  /** The last knot counted is not tied, or is undone. @returns whether there was one */
  back(): boolean {
    const { progress } = this;
    if (progress === null || !this.countable || progress.done === 0) return false;
    // It was not tied in that time, and the next is timed from here.
    this.lastKnotAt = this.now();
    const done = Math.min(this.total, progress.done) - (progress.done > this.total ? 0 : 1);
    this.put({ ...this.at(progress, done), times: progress.times.slice(0, -1) });
    this.came = null;
    return true;
  }

  /** The maker says how many knots are tied. */
  goTo(done: number): void {
    const { progress } = this;
    if (progress === null) return;
    const to = Math.max(0, Math.min(this.total, Math.trunc(done)));
    this.came = progress.done;
    this.lastKnotAt = null;
    const { rows } = this.work;
    this.put({
      ...progress,
      done: to,
      columns: rows.columns,
      marks: rowMarks(rows, to),
      changed: this.now(),
    });
  }

  /** Where the count was before the last jump; null when knots were counted since. */
  get cameFrom(): number | null {
    return this.came;
  }

  /** What is tied is taken to be as it is drawn now; the count stays. */
  acceptDrawing(): void {
    if (this.progress !== null) {
      this.goTo(this.progress.done);
      this.came = null;
      this.fire();
    }
  }

  /** The time until the next knot is no time for a knot: a rest, or the page was away. */
  interrupt(): void {
    this.lastKnotAt = null;
  }

  /** Tries once more to keep what failed to be kept. */
  retry(): void {
    if (this.unwritten) void this.write();
  }

  private fresh(): Progress {
    return {
      id: this.work.id,
      done: 0,
      columns: this.work.rows.columns,
      marks: new Uint32Array(),
      times: [],
      active: 0,
      changed: this.now(),
      revision: 0,
    };
  }

  /** Progress at another count; marks of rows that are not touched stay as they were tied. */
  private at(progress: Progress, done: number): Progress {
    const { rows } = this.work;
    const marks =
      progress.done === 0
        ? rowMarks(rows, done)
        : goneOn(progress.marks, rows, progress.done, done);
    // A change that was not taken for good is still told of, even where its row is gone on with.
    const { drift } = this;
    if (drift.what === 'row' && drift.row < marks.length) {
      const drawn = rowMarks(rows, done)[drift.row] ?? 0;
      if (marks[drift.row] === drawn) marks[drift.row] = ~drawn;
    }
    return { ...progress, done, columns: rows.columns, marks, changed: this.now() };
  }

  private put(progress: Progress): void {
    const { compared, work } = this;
    // Knots are counted as they are drawn now: they cannot differ where none did.
    if (compared?.work === work && compared.progress === this.progress) {
      if (compared.drift.what === 'none') this.compared = { progress, work, drift: compared.drift };
    }
    this.progress = progress;
    this.unwritten = true;
    this.fire();
    void this.write();
  }

  private async write(): Promise<void> {
    if (this.writing) return;
    this.writing = true;
    this.failure = '';
    try {
      await this.keepProject();
      while (this.unwritten && this.progress !== null) {
        const { progress } = this;
        this.unwritten = false;
        const revision = this.onDisk?.revision ?? 0;
        this.onDisk = await this.store.saveProgress(
          { ...progress, revision },
          { replace: this.broken !== '' },
        );
        this.broken = '';
        this.fire();
      }
    } catch (error) {
      this.unwritten = true;
      const failure = asStoreError(error);
      if (failure.code === 'newer') await this.takeOver();
      else this.failure = failure.message;
    }
    this.writing = false;
    this.fire();
  }

  private readonly onStoreChange = (event: Event): void => {
    const { id, what, elsewhere } = (event as CustomEvent<StoreChange>).detail;
    if (elsewhere && id === this.work.id && what === 'progress') void this.takeOver();
  };

  /** Shows what another window has counted, which holds: it was there first. */
  async takeOver(): Promise<void> {
    if (this.progress === null) return;
    try {
      const later = await this.store.progress(this.work.id);
      if (later === null || later.revision <= (this.onDisk?.revision ?? 0)) return;
      this.onDisk = later;
      this.progress = later;
      this.unwritten = false;
      this.failure = '';
      this.lastKnotAt = null;
      this.came = null;
      this.fire();
      this.dispatchEvent(new Event('elsewhere'));
    } catch {
      // What is counted here stays, and its keeping says what is wrong.
    }
  }

  private fire(): void {
    this.dispatchEvent(new Event('count'));
  }
}
