import { CHART_LIMITS, printable } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { newId } from '../project/new-id.js';
import { nameOf, type Project, renamed, titleOf } from '../project/project.js';
import type { Session } from '../project/session.js';
import { asStoreError } from '../store/errors.js';
import { keeperOf } from '../store/keep-session.js';
import type { DamagedProject, Listing, ProjectSummary } from '../store/listing.js';
import { theStore } from '../store/open-store.js';
import type { Store } from '../store/store.js';
import { figures } from '../view/figures.js';
import { PageElement } from '../view/page-element.js';
import { SessionWatch } from '../view/session-watch.js';
import { download } from './download.js';
import { fileNameOf } from './file-name.js';
import { type ItemActions, libraryItem } from './library-item.js';
import { damagedList, type LeftoverActions, removedList } from './library-leftovers.js';
import { type Room, roomInBrowser, roomInWords } from './room.js';
import { listedName } from './summary-words.js';
import { Thumbnails } from './thumbnails.js';

/** Projects shown before more are asked for. */
const AT_FIRST = 24;

/** What was done last, and how it is taken back. */
interface Done {
  readonly text: string;
  readonly undo: (() => Promise<void>) | null;
}

/** The projects kept on this device: opened, copied, renamed, removed and brought back. */
export class Library extends PageElement {
  static override properties = {
    session: { attribute: false },
    listing: { state: true },
    renaming: { state: true },
    erasing: { state: true },
    done: { state: true },
    problem: { state: true },
    shown: { state: true },
    room: { state: true },
  };

  declare session: Session | null;
  declare private listing: Listing | null;
  /** Id of the project whose name is being written. */
  declare private renaming: string | null;
  /** Id of the one that is erased if it is asked for once more. */
  declare private erasing: string | null;
  declare private done: Done | null;
  declare private problem: string;
  declare private shown: number;
  declare private room: Room | null;

  private store: Store | null = null;
  private listed = 0;
  private readonly thumbnails = new Thumbnails();

  constructor() {
    super();
    this.session = null;
    this.listing = null;
    this.renaming = null;
    this.erasing = null;
    this.done = null;
    this.problem = '';
    this.shown = AT_FIRST;
    this.room = null;
    new SessionWatch(this, ['open']);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void theStore().then((store) => {
      if (!this.isConnected) return;
      this.store = store;
      store.addEventListener('change', this.onChange);
      this.onChange();
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.store?.removeEventListener('change', this.onChange);
    this.store = null;
  }

  private readonly onChange = (): void => void this.list();

  private async list(): Promise<void> {
    const { store } = this;
    if (store === null) return;
    const listed = ++this.listed;
    try {
      const listing = await store.list();
      const room = await roomInBrowser();
      if (listed !== this.listed) return;
      this.listing = listing;
      this.room = room;
      void this.draw();
    } catch (error) {
      this.problem = asStoreError(error).message;
    }
  }

  private async draw(): Promise<void> {
    const { store } = this;
    if (store === null) return;
    const inSight = () =>
      this.store === store ? (this.listing?.projects.slice(0, this.shown) ?? null) : null;
    await this.thumbnails.draw(store, inSight, () => this.list());
  }

  // ---- what can be done ----

  private async attempt(task: (store: Store) => Promise<void>): Promise<void> {
    const { store } = this;
    if (store === null) return;
    this.problem = '';
    this.done = null;
    this.erasing = null;
    try {
      await task(store);
    } catch (error) {
      this.problem = asStoreError(error).message;
    }
    await this.list();
  }

  private open({ id }: ProjectSummary): Promise<void> {
    return this.attempt(async (store) => {
      if (this.session?.project?.id === id) return;
      const project = await store.load(id);
      this.session?.open(project);
      this.done = { text: `${titleOf(project)} is open.`, undo: null };
    });
  }

  private copy({ id }: ProjectSummary): Promise<void> {
    return this.attempt(async (store) => {
      const now = Date.now();
      const project = await peek(store, id);
      const name = withinLimit(`${nameOf(project)} (copy)`);
      const copy = { ...renamed(project, name), id: newId(), created: now, changed: now };
      await store.save(copy);
      this.done = { text: `${name} was made.`, undo: () => store.erase(copy.id) };
    });
  }

  private rename({ id }: ProjectSummary, written: string): Promise<void> {
    const name = withinLimit(printable(written));
    this.renaming = null;
    return this.attempt(async (store) => {
      const { session } = this;
      const open = session?.project;
      if (session !== null && open?.id === id) {
        if (name !== nameOf(open)) session.replace(renamed(open, name), 'Rename');
        return;
      }
      const project = await store.load(id);
      if (name === nameOf(project)) return;
      await store.save({ ...renamed(project, name), changed: Date.now() });
    });
  }

  private takeAway(summary: ProjectSummary): Promise<void> {
    const { id } = summary;
    return this.attempt(async (store) => {
      const { session } = this;
      const open = session?.project;
      await store.remove(id);
      let text = `${listedName(summary)} was removed.`;
      if (session !== null && open?.id === id) {
        // Otherwise it would be kept again as soon as the page is left.
        (await keeperOf(session))?.setSample(open);
        text = `${text} It stays open here, and is kept again once you change it.`;
      }
      this.done = { text, undo: () => store.restore(id) };
    });
  }

  private restore({ id }: ProjectSummary): Promise<void> {
    return this.attempt((store) => store.restore(id));
  }

  private erase(id: string): Promise<void> {
    if (this.erasing !== id) {
      this.erasing = id;
      return Promise.resolve();
    }
    return this.attempt(async (store) => {
      await store.erase(id);
      this.done = { text: 'It was erased.', undo: null };
    });
  }

  private saveRaw({ id, name }: DamagedProject): Promise<void> {
    return this.attempt(async (store) => {
      download(await store.exportRaw(id), 'application/json', fileNameOf(name, '-damaged.json'));
    });
  }

  private readonly itemActions: ItemActions = {
    open: (one) => void this.open(one),
    copy: (one) => void this.copy(one),
    takeAway: (one) => void this.takeAway(one),
    startRenaming: ({ id }) => this.startRenaming(id),
    rename: (one, name) => void this.rename(one, name),
    stopRenaming: () => {
      this.renaming = null;
    },
  };

  private readonly leftoverActions: LeftoverActions = {
    restore: (one) => void this.restore(one),
    saveRaw: (one) => void this.saveRaw(one),
    erase: (id) => void this.erase(id),
  };

  private undo(undo: () => Promise<void>): void {
    void this.attempt(undo);
  }

  // ---- what is shown ----

  protected override render(): TemplateResult {
    const { listing, done, room } = this;
    return html`
      <div class="bar">
        <h2 id="library-name">Your projects</h2>
        ${
          this.store?.lasting === false
            ? html`<p class="hint">Nothing is kept here after this page is closed.</p>`
            : room === null || listing === null || isEmpty(listing)
              ? nothing
              : roomInWords(room)
        }
      </div>
      ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
      <div class="library-done" role="status">
        ${
          done === null
            ? nothing
            : html`<p>${done.text}</p>
              ${
                done.undo === null
                  ? nothing
                  : html`<button type="button" @click=${() => this.undo(done.undo as () => Promise<void>)}>Take it back</button>`
              }`
        }
      </div>
      ${listing === null ? html`<p>Looking what is kept on this device.</p>` : this.lists(listing)}
    `;
  }

  private lists({ projects, removed, damaged }: Listing): TemplateResult {
    const { erasing } = this;
    return html`
      ${damaged.length === 0 ? nothing : damagedList(damaged, erasing, this.leftoverActions)}
      ${
        projects.length === 0
          ? html`<p>
              Nothing is kept yet. What you draw or open is kept here by itself, on this device and
              in this browser only. Clearing the browser's data clears it too: export what matters.
            </p>`
          : html`<ul class="library">
              ${projects.slice(0, this.shown).map((one) => {
                const isOpen = this.session?.project?.id === one.id;
                const renaming = this.renaming === one.id;
                return html`<li>${libraryItem(one, { isOpen, renaming }, this.itemActions)}</li>`;
              })}
            </ul>`
      }
      ${
        projects.length > this.shown
          ? html`<button type="button" @click=${this.showMore}>
              Show more (${figures(projects.length - this.shown)} left)
            </button>`
          : nothing
      }
      ${removed.length === 0 ? nothing : removedList(removed, erasing, this.leftoverActions)}
    `;
  }

  private readonly showMore = (): void => {
    this.shown += 4 * AT_FIRST;
    void this.draw();
  };

  private startRenaming(id: string): void {
    this.renaming = id;
    void this.updateComplete.then(() => {
      const field = this.querySelector<HTMLInputElement>('.library-name input');
      field?.focus();
      field?.select();
    });
  }
}

function isEmpty({ projects, removed, damaged }: Listing): boolean {
  return projects.length + removed.length + damaged.length === 0;
}

/** Read without becoming what this window has seen of it: it is not going to be worked on. */
async function peek(store: Store, id: string): Promise<Project> {
  return (await store.peek(id)).project;
}

function withinLimit(name: string): string {
  return [...name.trim()].slice(0, CHART_LIMITS.maxName).join('').trim();
}

customElements.define('halfhitch-library', Library);
