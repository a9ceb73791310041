import { newId } from '../project/new-id.js';
import type { Project } from '../project/project.js';
import type { Session } from '../project/session.js';
import { theStore } from '../store/open-store.js';
import type { Store } from '../store/store.js';
import { keepDesk } from './desk.js';
import type { OwnFile } from './kinds-of-file.js';

/**
 * Opens a file that the workbench has written. What goes wrong is told as a `problem` of the
 * session, and what was open stays open.
 */
export async function openOwnFile(
  session: Session,
  kind: OwnFile,
  bytes: Uint8Array,
  fileName: string,
): Promise<void> {
  const before = session.project;
  try {
    if (kind === 'embedded') {
      const text = await keepDesk.ask({ ask: 'read-embedded', bytes, fileName });
      if (session.project?.id !== before?.id) return;
      await session.openBytes(new TextEncoder().encode(text), fileName);
      return;
    }
    const { project, progress, notices } = await keepDesk.ask({
      ask: 'read-project',
      bytes,
      fileName,
    });
    const store = await theStore();
    // Of what is here already a copy is opened: neither is put over the other.
    const opened = (await isHere(store, project)) ? { ...project, id: newId() } : project;
    if (progress !== null) {
      const { done, columns, seconds, marks } = progress;
      const kept = { id: opened.id, done, columns, marks, times: [], active: seconds };
      // The piece is worth more than its count.
      await store.saveProgress({ ...kept, changed: Date.now(), revision: 0 }).catch(() => {});
    }
    if (session.project?.id !== before?.id) return;
    session.open(opened, notices);
  } catch (error) {
    session.complain(error);
  }
}

async function isHere(store: Store, { id }: Project): Promise<boolean> {
  try {
    const { projects, removed, damaged } = await store.list();
    return [...projects, ...removed, ...damaged].some((other) => other.id === id);
  } catch {
    return true;
  }
}
