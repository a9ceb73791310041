import { newId } from '../project/new-id.js';
import type { Project } from '../project/project.js';
import { forgetLeft, leaveWork, leftPlace } from './left-work.js';

/** What this window hands over as it is left, and has to know of it if it was not left after all. */
export class Leaving {
  /** The `changed` of what was handed over and is not kept otherwise yet, by project. */
  private readonly left = new Map<string, number>();
  /** The `changed` of what is on its way to the disk, of which it is not known whether it came. */
  private readonly sent = new Map<string, number>();
  private readonly window = newId();

  /** @param base the revision that it was made from */
  leave(project: Project, base: number): void {
    const { id, changed } = project;
    this.left.set(id, changed);
    leaveWork(this.window, { project, base, sent: this.sent.get(id) ?? null });
  }

  /** Whether a project as it was then is what this window handed over. */
  hasLeft(id: string, changed: unknown): boolean {
    return changed !== undefined && changed === this.left.get(id);
  }

  /** A project is on its way to the disk. */
  sends({ id, changed }: Project): void {
    this.sent.set(id, changed);
  }

  /** A project has reached the disk. */
  kept({ id, changed }: Project): void {
    this.sent.delete(id);
    // The page was not left after all, or has come back as it was.
    if (changed >= (this.left.get(id) ?? Number.POSITIVE_INFINITY)) {
      this.left.delete(id);
      forgetLeft(leftPlace(this.window, id));
    }
  }
}
