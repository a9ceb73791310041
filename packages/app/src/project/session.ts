import type { Chart } from '@halfhitch/core';
import { keepSettings, keptSettings } from '../cut/settings.js';
import { Desk } from '../work/desk.js';
import type { Piece } from '../work/messages.js';
import { WorkError } from '../work/work-error.js';
import { History } from './history.js';
import { newProject, type Project, type ProjectChange } from './project.js';

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
  private notices: readonly string[] = [];
  private opened = 0;
  private proving = false;
  /** The last that was planned, or is being. */
  private proven: Project | null = null;
  private reading = 0;

  get project(): Project | null {
    return this.current;
  }

  /**
   * The last piece that was worked out: of the project as it stands, unless `busy`. Null before
   * the first.
   */
  get piece(): Piece | null {
    return this.latest;
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
      const { chart, notices } = await this.desk.ask({ ask: 'read', bytes, fileName });
      // Another was opened while this one was read.
      if (opened !== this.opened) return false;
      this.openChart(chart, notices);
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

  /** Changes the open project. `what`: said on the button that takes it back, "Draw a line". */
  edit(change: ProjectChange, what: string): void {
    const { current } = this;
    if (current === null) return;
    const next = { ...current, ...change, changed: Date.now() };
    this.history.add(current, next, what);
    this.current = next;
    // A maker's thread and tails are mostly the same for the next piece.
    if (change.cut !== undefined) keepSettings(change.cut);
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
    while (this.current !== null && !sameKnots(this.current, this.proven)) {
      const project = this.current;
      this.proven = project;
      try {
        const { chart, choice } = project;
        const piece = await this.desk.ask({ ask: 'plan', chart, choice, notices: this.notices });
        // Of another project, it would be shown under the wrong name.
        if (this.current?.id !== project.id) continue;
        this.latest = { ...piece, id: project.id, chart };
        this.tell('piece');
      } catch (error) {
        if (this.current === project) this.complain(error);
      }
    }
    this.proving = false;
    this.tell('busy');
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

function sameKnots(one: Project, other: Project | null): boolean {
  return one.id === other?.id && one.chart === other.chart && one.choice === other.choice;
}
