import { StoreError } from './errors.js';
import { STORE_LIMITS } from './limits.js';
import type { DamagedProject, Listing, ProjectSummary, Thumbnail } from './listing.js';
import { readProgress } from './progress-record.js';
import { type ProjectHead, readHead } from './project-record.js';
import { damaged, fieldsOf, time } from './record-fields.js';
import { type Backing, OF_A_PROJECT, type Shelf, type Shelves } from './shelves.js';
import { nameIn } from './unread-record.js';

/**
 * All projects, the one changed last first; those removed; and what could not be read.
 *
 * @throws StoreError
 */
export async function listWork(backing: Backing): Promise<Listing> {
  const projects: ProjectSummary[] = [];
  const removed: ProjectSummary[] = [];
  const broken: DamagedProject[] = [];
  for (const [id, entry] of await entriesOf(backing)) {
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
async function entriesOf(backing: Backing): Promise<[string, Entry | string][]> {
  try {
    return await backing.work(OF_A_PROJECT, 'readonly', async (shelves) => {
      const drawn = new Set(await shelves.keys('charts'));
      const ids = await shelves.keys('projects');
      return Promise.all(ids.map(async (id) => [id, await entryOf(shelves, id, drawn.has(id))]));
    });
  } catch {
    // A record that the browser itself cannot read fails all that is read together with it.
  }
  const ids = await backing.work(['projects'], 'readonly', (shelves) => shelves.keys('projects'));
  const entries: [string, Entry | string][] = [];
  for (const id of ids) {
    try {
      const entry = await backing.work(OF_A_PROJECT, 'readonly', async (shelves) =>
        entryOf(shelves, id, (await shelves.keys('charts')).includes(id)),
      );
      entries.push([id, entry]);
    } catch {
      entries.push([id, 'The browser cannot read it.']);
    }
  }
  return entries;
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
