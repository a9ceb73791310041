import type { Chart, DiagonalPattern } from '@halfhitch/core';
import { keepSettings, keptSettings } from '../cut/settings.js';
import type { DiagonalDesk } from '../diagonal/work/desk.js';
import type { DiagonalPiece } from '../diagonal/work/messages.js';
import { Desk } from '../work/desk.js';
import type { Piece } from '../work/messages.js';
import { WorkError } from '../work/work-error.js';
import { History } from './history.js';
import {
  type AlphaChange,
  type AlphaProject,
  type DiagonalChange,
  type DiagonalProject,
  knottedAlike,
  newDiagonalProject,
  newProject,
  type Project,
} from './project.js';

/** What a session tells; each is the name of an event. */
export type SessionNews =
  /** Another project is open. Comes before its `project`. */
  | 'open'
  /** The project has changed, or another is open. */
  | 'project'
  /** The project as it stands has been planned and verified. */
  | 'piece'
  /** CustomEvent<string>: something went wrong, to be said as it is. */
  | 'problem'
  /** Whether work is going on has changed. */
  | 'busy';

/**
 * The open project and everything done to it. All views look at one session and change the project
 * only through it, so that every change can be undone, kept and proven.
 */
export class Session extends EventTarget {
  readonly desk = new Desk();
  private history = new History();
  private current: Project | null = null;
  private latest: Piece | null = null;
  private latestDiagonal: DiagonalPiece | null = null;
  private diagonals: Promise<DiagonalDesk> | null = null;
  private notices: readonly string[] = [];
  private opened = 0;
  private proving = false;
  /** The last that was planned, or is being. */
  private proven: Project | null = null;
  private reading = 0;

  get project(): Project | null {
    return this.current;
  }

  /** The open project where it is alpha work. */
  get alpha(): AlphaProject | null {
    return this.current?.kind === 'alpha' ? this.current : null;
  }

  /** The open project where it is a diagonal pattern. */
  get diagonal(): DiagonalProject | null {
    return this.current?.kind === 'diagonal' ? this.current : null;
  }

  /**
   * The last piece of alpha work that was worked out: of the project as it stands, unless `busy`.
   * Null before the first, and while a diagonal pattern is open.
   */
  get piece(): Piece | null {
    return this.diagonal === null ? this.latest : null;
  }

  /** The same of diagonal patterns. */
  get diagonalPiece(): DiagonalPiece | null {
    return this.alpha === null ? this.latestDiagonal : null;
  }

  /** Who works diagonal patterns out; hired when the first is opened. */
  get diagonalDesk(): Promise<DiagonalDesk> {
    this.diagonals ??= import('../diagonal/work/desk.js').then(
      ({ DiagonalDesk }) => new DiagonalDesk(),
    );
    return this.diagonals;
  }

  get busy(): boolean {
    return this.reading > 0 || this.proving;
  }

  /** What undoing would take back; null when there is nothing. */
  get undoing(): string | null {
    return this.history.undoing;
  }

  get redoing(): string | null {
    return this.history.redoing;
  }

  /**
   * Reads a chart from a file and opens it as a new project. A file that can't be read is told as
   * a `problem`, and what was open stays open.
   *
   * @returns whether it was opened
   */
  async openBytes(bytes: Uint8Array, fileName: string): Promise<boolean> {
    const opened = ++this.opened;
    this.reading++;
    this.tell('busy');
    try {
      const { notices, ...read } = await this.desk.ask({ ask: 'read', bytes, fileName });
      // Another was opened while this one was read.
      if (opened !== this.opened) return false;
      if (read.kind === 'alpha') this.openChart(read.chart, notices);
      else this.openDiagonal(read.pattern, read.wanted, notices);
      return true;
    } catch (error) {
      if (opened === this.opened) this.complain(error);
      return false;
    } finally {
      this.reading--;
      this.tell('busy');
    }
  }

  /** Opens a chart as a new project. `notices`: what its reader wants known. */
  openChart(chart: Chart, notices: readonly string[] = []): void {
    this.open(newProject(chart, keptSettings()), notices);
  }

  open(project: Project, notices: readonly string[] = []): void {
    this.opened++;
    this.history = new History();
    this.current = project;
    this.notices = notices;
    this.tell('open');
    this.changed();
  }

  /** Opens a diagonal pattern as a new project. */
  openDiagonal(
    pattern: DiagonalPattern,
    wanted: DiagonalProject['wanted'] = null,
    notices: readonly string[] = [],
  ): void {
    this.open(newDiagonalProject(pattern, wanted, keptSettings()), notices);
  }

  /**
   * Changes the open project where it is alpha work.
   *
   * @param what said on the button that takes it back, "Draw a line"
   */
  edit(change: AlphaChange, what: string): void {
    const { alpha } = this;
    if (alpha !== null) this.put(alpha, { ...alpha, ...change, changed: Date.now() }, what);
  }

  /** Changes the open project where it is a diagonal pattern. */
  editDiagonal(change: DiagonalChange, what: string): void {
    const { diagonal } = this;
    if (diagonal !== null)
      this.put(diagonal, { ...diagonal, ...change, changed: Date.now() }, what);
  }

  /** Puts another state of the open project in its place, as something that can be taken back. */
  replace(project: Project, what: string): void {
    const { current } = this;
    if (current === null || current.kind !== project.kind) return;
    this.put(current, { ...project, id: current.id, changed: Date.now() }, what);
  }

  private put(from: Project, to: Project, what: string): void {
    this.history.add(from, to, what);
    this.current = to;
    // A maker's thread and tails are mostly the same for the next piece.
    if (to.cut !== from.cut) keepSettings(to.cut);
    this.changed();
  }

  undo(): void {
    this.go((project) => this.history.undo(project));
  }

  redo(): void {
    this.go((project) => this.history.redo(project));
  }

  private go(crossing: (project: Project) => Project): void {
    if (this.current === null) return;
    const next = crossing(this.current);
    if (next === this.current) return;
    this.current = { ...next, changed: Date.now() };
    this.changed();
  }

  private changed(): void {
    this.tell('project');
    void this.prove();
  }

  /** Plans and verifies the project as it stands; of those changed meanwhile only the last waits. */
  private async prove(): Promise<void> {
    if (this.proving) return;
    this.proving = true;
    this.tell('busy');
    while (this.current !== null && !this.isProven(this.current)) {
      const project = this.current;
      this.proven = project;
      try {
        if (project.kind === 'alpha') await this.proveAlpha(project);
        else await this.proveDiagonal(project);
      } catch (error) {
        if (this.current === project) this.complain(error);
      }
    }
    this.proving = false;
    this.tell('busy');
  }

  private isProven(project: Project): boolean {
    const { proven } = this;
    return proven !== null && proven.id === project.id && knottedAlike(project, proven);
  }

  private async proveAlpha(project: AlphaProject): Promise<void> {
    const { chart, choice, id } = project;
    const piece = await this.desk.ask({ ask: 'plan', chart, choice, notices: this.notices });
    // Of another project, it would be shown under the wrong name.
    if (this.current?.id !== id) return;
    this.latest = { ...piece, id, chart };
    this.tell('piece');
  }

  private async proveDiagonal({ pattern, id }: DiagonalProject): Promise<void> {
    const desk = await this.diagonalDesk;
    const piece = await desk.ask({ ask: 'prove', pattern, notices: this.notices });
    if (this.current?.id !== id) return;
    this.latestDiagonal = { ...piece, id, pattern };
    this.tell('piece');
  }

  /** Tells of something that went wrong: a WorkError or a text as it is, anything else in general. */
  complain(error: unknown): void {
    const message =
      error instanceof WorkError
        ? error.message
        : typeof error === 'string'
          ? error
          : 'Something went wrong. Load the page anew.';
    this.dispatchEvent(new CustomEvent<string>('problem', { detail: message }));
  }

  private tell(news: Exclude<SessionNews, 'problem'>): void {
    this.dispatchEvent(new Event(news));
  }
}
