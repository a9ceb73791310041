import { CHART_LIMITS, printable } from '@halfhitch/core';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { newId } from '../project/new-id.js';
import { nameOf, type Project, renamed, titleOf, untitled } from '../project/project.js';
import type { Session } from '../project/session.js';
import { asStoreError } from '../store/errors.js';
import { keeperOf } from '../store/keep-session.js';
import { STORE_LIMITS } from '../store/limits.js';
import type { DamagedProject, Listing, ProjectSummary } from '../store/listing.js';
import { theStore } from '../store/open-store.js';
import type { Store } from '../store/store.js';
import { counted, figures } from '../view/figures.js';
import { SessionWatch } from '../view/session-watch.js';
import { download } from './download.js';
import { fileNameOf } from './file-name.js';
import './picture-of.js';
import { thumbnailOf } from './thumbnail.js';

/** Projects shown before more are asked for. */
const AT_FIRST = 24;

/** What was done last, and how it is taken back. */
interface Done {
  readonly text: string;
  readonly undo: (() => Promise<void>) | null;
}

/** The projects kept on this device: opened, copied, renamed, removed and brought back. */
export class Library extends LitElement {
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
  declare private room: { readonly used: number; readonly given: number } | null;

  private store: Store | null = null;
  private listed = 0;
  private drawing = false;
  /** Pictures that could not be drawn or kept are not tried again and again. */
  private readonly tried = new Set<string>();

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

  protected override createRenderRoot(): HTMLElement {
    return this;
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
      const room = await store.room();
      if (listed !== this.listed) return;
      this.listing = listing;
      this.room = room;
      void this.draw();
    } catch (error) {
      this.problem = asStoreError(error).message;
    }
  }

  /** Draws pictures that are missing or of an earlier state, one at a time. */
  private async draw(): Promise<void> {
    if (this.drawing) return;
    this.drawing = true;
    for (;;) {
      const { store, listing } = this;
      const stale = listing?.projects
        .slice(0, this.shown)
        .find((one) => one.thumbnail?.of !== one.changed && !this.tried.has(markOf(one)));
      if (store === null || stale === undefined) break;
      this.tried.add(markOf(stale));
      try {
        const project = await peek(store, stale.id);
        const image = await thumbnailOf(project);
        if (image !== null) {
          await store.saveThumbnail(stale.id, image, project.changed);
          await this.list();
        }
      } catch {
        // The project is listed without a picture.
      }
    }
    this.drawing = false;
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

  private undo(undo: () => Promise<void>): void {
    void this.attempt(undo);
  }

  // ---- what is shown ----

  protected override render(): TemplateResult {
    const { listing, done } = this;
    return html`
      <div class="bar">
        <h2 id="library-name">Your projects</h2>
        ${this.roomInWords()}
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
    return html`
      ${damaged.length === 0 ? nothing : this.damaged(damaged)}
      ${
        projects.length === 0
          ? html`<p>
              Nothing is kept yet. What you draw or open is kept here by itself, on this device and
              in this browser only. Clearing the browser's data clears it too: export what matters.
            </p>`
          : html`<ul class="library">
              ${projects.slice(0, this.shown).map((one) => html`<li>${this.project(one)}</li>`)}
            </ul>`
      }
      ${
        projects.length > this.shown
          ? html`<button type="button" @click=${this.showMore}>
              Show more (${figures(projects.length - this.shown)} left)
            </button>`
          : nothing
      }
      ${removed.length === 0 ? nothing : this.removed(removed)}
    `;
  }

  private readonly showMore = (): void => {
    this.shown += 4 * AT_FIRST;
    void this.draw();
  };

  private project(one: ProjectSummary): TemplateResult {
    const { id } = one;
    const isOpen = this.session?.project?.id === id;
    return html`<article class="library-item ${isOpen ? 'current' : ''}" aria-label=${listedName(one)}>
      <halfhitch-blob-picture .blob=${one.thumbnail?.image ?? null}></halfhitch-blob-picture>
      <div class="library-about">
        ${this.renaming === id ? this.nameForm(one) : html`<h3>${listedName(one)}</h3>`}
        <p>${isOpen ? html`<strong>Open now.</strong>` : nothing} ${sizeInWords(one)}</p>
        <p class="hint">Changed ${html`<time datetime=${new Date(one.changed).toISOString()}>${whenInWords(one.changed)}</time>`}</p>
      </div>
      <div class="library-actions">
        <button type="button" class=${isOpen ? '' : 'primary'} aria-disabled=${isOpen ? 'true' : 'false'} @click=${() => void this.open(one)}>
          Open<span class="unseen"> ${listedName(one)}</span>
        </button>
        <button type="button" @click=${() => void this.copy(one)}>Copy<span class="unseen"> ${listedName(one)}</span></button>
        <button type="button" @click=${() => this.startRenaming(id)}>Rename<span class="unseen"> ${listedName(one)}</span></button>
        <button type="button" @click=${() => void this.takeAway(one)}>Remove<span class="unseen"> ${listedName(one)}</span></button>
      </div>
    </article>`;
  }

  private startRenaming(id: string): void {
    this.renaming = id;
    void this.updateComplete.then(() => {
      const field = this.querySelector<HTMLInputElement>('.library-name input');
      field?.focus();
      field?.select();
    });
  }

  private nameForm(one: ProjectSummary): TemplateResult {
    const stop = (): void => {
      this.renaming = null;
    };
    return html`<form
      class="library-name"
      @submit=${(event: Event) => {
        event.preventDefault();
        const field = (event.target as HTMLFormElement).querySelector('input');
        void this.rename(one, field?.value ?? one.name);
      }}
      @keydown=${(event: KeyboardEvent) => {
        if (event.key === 'Escape') stop();
      }}
    >
      <label>
        New name
        <input type="text" autocomplete="off" maxlength=${CHART_LIMITS.maxName} .value=${one.name} />
      </label>
      <button type="submit" class="primary">Keep the name</button>
      <button type="button" @click=${stop}>Leave it</button>
    </form>`;
  }

  private removed(removed: readonly ProjectSummary[]): TemplateResult {
    return html`<details class="fold">
      <summary>Removed: ${figures(removed.length)}</summary>
      <p class="hint">They are erased for good ${STORE_LIMITS.removedDays} days after they were removed.</p>
      <ul class="library-plain">
        ${removed.map(
          (one) => html`<li>
            <span>${listedName(one)}, ${sizeInWords(one)}</span>
            <button type="button" @click=${() => void this.restore(one)}>Bring back<span class="unseen"> ${listedName(one)}</span></button>
            ${this.eraser(one.id, listedName(one))}
          </li>`,
        )}
      </ul>
    </details>`;
  }

  private damaged(damaged: readonly DamagedProject[]): TemplateResult {
    return html`<section class="library-damaged" aria-label="Damaged projects">
      <h3>${damaged.length === 1 ? 'One project is damaged' : `${figures(damaged.length)} projects are damaged`}</h3>
      <p>
        What this browser kept of ${damaged.length === 1 ? 'it' : 'them'} can't be read; all others
        are untouched. Save what is left as a file, since someone may be able to mend it, and erase
        it here. If you have exported the project before, open that file.
      </p>
      <ul class="library-plain">
        ${damaged.map(
          (one) => html`<li>
            <span><strong>${one.name === '' ? 'Without a name' : one.name}.</strong> ${one.what}</span>
            <button type="button" @click=${() => void this.saveRaw(one)}>Save what is left</button>
            ${this.eraser(one.id, one.name)}
          </li>`,
        )}
      </ul>
    </section>`;
  }

  private eraser(id: string, name: string): TemplateResult {
    return html`<button type="button" @click=${() => void this.erase(id)}>
      ${this.erasing === id ? 'Erase it for good?' : 'Erase'}<span class="unseen"> ${name}</span>
    </button>`;
  }

  private roomInWords(): TemplateResult | typeof nothing {
    const { room, store } = this;
    if (store !== null && !store.lasting)
      return html`<p class="hint">Nothing is kept here after this page is closed.</p>`;
    if (room === null || room.given === 0) return nothing;
    const share = room.used / room.given;
    const mebibytes = (bytes: number): string =>
      `${figures(bytes / 1024 ** 2, 0, bytes < 1e7 ? 1 : 0)} MiB`;
    return html`<p class="hint">
      ${mebibytes(room.used)} used of the ${mebibytes(room.given)} this browser gives${share > 0.9 ? html`: <strong>nearly full</strong>` : nothing}
    </p>`;
  }
}

/** Read without becoming what this window has seen of it: it is not going to be worked on. */
async function peek(store: Store, id: string): Promise<Project> {
  return (await store.peek(id)).project;
}

function markOf({ id, changed }: ProjectSummary): string {
  return `${id} ${changed}`;
}

function listedName({ name, kind }: ProjectSummary): string {
  return printable(name) || untitled(kind);
}

function withinLimit(name: string): string {
  return [...name.trim()].slice(0, CHART_LIMITS.maxName).join('').trim();
}

function sizeInWords(one: ProjectSummary): string {
  const { kind, rows, across, knots, done, doneDamaged } = one;
  const size =
    kind === 'alpha'
      ? `${counted(rows, 'row')} of ${counted(across, 'knot')}`
      : `Diagonal, ${counted(rows, 'row')} on ${counted(across, 'string')}`;
  if (doneDamaged) return `${size}; the count of knots tied can't be read, and begins anew`;
  if (done === 0) return size;
  if (done >= knots) return `${size}, all tied`;
  return `${size}, ${figures(done)} of ${figures(knots)} tied`;
}

function whenInWords(time: number): string {
  return new Date(time).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
}

customElements.define('halfhitch-library', Library);
